import type { ReactNode } from "react";
import { ColumnHeads } from "../../drawn/index.js";
import { words } from "../../words/index.js";
import type { PressureResult } from "../parts.js";
import { pumpRows } from "../../estimate/index.js";
import { without } from "../../site/index.js";
import type { Pump, PressureSystem } from "../../site/index.js";
import { flow, head, plainNumber } from "../../units/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { PointLines } from "../fields/PointLines.js";
import { useSite } from "../useSite.js";
import { readCurve, writeCurve } from "./pumpPoints.js";
import { usePressureChange } from "./useFlow.js";

/** Every pump that is weighed up, which of them serves with least power, and which is in use. */
export function PumpTable(props: { system: PressureSystem; result: PressureResult }): ReactNode {
  const { system, result } = props;
  const { units } = useSite().site;
  const change = usePressureChange(system);
  return (
    <>
      <ChoiceField
        label={words.flowLeaf.pumpLabel}
        name="pump"
        value={system.pump}
        choices={system.pumps}
        onChoose={(pump) => change(words.flowLeaf.pumpEdit, { pump })}
      />
      <table className="table pumps">
        <ColumnHeads
          names={[words.flowLeaf.pumpLabel, words.flowLeaf.runsAt, words.flowLeaf.takes]}
        />
        <tbody>
          {result.pumps.map((pump) => (
            <tr key={pump.id}>
              <th scope="row">
                {pump.name}
                <small>
                  {pump.id === result.best
                    ? words.flowLeaf.doesWithLeastPower
                    : pump.outcome === "no-flow"
                      ? words.flowLeaf.cannotLiftHigh
                      : pump.outcome === "no-curve"
                        ? pump.why
                        : pump.outcome === "off-curve"
                          ? words.flowLeaf.runsOffCurve
                          : pump.meets
                            ? words.flowLeaf.doesIt
                            : words.flowLeaf.tooWeak}
                </small>
              </th>
              <td>
                {pump.flow > 0
                  ? words.flowLeaf.flowAtHead(
                      flow.print(pump.flow, units),
                      head.print(pump.head, units),
                    )
                  : "–"}
              </td>
              <td>
                {pump.power === null ? "–" : words.flowLeaf.watts(plainNumber(pump.power, 0))}
                {pump.energy !== null && (
                  <small>{words.flowLeaf.kwhAYear(plainNumber(pump.energy, 0))}</small>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <CurveEditor system={system} />
      <label className="tick">
        <input
          type="checkbox"
          checked={system.alternating === true}
          onChange={(event) =>
            change(words.flowLeaf.alternatingEdit, {
              alternating: event.target.checked ? true : undefined,
            })
          }
        />
        {words.flowLeaf.twoAlikeTakeTurns}
      </label>
    </>
  );
}

/** The points of the pump in use, to be typed or pasted; the maker's curve in place of a generic one. */
function CurveEditor({ system }: { system: PressureSystem }): ReactNode {
  const { units } = useSite().site;
  const change = usePressureChange(system);
  const pump = system.pumps.find((one) => one.id === system.pump);
  const row = pumpRows().find((one) => one.id === system.pump);
  const points = pump?.curve ?? row?.curve ?? [];
  if (pump === undefined) return null;

  function take(text: string): string | null {
    const read = readCurve(text, units);
    if (!read.ok) return read.text;
    setPump({ curve: read.points, source: words.flowLeaf.asEntered });
    return null;
  }

  function setPump(next: Partial<Pick<Pump, "curve" | "source">>): void {
    const pumps = system.pumps.map((one) => {
      if (one.id !== system.pump) return one;
      return { ...without(without(one, "curve"), "source"), ...next };
    });
    change(words.flowLeaf.curveEdit, { pumps });
  }

  return (
    <details className="working">
      <summary>
        <span className="text">{words.flowLeaf.curveOf(pump.name)}</span>
        <span className="amount">
          {pump.curve === undefined ? words.flowLeaf.typical : words.flowLeaf.yours}
        </span>
      </summary>
      <div className="inside">
        <PointLines
          label={words.flowLeaf.onePointLineFlow(flow.unitLabel(units), head.unitLabel(units))}
          name="pump-curve"
          kept={writeCurve(points, units)}
          rows={8}
          useWords={words.flowLeaf.useThesePoints}
          onTake={take}
        >
          {pump.curve !== undefined && row !== undefined && (
            <button type="button" className="link" onClick={() => setPump({})}>
              {words.flowLeaf.backTypicalCurve}
            </button>
          )}
        </PointLines>
        <p className="rule-source">{pump.source ?? row?.source ?? words.flowLeaf.asEntered}</p>
      </div>
    </details>
  );
}
