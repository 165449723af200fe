import { useState } from "react";
import type { ReactNode } from "react";
import { catalogueCranes, liftRules } from "../../estimate/index.js";
import type { LiftCrane } from "../../estimate/index.js";
import type { Lift } from "../../site/index.js";
import { without, withoutAbsent } from "../../site/index.js";
import { area, length, mass, pressure } from "../../units/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { MeasureField } from "../fields/MeasureField.js";
import { NameField } from "../fields/NameField.js";
import { plain } from "../fields/plain.js";
import { ShareField } from "../fields/ShareField.js";
import type { TypicalValue } from "../fields/Typical.js";
import { useSite } from "../useSite.js";
import { readChart, writeChart } from "./loadChart.js";
import { useLiftChange } from "./useMachines.js";

/** What stands for the person's own chart in the list; no id of the catalogue. */
const ON_OFFER = "chart on offer";

interface CraneProps {
  lift: Lift;
  /** The crane as the engine takes it: figures not given are the catalogue's. */
  crane: LiftCrane | null;
}

/** Which crane lifts, by the catalogue or by the chart of the one on offer, and its figures. */
export function CraneFields({ lift, crane }: CraneProps): ReactNode {
  const change = useLiftChange();
  const given = lift.crane;
  const rows = catalogueCranes();
  function choose(id: string): void {
    if (id !== ON_OFFER) {
      change("choose the crane", { crane: { by: "catalogue", id } });
      return;
    }
    // Its own weight, hook block and pads are to be asked for: only what keeps it off the edge stays.
    const { name, table, outriggers } = crane ?? rows[0]!;
    const source = `figures of ${name} until those of the crane on offer are entered`;
    const own = { by: "table" as const, name: "Crane on offer", table: [...table], source };
    change("choose the crane", {
      crane: outriggers === undefined ? own : { ...own, outriggers },
    });
  }
  return (
    <>
      <ChoiceField
        label="Crane"
        name="crane"
        value={given.by === "table" ? ON_OFFER : given.id}
        choices={[
          ...rows.map(({ id, name }) => ({ id, name })),
          { id: ON_OFFER, name: "Chart of the crane on offer" },
        ]}
        onChoose={choose}
      />
      {given.by === "table" && (
        <NameField
          label="What it is called"
          name="crane-name"
          value={given.name}
          onCommit={(name) => change("name of the crane", { crane: { ...given, name } })}
        />
      )}
      <ChartField lift={lift} crane={crane} />
      <MeasureField
        label="Slings and shackles"
        name="rigging"
        value={lift.rigging}
        measure={mass}
        least={0}
        onCommit={(rigging) => change("slings and shackles", { rigging })}
      />
      <details className="working" data-part="crane-figures">
        <summary>
          <span className="text">Pads, hook block and ground</span>
        </summary>
        <div className="inside">
          <CraneFigures lift={lift} />
          <GroundFields lift={lift} />
        </div>
      </details>
    </>
  );
}

const FIGURES = [
  { key: "mass", label: "Weight of the crane", measure: mass, above: true },
  { key: "block", label: "Hook block", measure: mass, above: false },
  { key: "outriggers", label: "Between the pads", measure: length, above: true },
  { key: "padArea", label: "Ground under one pad", measure: area, above: true },
] as const;

function CraneFigures({ lift }: { lift: Lift }): ReactNode {
  const change = useLiftChange();
  const { crane } = lift;
  const row =
    crane.by === "catalogue" ? catalogueCranes().find(({ id }) => id === crane.id) : undefined;
  const set = (what: string, key: (typeof FIGURES)[number]["key"], value: number | undefined) =>
    change(what.toLowerCase(), {
      crane: withoutAbsent<object>({ ...crane, [key]: value }) as Lift["crane"],
    });
  return (
    <>
      {FIGURES.map(({ key, label, measure, above }) => (
        <MeasureField
          key={key}
          label={label}
          name={`crane-${key}`}
          value={crane[key]}
          usual={row?.[key] ?? "not entered"}
          typical={rowTypical(row?.[key], row?.source)}
          measure={measure}
          {...(key === "padArea" ? { print: { digits: 1 } } : {})}
          least={0}
          above={above}
          onCommit={(value) => set(label, key, value)}
          onClear={() => set(label, key, undefined)}
        />
      ))}
    </>
  );
}

function rowTypical(value: number | undefined, source = ""): TypicalValue | undefined {
  return value === undefined ? undefined : { value, source };
}

function GroundFields({ lift }: { lift: Lift }): ReactNode {
  const change = useLiftChange();
  const { edgeFactor, padShare } = liftRules();
  return (
    <>
      <MeasureField
        label="The ground may carry"
        name="ground-bearing"
        value={lift.groundBearing}
        usual="not entered"
        measure={pressure}
        least={0}
        above
        note="As someone competent says, who has seen the ground and knows of tanks and pipes in it."
        onCommit={(groundBearing) => change("what the ground may carry", { groundBearing })}
        onClear={() => change("what the ground may carry", { groundBearing: undefined })}
      />
      <MeasureField
        label={
          <>
            Kept from the edge <small>depths</small>
          </>
        }
        name="edge-factor"
        value={lift.edgeFactor}
        usual={edgeFactor.value}
        measure={plain}
        least={0}
        above
        typical={edgeFactor}
        onCommit={(factor) => change("distance from the edge", { edgeFactor: factor })}
        onClear={() => change("distance from the edge", { edgeFactor: undefined })}
      />
      <ShareField
        label="On one pad"
        name="pad-share"
        value={lift.padShare}
        most={1}
        usual={`${padShare.value * 100}%`}
        typical={padShare}
        onCommit={(share) => change("share on one pad", { padShare: share })}
        onClear={() => change("share on one pad", { padShare: undefined })}
      />
    </>
  );
}

/** The load chart: shown for a crane of the catalogue, typed or pasted for the one on offer. */
function ChartField({ lift, crane }: CraneProps): ReactNode {
  const { units } = useSite().site;
  const change = useLiftChange();
  const [typed, setTyped] = useState<string | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const given = lift.crane;
  const isOwn = given.by === "table";
  const table = isOwn ? given.table : (crane?.table ?? []);

  function take(): void {
    if (typed === null || given.by !== "table") return;
    const read = readChart(typed, units);
    if (!read.ok) {
      setWrong(read.text);
      return;
    }
    setTyped(null);
    setWrong(null);
    change("load chart", {
      crane: { ...without(given, "source"), table: read.table },
    });
  }

  return (
    <details className="working" data-part="load-chart">
      <summary>
        <span className="text">Load chart</span>
        <span className="amount">{isOwn ? "yours" : "typical"}</span>
      </summary>
      <div className="inside">
        <label className="stacked">
          One line for each radius: radius in {length.unitLabel(units)}, load in{" "}
          {mass.unitLabel(units)}, hook block and slings in it
          <textarea
            rows={Math.min(14, Math.max(4, table.length + 1))}
            value={typed ?? writeChart(table, units)}
            data-field="load-chart"
            readOnly={!isOwn}
            spellCheck={false}
            aria-invalid={wrong !== null || undefined}
            onChange={(event) => {
              setTyped(event.target.value);
              setWrong(null);
            }}
            onBlur={take}
          />
        </label>
        {wrong !== null && (
          <p className="wrong" role="alert">
            {wrong}
          </p>
        )}
        {isOwn ? (
          <div className="tools">
            <button type="button" className="link" onClick={take}>
              Use this chart
            </button>
          </div>
        ) : (
          <p>
            To enter a chart, choose “Chart of the crane on offer”. Take the page for the boom
            length and the outriggers that will be used.
          </p>
        )}
        <p className="rule-source">{crane?.source}</p>
      </div>
    </details>
  );
}
