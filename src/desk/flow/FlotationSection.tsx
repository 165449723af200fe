import type { ReactNode } from "react";
import { length, mass } from "../../units/index.js";
import { words } from "../../words/index.js";
import { MeasureField } from "../fields/MeasureField.js";
import { Findings } from "../Findings.js";
import { useSite } from "../useSite.js";
import { QuantityWorking, Working } from "../Working.js";
import { useFlowChange, useScheme } from "./useFlow.js";
import { Term } from "../book/Term.js";

const isOfWater = ({ code }: { code: string }): boolean =>
  code.startsWith("tank.floats") || code === "tank.water-set-low";

/** Whether empty tanks stay down in groundwater, and what would hold them. */
export function FlotationSection(): ReactNode {
  const { estimate, site } = useSite();
  const change = useFlowChange();
  const scheme = useScheme();
  const { units } = site;
  const now = scheme?.flow?.flotation;
  const results = estimate?.flow.flotation ?? [];
  return (
    <section aria-label={words.flowLeaf.groundwaterEmptyTanks}>
      <h2>
        <span>
          {words.flowLeaf.groundwaterAnd} <Term id="uplift">{words.flowLeaf.emptyTanks}</Term>
        </span>
      </h2>
      <MeasureField
        label={words.flowLeaf.highestGroundwaterBelowGround}
        name="groundwater"
        value={now?.water}
        usual={words.flowLeaf.notSaidYet}
        measure={length}
        onCommit={(water) =>
          change(words.flowLeaf.groundwaterEdit, { flotation: { ...now, water } })
        }
        onClear={() => change(words.flowLeaf.groundwaterEdit, { flotation: undefined })}
      />
      {now !== undefined && (
        <MeasureField
          label={words.flowLeaf.anchorWeighedWater}
          name="anchor"
          value={now.anchor}
          usual={words.flowLeaf.none}
          measure={mass}
          onCommit={(anchor) =>
            change(words.flowLeaf.anchorEdit, { flotation: { ...now, anchor } })
          }
          onClear={() => change(words.flowLeaf.anchorEdit, { flotation: { water: now.water } })}
        />
      )}
      {results.map((tank) => (
        <Working
          key={tank.tank}
          text={words.flowLeaf.empty(tank.name)}
          amount={
            tank.factor === null
              ? words.flowLeaf.standsDry
              : words.flowLeaf.weighsItsUplift(tank.factor.toFixed(2))
          }
        >
          <QuantityWorking quantity={tank.uplift} decimal />
          <QuantityWorking quantity={tank.weight} decimal />
          {tank.bare !== null && (
            <p>{words.flowLeaf.bareWeighs(tank.bare.toFixed(2), tank.wanted)}</p>
          )}
          {tank.factor !== null && tank.factor < tank.wanted && (
            <p>
              {words.flowLeaf.moreGroundOverOr(
                length.print(tank.coverMore, units),
                mass.print(tank.anchorMore, units),
                tank.wanted,
              )}
            </p>
          )}
        </Working>
      ))}
      <Findings findings={(estimate?.findings ?? []).filter(isOfWater)} />
    </section>
  );
}
