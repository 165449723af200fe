import { thingNamed } from "../../site/index.js";
import type { Finding, Site } from "../../site/index.js";
import type { Leaf, Picked } from "../../store/index.js";

/** Where a finding is at home: what it is about, and the leaf that has the fields to mend it. */
export interface FindingPlace {
  leaf: Leaf;
  /** What is picked in the scene; null for the site as a whole. */
  picked: Picked | null;
  /** What a person calls it; null for the site as a whole. */
  name: string | null;
  /** The pipe meant, when it is one. */
  pipe: string | null;
  /** The limit meant, when it is one. */
  limit: string | null;
}

/** The leaf for what a code is about, by the word before its dot; the rest belongs to the dig. */
const LEAF_OF_CODE: Readonly<Record<string, Leaf>> = {
  survey: "survey",
  ground: "survey",
  probe: "survey",
  pipe: "flow",
  drain: "flow",
  main: "flow",
  pump: "flow",
  pressure: "flow",
  dose: "flow",
  chamber: "flow",
  laterals: "flow",
  beds: "flow",
  sizing: "flow",
  tank: "flow",
  machine: "machines",
  rental: "machines",
  loads: "cost",
  lift: "machines",
  line: "machines",
  rule: "handover",
  power: "flow",
  cost: "cost",
  price: "cost",
};

/** Codes that begin like others and belong elsewhere. */
const LEAF_OF_WHOLE_CODE: Readonly<Record<string, Leaf>> = {
  // The lift of water by a pump, not of a tank by a crane.
  "lift.below-low-water": "flow",
  "lift.no-tank": "flow",
  // What stands in the hole's own form.
  "tank.riser": "dig",
  "tank.rock-bedding": "dig",
};

/** The leaf that a finding of this code belongs to. */
export function leafOfCode(code: string): Leaf {
  const first = code.split(".")[0] ?? "";
  return LEAF_OF_WHOLE_CODE[code] ?? LEAF_OF_CODE[first] ?? "dig";
}

/** Where a finding of this scheme is at home. */
export function placeOfFinding(site: Site, schemeId: string, finding: Finding): FindingPlace {
  const thing = thingNamed(site, schemeId, finding.where);
  const own = leafOfCode(finding.code);
  if (thing === null) return { leaf: own, picked: null, name: null, pipe: null, limit: null };
  const { kind, id, name, pipe } = thing;
  const limit = kind === "limit" ? id : null;
  return { leaf: kind === "work" ? own : "survey", picked: { kind, id }, name, pipe, limit };
}

/** How many findings of each level there are. */
export interface FindingCount {
  stop: number;
  caution: number;
  note: number;
}

/** Counts findings by level, but for those that a person took on with a reason. */
export function countFindings(findings: readonly Finding[]): FindingCount {
  const count: FindingCount = { stop: 0, caution: 0, note: 0 };
  for (const { level, accepted } of findings) if (accepted === undefined) count[level] += 1;
  return count;
}

/** Findings that stop the job first, then cautions, then notes; within a level as they came. */
export function worstFirst(findings: readonly Finding[]): Finding[] {
  const order = ["stop", "caution", "note"] as const;
  return order.flatMap((level) => findings.filter((one) => one.level === level));
}
