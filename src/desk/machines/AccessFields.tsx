import type { ReactNode } from "react";
import { liftRules } from "../../estimate/index.js";
import { ruleOf, withoutAbsent } from "../../site/index.js";
import { length, pipeSlope } from "../../units/index.js";
import { words } from "../../words/index.js";
import { MeasureField } from "../fields/MeasureField.js";
import { useScheme } from "../flow/useFlow.js";
import { useSite } from "../useSite.js";
import { useMachinesChange } from "./useMachines.js";

type Key = "width" | "slope" | "setBack" | "truckSide";

/** The way in to the site, and what a machine keeps and reaches over while it works. */
export function AccessFields(): ReactNode {
  const change = useMachinesChange();
  const access = useScheme()?.machines?.access;
  const { truckSide } = liftRules();
  const setBack = ruleOf(useSite().site, "spoil-back");
  function set(what: string, key: Key, value: number | undefined): void {
    change(what, (machines) => {
      const next = withoutAbsent({ ...machines.access, [key]: value });
      return { access: Object.keys(next).length === 0 ? undefined : next };
    });
  }
  const field = (
    key: Key,
    what: string,
  ): { onCommit: (v: number) => void; onClear: () => void } => ({
    onCommit: (value) => set(what, key, value),
    onClear: () => set(what, key, undefined),
  });
  return (
    <section aria-label={words.machinesLeaf.theWayIn}>
      <h2>{words.machinesLeaf.theWayIn}</h2>
      <MeasureField
        label={words.machinesLeaf.narrowestPlace}
        name="access-width"
        value={access?.width}
        usual={words.machinesLeaf.notEntered}
        measure={length}
        least={0}
        above
        {...field("width", words.machinesLeaf.narrowestPlaceStep)}
      />
      <MeasureField
        label={words.machinesLeaf.steepestStretch}
        name="access-slope"
        value={access?.slope}
        usual={words.machinesLeaf.notEntered}
        measure={pipeSlope}
        least={0}
        {...field("slope", words.machinesLeaf.steepestStretchStep)}
      />
      <MeasureField
        label={words.machinesLeaf.fromTopEdge}
        name="set-back"
        value={access?.setBack}
        usual={setBack.value}
        typical={setBack}
        measure={length}
        least={0}
        note={words.forms.keptByMachine}
        {...field("setBack", words.machinesLeaf.distanceFromTopEdge)}
      />
      <MeasureField
        label={words.machinesLeaf.trucksSide}
        name="truck-side"
        value={access?.truckSide}
        usual={truckSide.value}
        typical={truckSide}
        measure={length}
        least={0}
        above
        note={words.forms.truckTop}
        {...field("truckSide", words.machinesLeaf.sideTruck)}
      />
    </section>
  );
}
