import type { ReactNode } from "react";
import { catalogueCranes, liftRules } from "../../estimate/index.js";
import type { LiftCrane } from "../../estimate/index.js";
import type { Lift } from "../../site/index.js";
import { ruleOf, without, withoutAbsent } from "../../site/index.js";
import { area, length, mass, pressure } from "../../units/index.js";
import { words } from "../../words/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { MeasureField } from "../fields/MeasureField.js";
import { NameField } from "../fields/NameField.js";
import { plain } from "../fields/plain.js";
import { PointLines } from "../fields/PointLines.js";
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
      change(words.machinesLeaf.chooseTheCraneEdit, { crane: { by: "catalogue", id } });
      return;
    }
    // Its own weight, hook block and pads are to be asked for: only what keeps it off the edge stays.
    const { name, table, outriggers } = crane ?? rows[0]!;
    const source = words.machinesLeaf.figuresUntilThoseCrane(name);
    const own = {
      by: "table" as const,
      name: words.machinesLeaf.craneOnOffer,
      table: [...table],
      source,
    };
    change(words.machinesLeaf.chooseTheCraneEdit, {
      crane: outriggers === undefined ? own : { ...own, outriggers },
    });
  }
  return (
    <>
      <ChoiceField
        label={words.machinesLeaf.crane}
        name="crane"
        value={given.by === "table" ? ON_OFFER : given.id}
        choices={[
          ...rows.map(({ id, name }) => ({ id, name })),
          { id: ON_OFFER, name: words.machinesLeaf.chartCraneOffer },
        ]}
        onChoose={choose}
      />
      {given.by === "table" && (
        <NameField
          label={words.machinesLeaf.whatCalled}
          name="crane-name"
          value={given.name}
          onCommit={(name) =>
            change(words.machinesLeaf.nameCraneEdit, { crane: { ...given, name } })
          }
        />
      )}
      <ChartField lift={lift} crane={crane} />
      <MeasureField
        label={words.machinesLeaf.slingsAndShackles}
        name="rigging"
        value={lift.rigging}
        measure={mass}
        least={0}
        onCommit={(rigging) => change(words.machinesLeaf.slingsAndShacklesEdit, { rigging })}
      />
      <details className="working" data-part="crane-figures">
        <summary>
          <span className="text">{words.machinesLeaf.padsHookBlockGround}</span>
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
  { key: "mass", label: words.machinesLeaf.weightCrane, measure: mass, above: true },
  { key: "block", label: words.machinesLeaf.hookBlock, measure: mass, above: false },
  { key: "outriggers", label: words.machinesLeaf.betweenThePads, measure: length, above: true },
  { key: "padArea", label: words.machinesLeaf.groundUnderOnePad, measure: area, above: true },
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
          usual={row?.[key] ?? words.machinesLeaf.notEntered}
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
  const { padShare } = liftRules();
  const edgeFactor = ruleOf(useSite().site, "crane-back");
  return (
    <>
      <MeasureField
        label={words.machinesLeaf.groundMayCarry}
        name="ground-bearing"
        value={lift.groundBearing}
        usual={words.machinesLeaf.notEntered}
        measure={pressure}
        least={0}
        above
        note={words.machinesLeaf.someoneCompetentSaysWho}
        onCommit={(groundBearing) =>
          change(words.machinesLeaf.whatGroundMayCarryEdit, { groundBearing })
        }
        onClear={() =>
          change(words.machinesLeaf.whatGroundMayCarryEdit, { groundBearing: undefined })
        }
      />
      <MeasureField
        label={
          <>
            {words.machinesLeaf.keptFromEdge} <small>{words.machinesLeaf.depths}</small>
          </>
        }
        name="edge-factor"
        value={lift.edgeFactor}
        usual={edgeFactor.value}
        measure={plain}
        least={0}
        above
        typical={edgeFactor}
        onCommit={(factor) =>
          change(words.machinesLeaf.distanceFromEdgeEdit, { edgeFactor: factor })
        }
        onClear={() => change(words.machinesLeaf.distanceFromEdgeEdit, { edgeFactor: undefined })}
      />
      <ShareField
        label={words.machinesLeaf.onOnePad}
        name="pad-share"
        value={lift.padShare}
        most={1}
        usual={`${padShare.value * 100}%`}
        typical={padShare}
        onCommit={(share) => change(words.machinesLeaf.shareOnePadEdit, { padShare: share })}
        onClear={() => change(words.machinesLeaf.shareOnePadEdit, { padShare: undefined })}
      />
    </>
  );
}

/** The load chart: shown for a crane of the catalogue, typed or pasted for the one on offer. */
function ChartField({ lift, crane }: CraneProps): ReactNode {
  const { units } = useSite().site;
  const change = useLiftChange();
  const given = lift.crane;
  const isOwn = given.by === "table";
  const table = isOwn ? given.table : (crane?.table ?? []);

  function take(text: string): string | null {
    if (given.by !== "table") return null;
    const read = readChart(text, units);
    if (!read.ok) return read.text;
    change(words.machinesLeaf.loadChartEdit, {
      crane: { ...without(given, "source"), table: read.table },
    });
    return null;
  }

  return (
    <details className="working" data-part="load-chart">
      <summary>
        <span className="text">{words.machinesLeaf.loadChart}</span>
        <span className="amount">
          {isOwn ? words.machinesLeaf.yours : words.machinesLeaf.typical}
        </span>
      </summary>
      <div className="inside">
        <PointLines
          label={words.machinesLeaf.oneLineEachRadius(
            length.unitLabel(units),
            mass.unitLabel(units),
          )}
          name="load-chart"
          kept={writeChart(table, units)}
          rows={Math.min(14, Math.max(4, table.length + 1))}
          readOnly={!isOwn}
          useWords={words.machinesLeaf.useThisChart}
          onTake={take}
        />
        {!isOwn && <p>{words.machinesLeaf.enterChartChooseChart}</p>}
        <p className="rule-source">{crane?.source}</p>
      </div>
    </details>
  );
}
