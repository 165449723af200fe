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
  { id: "hazen-williams", name: "Hazen–Williams" },
  { id: "darcy", name: "Darcy–Weisbach, Colebrook" },
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
        <span className="text">Main and fittings</span>
      </summary>
      <div className="inside">
        <ChoiceField
          label="Pump stands in"
          name="pump-tank"
          value={system.tank}
          choices={tanks}
          onChoose={(tank) => change("tank", { tank })}
        />
        <ChoiceField
          label="Main"
          name="pump-main"
          value={system.main[0] ?? ""}
          choices={pipes}
          onChoose={(id) => change("main", { main: [id] })}
        />
        <ChoiceField
          label="Friction by"
          name="friction-by"
          value={friction?.by ?? "hazen-williams"}
          choices={LAWS}
          onChoose={(by) =>
            change("friction", {
              friction: by === "darcy" ? { by, roughness: SMOOTH } : undefined,
            })
          }
        />
        {friction?.by === "darcy" ? (
          <MeasureField
            label="Roughness of the pipe"
            value={friction.roughness}
            measure={size}
            print={{ digits: 5 }}
            onCommit={(roughness) => change("roughness", { friction: { ...friction, roughness } })}
          />
        ) : (
          <MeasureField
            label="Hazen–Williams C"
            name="friction-c"
            value={friction?.c}
            usual={SMOOTH_C}
            typical={{ value: SMOOTH_C, source: words.forms.recalledPlastic }}
            measure={plain}
            least={50}
            most={160}
            onCommit={(c) => change("friction", { friction: { by: "hazen-williams", c } })}
            onClear={() => change("friction", { friction: undefined })}
            note="Smooth plastic: 140 to 150. Typical, no source."
          />
        )}
        <Fittings system={system} />
        <label className="tick">
          <input
            type="checkbox"
            checked={system.checkValve === true}
            onChange={(event) =>
              change("check valve", { checkValve: event.target.checked ? true : undefined })
            }
          />
          A check valve holds the main full
        </label>
        <MeasureField
          label={
            <>
              <Term id="residualHead">Head wanted</Term> at the last hole
            </>
          }
          name="distal-head"
          value={system.distalHead}
          usual="by hole size"
          measure={head}
          least={0}
          above
          onCommit={(distalHead) => change("head wanted", { distalHead })}
          onClear={() => change("head wanted", { distalHead: undefined })}
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
    change("fittings", { fittings: next.length > 0 ? next : undefined });
  };
  return (
    <>
      {rows.map(({ id, name }) => (
        <MeasureField
          key={id}
          label={name}
          name={`fitting-${id}`}
          value={fittings.find((one) => one.id === id)?.count}
          usual="none"
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
        label="Doses a day"
        name="doses"
        value={dose.perDay}
        measure={plain}
        least={0}
        above
        onCommit={(perDay) => change("doses", { dose: { ...dose, perDay } })}
      />
      <MeasureField
        label="One dose"
        name="dose-volume"
        value={dose.volume}
        usual="day's flow ÷ doses"
        measure={liquidVolume}
        least={0}
        above
        onCommit={(volume) => change("dose", { dose: { ...dose, volume } })}
        onClear={() => change("dose", { dose: without(dose, "volume") })}
      />
      <MeasureField
        label="Pump off, over the floor"
        name="pump-off"
        value={dose.off}
        usual="tank's low water"
        measure={length}
        onCommit={(off) => change("level", { dose: { ...dose, off } })}
        onClear={() => change("level", { dose: without(dose, "off") })}
      />
      <MeasureField
        label="Alarm, over pump on"
        name="alarm"
        value={dose.alarmAbove}
        usual={ALARM}
        typical={{ value: ALARM, source: words.forms.noSource }}
        measure={length}
        least={0}
        above
        onCommit={(alarmAbove) => change("alarm", { dose: { ...dose, alarmAbove } })}
        onClear={() => change("alarm", { dose: without(dose, "alarmAbove") })}
      />
      <MeasureField
        label="Reserve over the alarm"
        name="reserve"
        value={dose.reserve}
        usual="one day's flow"
        measure={liquidVolume}
        onCommit={(reserve) => change("reserve", { dose: { ...dose, reserve } })}
        onClear={() => change("reserve", { dose: without(dose, "reserve") })}
      />
    </>
  );
}
