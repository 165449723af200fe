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
  { key: "digDepth", label: "Digs down to", measure: length },
  { key: "reach", label: "Reaches, at the ground", measure: length },
  { key: "dumpHeight", label: "Empties at most so high", measure: length },
  { key: "bucket", label: "Bucket, heaped", measure: earthVolume },
  { key: "bucketWidth", label: "Width of the bucket", measure: length },
  { key: "narrowBucket", label: "Narrowest bucket", measure: length },
  { key: "width", label: "Width over the tracks", measure: length },
  { key: "mostSlope", label: "May stand on", measure: pipeSlope },
  { key: "fuelPerHour", label: "Fuel in an hour", measure: liquidVolume },
] as const;

const HAMMER = [
  { key: "low", label: "Hammer in an hour, least" },
  { key: "likely", label: "Hammer in an hour, likely" },
  { key: "high", label: "Hammer in an hour, most" },
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
    <section aria-label="Figures of your machine" data-own-digger={own === undefined ? "" : id}>
      {own === undefined ? (
        <div className="tools">
          <button
            type="button"
            className="link"
            onClick={() =>
              save(`figures of your own ${like.name}`, {
                id,
                like: like.id,
                name: `${like.name}, yours`,
              })
            }
          >
            Enter the figures of your machine
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
    save(`${what} of ${name}`, withoutAbsent<object>({ ...own, ...next }) as OwnDigger);
  return (
    <Working text="Figures of your machine" amount="yours">
      <NameField
        label="Name"
        name="digger-name"
        value={name}
        onCommit={(next) => set("name", { name: next })}
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
          onClick={() => save("the catalogue's figures", null)}
        >
          Back to the catalogue’s
        </button>
      </div>
      <p className="rule-source">
        What is left empty is as {like.name}: {like.source}
      </p>
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
    set("hammer", { hammer: key === "likely" ? { ...ordered, likely: value } : ordered });
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
          onClear={() => set("hammer", { hammer: undefined })}
        />
      ))}
    </>
  );
}
