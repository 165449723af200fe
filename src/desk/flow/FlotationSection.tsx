import type { ReactNode } from "react";
import { length, mass } from "../../units/index.js";
import { MeasureField } from "../fields/MeasureField.js";
import { Findings } from "../Findings.js";
import { useSite } from "../useSite.js";
import { QuantityWorking, Working } from "../Working.js";
import { useFlowChange, useScheme } from "./useFlow.js";
import { Term } from "../book/Term.js";

/** Whether empty tanks stay down in groundwater, and what would hold them. */
export function FlotationSection(): ReactNode {
  const { estimate, site } = useSite();
  const change = useFlowChange();
  const scheme = useScheme();
  const { units } = site;
  const now = scheme?.flow?.flotation;
  const results = estimate?.flow.flotation ?? [];
  return (
    <section aria-label="Groundwater and empty tanks">
      <h2>
        <span>
          Groundwater and <Term id="uplift">empty tanks</Term>
        </span>
      </h2>
      <MeasureField
        label="Highest groundwater, below ground"
        name="groundwater"
        value={now?.water}
        usual="not said yet"
        measure={length}
        onCommit={(water) => change("groundwater", { flotation: { ...now, water } })}
        onClear={() => change("groundwater", { flotation: undefined })}
      />
      {now !== undefined && (
        <MeasureField
          label="Anchor, weighed in water"
          name="anchor"
          value={now.anchor}
          usual="none"
          measure={mass}
          onCommit={(anchor) => change("anchor", { flotation: { ...now, anchor } })}
          onClear={() => change("anchor", { flotation: { water: now.water } })}
        />
      )}
      {results.map((tank) => (
        <Working
          key={tank.tank}
          text={`${tank.name}, empty`}
          amount={
            tank.factor === null ? "stands dry" : `weighs ${tank.factor.toFixed(2)} × its uplift`
          }
        >
          <QuantityWorking quantity={tank.uplift} decimal />
          <QuantityWorking quantity={tank.weight} decimal />
          {tank.factor !== null && tank.factor < tank.wanted && (
            <p>
              {length.print(tank.coverMore, units)} more ground over it, or an anchor of{" "}
              {mass.print(tank.anchorMore, units)}, brings it to {tank.wanted}.
            </p>
          )}
        </Working>
      ))}
      <Findings findings={(estimate?.findings ?? []).filter((one) => one.code === "tank.floats")} />
    </section>
  );
}
