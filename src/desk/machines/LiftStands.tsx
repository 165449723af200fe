import type { ReactNode } from "react";
import type { Quantity } from "../../site/index.js";
import { useDesk } from "../../store/index.js";
import { length, mass, pressure } from "../../units/index.js";
import { words } from "../../words/index.js";
import { percent } from "../fields/percent.js";
import type { StandLift, TankLift } from "../parts.js";
import { useSite } from "../useSite.js";
import { QuantityWorking, Working } from "../Working.js";

/** One tank: what hangs on the hook, and how each place for the crane serves. */
export function TankStands({ tank }: { tank: TankLift }): ReactNode {
  const { units } = useSite().site;
  const best = tank.stands.find(({ stand }) => stand === tank.best);
  return (
    <section aria-label={words.machinesLeaf.liftOf(tank.name)} data-tank-lift={tank.tank}>
      <h3>{tank.name}</h3>
      {tank.load === null ? (
        <NoWeight tank={tank} />
      ) : (
        <Working text={words.machinesLeaf.onTheHook} amount={mass.print(tank.load.value, units)}>
          <QuantityWorking quantity={tank.load} hook />
        </Working>
      )}
      {tank.stands.map((stand) => (
        <Stand key={stand.stand} stand={stand} isBest={stand.stand === tank.best} />
      ))}
      {best !== undefined && (
        <p className="says">
          {words.machinesLeaf.placesEntered} <strong>{best.name}</strong>{" "}
          {words.machinesLeaf.asksLeastCraneOperator}
        </p>
      )}
    </section>
  );
}

function NoWeight({ tank }: { tank: TankLift }): ReactNode {
  const select = useDesk((desk) => desk.select);
  return (
    <p className="says">
      {words.machinesLeaf.noWeightEnteredNothing}{" "}
      <button
        type="button"
        className="link"
        onClick={() => {
          select({ kind: "work", id: tank.tank });
          useDesk.getState().show({ leaf: "dig" });
        }}
      >
        {words.machinesLeaf.enterWeight(tank.name)}
      </button>
    </p>
  );
}

function Stand({ stand, isBest }: { stand: StandLift; isBest: boolean }): ReactNode {
  const { units } = useSite().site;
  const { share, radius } = stand;
  return (
    <div
      className={`candidate ${stand.works ? "" : "cannot"}`}
      data-stand-lift={stand.stand}
      data-works={stand.works}
      data-best={isBest}
      data-radius={radius.value}
      data-share={share?.value}
    >
      <Working
        text={
          <>
            <span aria-hidden="true">{stand.works ? "✓" : "✕"} </span>
            {stand.name}
          </>
        }
        amount={
          share === null
            ? words.machinesLeaf.away(length.print(radius.value, units))
            : words.machinesLeaf.ofItsRating(percent.print(share.value, units, { digits: 0 }))
        }
      >
        <StandFigures stand={stand} />
      </Working>
      <p className="reason">{verdict(stand)}</p>
    </div>
  );
}

/** Whether a place serves, in words that leave the judging to the operator. */
function verdict({ works, reasons, warnings }: StandLift): string {
  const why = [...reasons, ...warnings].map(({ text }) => text).join("; ");
  if (works) {
    return why === ""
      ? words.machinesLeaf.nothingEnteredSpeaksAgainst
      : words.machinesLeaf.nothingRulesOut(why);
  }
  return words.machinesLeaf.doesNotWork(why);
}

function StandFigures({ stand }: { stand: StandLift }): ReactNode {
  const { units } = useSite().site;
  const metres = (value: number): string => length.print(value, units);
  const { edge, line } = stand;
  return (
    <>
      <Figure text={words.machinesLeaf.radius} quantity={stand.radius} print={metres} />
      <Figure
        text={words.machinesLeaf.ratedNextLongerRow}
        quantity={stand.rated}
        print={(value) => mass.print(value, units)}
        without={words.machinesLeaf.beyondTheChart}
      />
      <Figure
        text={words.machinesLeaf.loadShare}
        quantity={stand.share}
        print={(value) => percent.print(value, units)}
        without="–"
      />
      {edge === null ? (
        <Figure
          text={words.machinesLeaf.nearestPadHolesEdge}
          quantity={null}
          print={metres}
          without="–"
        />
      ) : (
        <>
          <Figure
            text={words.machinesLeaf.nearestPadHolesEdge}
            quantity={edge.distance}
            print={metres}
          />
          <Figure
            text={words.machinesLeaf.toBeKeptFromEdge}
            quantity={edge.needed}
            print={metres}
          />
        </>
      )}
      {line === null ? (
        <Figure
          text={words.machinesLeaf.overheadLines}
          quantity={null}
          print={metres}
          without={words.machinesLeaf.noneEntered}
        />
      ) : (
        <>
          <Figure
            text={words.machinesLeaf.boomOrLoad(line.name)}
            quantity={line.distance}
            print={metres}
          />
          <Figure text={words.machinesLeaf.keptFromLine} quantity={line.needed} print={metres} />
        </>
      )}
      <Figure
        text={words.machinesLeaf.underMostLoadedPad}
        quantity={stand.pad}
        print={(value) => pressure.print(value, units)}
        without={words.machinesLeaf.cranesWeightOrPad}
      />
      <Figure
        text={words.machinesLeaf.groundDiffersUnderPads}
        quantity={stand.unlevel}
        print={metres}
        without="–"
      />
    </>
  );
}

function Figure(props: {
  text: string;
  quantity: Quantity | null;
  print: (value: number) => string;
  /** What stands where the figure cannot be had. */
  without?: string;
}): ReactNode {
  const { text, quantity, print, without } = props;
  if (quantity === null) {
    return (
      <p className="place-row">
        {text}: {without}
      </p>
    );
  }
  return (
    <Working text={text} amount={print(quantity.value)}>
      <QuantityWorking quantity={quantity} hook />
    </Working>
  );
}
