import type { ReactNode } from "react";
import type { Quantity } from "../../site/index.js";
import { useDesk } from "../../store/index.js";
import { length, mass, pressure } from "../../units/index.js";
import { percent } from "../fields/percent.js";
import type { StandLift, TankLift } from "../parts.js";
import { useSite } from "../useSite.js";
import { QuantityWorking, Working } from "../Working.js";

/** One tank: what hangs on the hook, and how each place for the crane serves. */
export function TankStands({ tank }: { tank: TankLift }): ReactNode {
  const { units } = useSite().site;
  const best = tank.stands.find(({ stand }) => stand === tank.best);
  return (
    <section aria-label={`Lift of ${tank.name}`} data-tank-lift={tank.tank}>
      <h3>{tank.name}</h3>
      {tank.load === null ? (
        <NoWeight tank={tank} />
      ) : (
        <Working text="On the hook" amount={mass.print(tank.load.value, units)}>
          <QuantityWorking quantity={tank.load} hook />
        </Working>
      )}
      {tank.stands.map((stand) => (
        <Stand key={stand.stand} stand={stand} isBest={stand.stand === tank.best} />
      ))}
      {best !== undefined && (
        <p className="says">
          Of the places entered, <strong>{best.name}</strong> asks least of the crane. The operator
          decides.
        </p>
      )}
    </section>
  );
}

function NoWeight({ tank }: { tank: TankLift }): ReactNode {
  const select = useDesk((desk) => desk.select);
  return (
    <p className="says">
      No weight is entered for it, so nothing can be said of its lift.{" "}
      <button
        type="button"
        className="link"
        onClick={() => {
          select({ kind: "work", id: tank.tank });
          useDesk.getState().show({ leaf: "dig" });
        }}
      >
        Enter the weight of {tank.name}
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
            ? `${length.print(radius.value, units)} away`
            : `${percent.print(share.value, units, { digits: 0 })} of its rating`
        }
      >
        <StandFigures stand={stand} />
      </Working>
      <p className="reason">{verdict(stand)}</p>
    </div>
  );
}

/** Whether a place serves, in words that leave the judging to the operator. */
function verdict({ works, reasons }: StandLift): string {
  if (works) return "Nothing entered speaks against it.";
  const why = reasons.map(({ text }) => text).join("; ");
  return `Does not work: ${why}.`;
}

function StandFigures({ stand }: { stand: StandLift }): ReactNode {
  const { units } = useSite().site;
  const metres = (value: number): string => length.print(value, units);
  const { edge, line } = stand;
  return (
    <>
      <Figure text="Radius" quantity={stand.radius} print={metres} />
      <Figure
        text="Rated, at the next longer row"
        quantity={stand.rated}
        print={(value) => mass.print(value, units)}
        without="beyond the chart"
      />
      <Figure
        text="Load, as a share of it"
        quantity={stand.share}
        print={(value) => percent.print(value, units)}
        without="–"
      />
      {edge === null ? (
        <Figure text="Nearest pad to the hole's edge" quantity={null} print={metres} without="–" />
      ) : (
        <>
          <Figure text="Nearest pad to the hole's edge" quantity={edge.distance} print={metres} />
          <Figure text="To be kept from the edge" quantity={edge.needed} print={metres} />
        </>
      )}
      {line === null ? (
        <Figure text="Overhead lines" quantity={null} print={metres} without="none entered" />
      ) : (
        <>
          <Figure text={`Boom or load to ${line.name}`} quantity={line.distance} print={metres} />
          <Figure text="To be kept from the line" quantity={line.needed} print={metres} />
        </>
      )}
      <Figure
        text="Under the most loaded pad"
        quantity={stand.pad}
        print={(value) => pressure.print(value, units)}
        without="crane's weight or pad missing"
      />
      <Figure
        text="Ground differs under the pads"
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
