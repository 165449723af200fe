import catalogue from "../../shared/catalogue/flow-rules.json" with { type: "json" };
import type { Scheme } from "../site/index.js";
import type { Rule } from "./rule.js";

/** A limit of the flow checks as the catalogue has it, SI. */
export interface FlowRule {
  id: string;
  name: string;
  value: number;
  /** SI unit; "share" for a part of one, "" for a plain number. */
  unit: string;
  source: string;
}

/** Every limit that a scheme can set anew. */
export function flowRules(): readonly FlowRule[] {
  return catalogue.rules;
}

/** A limit by its id: the scheme's own value, else the catalogue's. Throws on an unknown id. */
export function flowRule(id: string, scheme: Pick<Scheme, "flow">): Rule {
  const row = catalogue.rules.find((rule) => rule.id === id);
  if (row === undefined) throw new Error(`flow rules: got "${id}", expected a catalogue id`);
  const own = scheme.flow?.rules?.find((rule) => rule.id === id);
  if (own === undefined) return { value: row.value, source: row.source };
  return { value: own.value, source: own.source ?? "set in this scheme" };
}
