import type { ReactNode } from "react";
import { changeProbe } from "../../site/index.js";
import type { Probe } from "../../site/index.js";
import { length } from "../../units/index.js";
import { words } from "../../words/index.js";
import { MeasureField } from "../fields/MeasureField.js";
import { useEdit } from "../useSite.js";

const { probe: said } = words.trench;

/** How deep a probe met water; empty where it met none or nobody looked. */
export function ProbeWater({ probe }: { probe: Probe }): ReactNode {
  const edit = useEdit();
  return (
    <MeasureField
      label={
        <>
          {said.water} <small>{said.below}</small>
        </>
      }
      name="probe-water"
      value={probe.water}
      measure={length}
      least={0}
      usual={said.none}
      onCommit={(water) =>
        edit(said.step(probe.id), (now) => changeProbe(now, probe.id, (one) => ({ ...one, water })))
      }
      onClear={() =>
        edit(said.step(probe.id), (now) =>
          changeProbe(now, probe.id, ({ water: _, ...one }) => one),
        )
      }
    />
  );
}
