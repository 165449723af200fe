import type { ReactNode } from "react";
import { fittingRows } from "../../estimate/index.js";
import { without } from "../../site/index.js";
import type { PressureSystem } from "../../site/index.js";
import { head, length, liquidVolume, size } from "../../units/index.js";
import { words } from "../../words/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { MeasureField } from "../fields/MeasureField.js";
import { plain } from "../fields/plain.js";
import { ChamberFields } from "./ChamberFields.js";
import { usePressureChange, useScheme } from "./useFlow.js";
import { Term } from "../book/Term.js";

const LAWS = [
  { id: "hazen-williams", name: words.flowLeaf.hazenWilliams },
  { id: "darcy", name: words.flowLeaf.darcyWeisbachColebrook },
] as const;
/** m: roughness of drawn plastic pipe (recalled, handbooks give 0.0015 mm). */
const SMOOTH = 1.5e-6;
/** Hazen–Williams C that holds until the person says otherwise (recalled, plastic pipe). */
const SMOOTH_C = 140;
/** m between the levels where the pump starts and the alarm sounds; as the engine takes it. */
const ALARM = 0.0762;

/** The main: which pipe, how rough, its fittings, and the head wanted at the far end. */
export function MainFields({ system }: { system: PressureSystem }): ReactNode {
  const change = usePressureChange(system);
  const scheme = useScheme();
  const works = scheme?.works ?? [];
  const tanks = works.filter((work) => work.kind === "tank");
  const pipes = works
    .flatMap((work) => (work.kind === "trench" ? work.pipes : []))
    .filter((pipe) => pipe.service === "pressure");
  const { friction } = system;
  return (
    <details className="working">
      <summary>
        <span className="text">{words.flowLeaf.mainAndFittings}</span>
      </summary>
      <div className="inside">
        <ChoiceField
          label={words.flowLeaf.pumpStandsIn}
          name="pump-tank"
          value={system.tank}
          choices={tanks}
          onChoose={(tank) => change(words.flowLeaf.tankEdit, { tank })}
        />
        <ChoiceField
          label={words.flowLeaf.main}
          name="pump-main"
          value={system.main[0] ?? ""}
          choices={pipes}
          onChoose={(id) => change(words.flowLeaf.mainEdit, { main: [id] })}
        />
        <ChoiceField
          label={words.flowLeaf.frictionBy}
          name="friction-by"
          value={friction?.by ?? "hazen-williams"}
          choices={LAWS}
          onChoose={(by) =>
            change(words.flowLeaf.frictionEdit, {
              friction: by === "darcy" ? { by, roughness: SMOOTH } : undefined,
            })
          }
        />
        {friction?.by === "darcy" ? (
          <MeasureField
            label={words.flowLeaf.roughnessPipe}
            value={friction.roughness}
            measure={size}
            print={{ digits: 5 }}
            onCommit={(roughness) =>
              change(words.flowLeaf.roughnessEdit, { friction: { ...friction, roughness } })
            }
          />
        ) : (
          <MeasureField
            label={words.flowLeaf.hazenWilliamsC}
            name="friction-c"
            value={friction?.c}
            usual={SMOOTH_C}
            typical={{ value: SMOOTH_C, source: words.forms.recalledPlastic }}
            measure={plain}
            least={50}
            most={160}
            onCommit={(c) =>
              change(words.flowLeaf.frictionEdit, { friction: { by: "hazen-williams", c } })
            }
            onClear={() => change(words.flowLeaf.frictionEdit, { friction: undefined })}
            note={words.flowLeaf.smoothPlastic140150}
          />
        )}
        <Fittings system={system} />
        <label className="tick">
          <input
            type="checkbox"
            checked={system.checkValve === true}
            onChange={(event) =>
              change(words.flowLeaf.checkValveEdit, {
                checkValve: event.target.checked ? true : undefined,
              })
            }
          />
          {words.flowLeaf.checkValveHoldsMain}
        </label>
        <label className="tick">
          <input
            type="checkbox"
            checked={system.drainValve === true}
            onChange={(event) =>
              change(words.flowLeaf.drainValveEdit, {
                drainValve: event.target.checked ? true : undefined,
              })
            }
          />
          {words.flowLeaf.drainValveEmpties}
        </label>
        <MeasureField
          label={
            <>
              <Term id="residualHead">{words.flowLeaf.headWanted}</Term> {words.flowLeaf.lastHole}
            </>
          }
          name="distal-head"
          value={system.distalHead}
          usual={words.flowLeaf.byHoleSize}
          measure={head}
          least={0}
          above
          onCommit={(distalHead) => change(words.flowLeaf.headWantedEdit, { distalHead })}
          onClear={() => change(words.flowLeaf.headWantedEdit, { distalHead: undefined })}
        />
      </div>
    </details>
  );
}

/** How many of each fitting; empty or nought takes it away. */
function Fittings({ system }: { system: PressureSystem }): ReactNode {
  const change = usePressureChange(system);
  const { rows, source } = fittingRows();
  const fittings = system.fittings ?? [];
  const set = (id: string, count: number): void => {
    const others = fittings.filter((one) => one.id !== id);
    const next = count > 0 ? [...others, { id, count }] : others;
    change(words.flowLeaf.fittingsEdit, { fittings: next.length > 0 ? next : undefined });
  };
  return (
    <>
      {rows.map(({ id, name }) => (
        <MeasureField
          key={id}
          label={name}
          name={`fitting-${id}`}
          value={fittings.find((one) => one.id === id)?.count}
          usual={words.flowLeaf.none}
          measure={plain}
          onCommit={(count) => set(id, Math.round(count))}
          onClear={() => set(id, 0)}
        />
      ))}
      <p className="rule-source">{source}</p>
    </>
  );
}

/** Doses a day, their size, and the levels. */
export function DoseFields({ system }: { system: PressureSystem }): ReactNode {
  const change = usePressureChange(system);
  const { dose } = system;
  return (
    <>
      <ChamberFields system={system} />
      <MeasureField
        label={words.flowLeaf.dosesADay}
        name="doses"
        value={dose.perDay}
        measure={plain}
        least={0}
        above
        onCommit={(perDay) => change(words.flowLeaf.dosesEdit, { dose: { ...dose, perDay } })}
      />
      <MeasureField
        label={words.flowLeaf.oneDose}
        name="dose-volume"
        value={dose.volume}
        usual={words.flowLeaf.daysFlowDoses}
        measure={liquidVolume}
        least={0}
        above
        onCommit={(volume) => change(words.flowLeaf.doseEdit, { dose: { ...dose, volume } })}
        onClear={() => change(words.flowLeaf.doseEdit, { dose: without(dose, "volume") })}
      />
      <MeasureField
        label={words.flowLeaf.pumpOffOverFloor}
        name="pump-off"
        value={dose.off}
        usual={words.flowLeaf.tanksLowWater}
        measure={length}
        onCommit={(off) => change(words.flowLeaf.levelEdit, { dose: { ...dose, off } })}
        onClear={() => change(words.flowLeaf.levelEdit, { dose: without(dose, "off") })}
      />
      <MeasureField
        label={words.flowLeaf.alarmOverPump}
        name="alarm"
        value={dose.alarmAbove}
        usual={ALARM}
        typical={{ value: ALARM, source: words.forms.noSource }}
        measure={length}
        least={0}
        above
        onCommit={(alarmAbove) =>
          change(words.flowLeaf.alarmEdit, { dose: { ...dose, alarmAbove } })
        }
        onClear={() => change(words.flowLeaf.alarmEdit, { dose: without(dose, "alarmAbove") })}
      />
      <MeasureField
        label={words.flowLeaf.reserveOverAlarm}
        name="reserve"
        value={dose.reserve}
        usual={words.flowLeaf.oneDaysFlow}
        measure={liquidVolume}
        onCommit={(reserve) => change(words.flowLeaf.reserveEdit, { dose: { ...dose, reserve } })}
        onClear={() => change(words.flowLeaf.reserveEdit, { dose: without(dose, "reserve") })}
      />
    </>
  );
}
