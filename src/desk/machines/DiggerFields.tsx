import type { ReactNode } from "react";
import { catalogueDiggers } from "../../estimate/index.js";
import type { Digger } from "../../estimate/index.js";
import { withoutAbsent } from "../../site/index.js";
import type { OwnDigger } from "../../site/index.js";
import { earthVolume, length, liquidVolume, pipeSlope } from "../../units/index.js";
import { words } from "../../words/index.js";
import { MeasureField } from "../fields/MeasureField.js";
import { NameField } from "../fields/NameField.js";
import { useScheme } from "../flow/useFlow.js";
import { useSite } from "../useSite.js";
import { Working } from "../Working.js";
import { useMachinesChange } from "./useMachines.js";

const FIGURES = [
  { key: "digDepth", label: words.machinesLeaf.digsDownTo, measure: length },
  { key: "reach", label: words.machinesLeaf.reachesGround, measure: length },
  { key: "dumpHeight", label: words.machinesLeaf.emptiesMostHigh, measure: length },
  { key: "bucket", label: words.machinesLeaf.bucketHeaped, measure: earthVolume },
  { key: "bucketWidth", label: words.machinesLeaf.widthBucket, measure: length },
  { key: "narrowBucket", label: words.machinesLeaf.narrowestBucket, measure: length },
  { key: "width", label: words.machinesLeaf.widthOverTracks, measure: length },
  { key: "mostSlope", label: words.machinesLeaf.mayStandOn, measure: pipeSlope },
  { key: "fuelPerHour", label: words.machinesLeaf.fuelHour, measure: liquidVolume },
] as const;

const HAMMER = [
  { key: "low", label: words.machinesLeaf.hammerHourLeast },
  { key: "likely", label: words.machinesLeaf.hammerHourLikely },
  { key: "high", label: words.machinesLeaf.hammerHourMost },
] as const;

/** The figures of the person's own machine, in place of those of the catalogue's digger in use. */
export function DiggerFields(): ReactNode {
  const { estimate } = useSite();
  const change = useMachinesChange();
  const machines = useScheme()?.machines;
  const id = estimate?.machines.digger.id;
  const own = machines?.diggers?.find((one) => one.id === id);
  const like = catalogueDiggers().find((row) => row.id === (own?.like ?? id));
  if (id === undefined || like === undefined) return null;

  function save(what: string, next: OwnDigger | null): void {
    change(what, (now) => {
      const others = (now.diggers ?? []).filter((one) => one.id !== id);
      const diggers = next === null ? others : [...others, next];
      // The machine whose figures are entered is the one that digs, also when another would be chosen.
      return { diggers: diggers.length === 0 ? undefined : diggers, digger: id };
    });
  }

  return (
    <section
      aria-label={words.machinesLeaf.figuresYourMachine}
      data-own-digger={own === undefined ? "" : id}
    >
      {own === undefined ? (
        <div className="tools">
          <button
            type="button"
            className="link"
            onClick={() =>
              save(words.machinesLeaf.figuresYourOwnEdit(like.name), {
                id,
                like: like.id,
                name: words.machinesLeaf.nameYours(like.name),
              })
            }
          >
            {words.machinesLeaf.enterFiguresYourMachine}
          </button>
        </div>
      ) : (
        <OwnFigures own={own} like={like} save={save} />
      )}
    </section>
  );
}

interface OwnFiguresProps {
  own: OwnDigger;
  like: Digger;
  save: (what: string, next: OwnDigger | null) => void;
}

function OwnFigures({ own, like, save }: OwnFiguresProps): ReactNode {
  const name = own.name ?? like.name;
  const asLike = words.forms.asMachine(like.name);
  const set = (what: string, next: Record<string, unknown>): void =>
    save(
      words.machinesLeaf.ofEdit(what, name),
      withoutAbsent<object>({ ...own, ...next }) as OwnDigger,
    );
  return (
    <Working text={words.machinesLeaf.figuresYourMachine} amount={words.machinesLeaf.yours}>
      <NameField
        label={words.machinesLeaf.name}
        name="digger-name"
        value={name}
        onCommit={(next) => set(words.machinesLeaf.nameEdit, { name: next })}
      />
      {FIGURES.map(({ key, label, measure }) => (
        <MeasureField
          key={key}
          label={label}
          name={`digger-${key}`}
          value={own[key]}
          usual={like[key]}
          typical={{ value: like[key], source: asLike }}
          measure={measure}
          {...(key === "bucket" ? { print: { digits: 2 } } : {})}
          {...(key === "fuelPerHour" ? { print: { digits: 1 } } : {})}
          least={0}
          above
          onCommit={(value) => set(label.toLowerCase(), { [key]: value })}
          onClear={() => set(label.toLowerCase(), { [key]: undefined })}
        />
      ))}
      <HammerFields own={own} like={like} set={set} />
      <div className="tools">
        <button
          type="button"
          className="link"
          onClick={() => save(words.machinesLeaf.theCataloguesFiguresEdit, null)}
        >
          {words.machinesLeaf.backCatalogues}
        </button>
      </div>
      <p className="rule-source">{words.machinesLeaf.whatLeftEmpty(like.name, like.source)}</p>
    </Working>
  );
}

/** What a hammer breaks in an hour: low, likely and high, kept in order. */
function HammerFields(props: {
  own: OwnDigger;
  like: Digger;
  set: (what: string, next: Record<string, unknown>) => void;
}): ReactNode {
  const { own, like, set } = props;
  const { low, likely, high } = own.hammer ?? like.hammer;
  function commit(key: "low" | "likely" | "high", value: number): void {
    const rate = { low, likely, high, [key]: value };
    // The others give way to the one that was typed.
    const ordered = {
      low: Math.min(rate.low, value),
      likely: key === "low" ? Math.max(rate.likely, value) : Math.min(rate.likely, rate.high),
      high: Math.max(rate.high, value),
    };
    set(words.machinesLeaf.hammerEdit, {
      hammer: key === "likely" ? { ...ordered, likely: value } : ordered,
    });
  }
  return (
    <>
      {HAMMER.map(({ key, label }) => (
        <MeasureField
          key={key}
          label={label}
          name={`digger-hammer-${key}`}
          value={own.hammer?.[key]}
          usual={like.hammer[key]}
          typical={{ value: like.hammer[key], source: words.forms.asMachine(like.name) }}
          measure={earthVolume}
          least={0}
          above
          onCommit={(value) => commit(key, value)}
          onClear={() => set(words.machinesLeaf.hammerEdit, { hammer: undefined })}
        />
      ))}
    </>
  );
}
