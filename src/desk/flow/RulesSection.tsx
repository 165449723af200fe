import type { ReactNode } from "react";
import { flowRules } from "../../estimate/index.js";
import { setFlowRule } from "../../site/index.js";
import { density, length, liquidVolume, velocity } from "../../units/index.js";
import type { Measure } from "../../units/index.js";
import { words } from "../../words/index.js";
import { MeasureField } from "../fields/MeasureField.js";
import { percent } from "../fields/percent.js";
import { plain } from "../fields/plain.js";
import { useEdit, useSite } from "../useSite.js";
import { useScheme } from "./useFlow.js";

const MEASURES: Readonly<Record<string, Measure>> = {
  m: length,
  "m/s": velocity,
  "m³": liquidVolume,
  "kg/m³": density,
  share: percent,
};

/** Every limit that the checks use, with its source, to be replaced by the local one. */
export function RulesSection(): ReactNode {
  const { schemeId } = useSite();
  const edit = useEdit();
  const own = useScheme()?.flow?.rules ?? [];
  const set = (id: string, name: string, value: number | null): void =>
    edit(words.flowLeaf.limitEdit(name), (site) => setFlowRule(site, schemeId, id, value));
  return (
    <details className="working">
      <summary>
        <span className="text">{words.flowLeaf.limitsUsedHere}</span>
        <span className="amount">{own.length > 0 ? words.flowLeaf.ofYourOwn(own.length) : ""}</span>
      </summary>
      <div className="inside">
        <p>{words.flowLeaf.lawDiffersPlacePut}</p>
        {flowRules().map((rule) => {
          const chosen = own.find((one) => one.id === rule.id);
          return (
            <MeasureField
              key={rule.id}
              label={rule.name}
              name={`rule-${rule.id}`}
              value={chosen?.value}
              usual={rule.value}
              typical={{ value: rule.value, source: rule.source }}
              measure={MEASURES[rule.unit] ?? plain}
              onCommit={(value) => set(rule.id, rule.name, value)}
              onClear={() => set(rule.id, rule.name, null)}
            />
          );
        })}
      </div>
    </details>
  );
}
