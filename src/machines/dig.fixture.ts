import type { DigResult, PipeRun, WorkQuantities } from "../dig/index.js";
import type { Scheme, Trench } from "../site/index.js";

/** A work's quantities for tests: nothing dug or placed but what is given. */
export function workOf(given: Partial<WorkQuantities> & { id: string }): WorkQuantities {
  return {
    name: given.id,
    kind: "tank",
    cut: {},
    fill: {},
    displaced: 0,
    floor: { lowest: 0, highest: 0 },
    deepest: 0,
    tallestFace: 0,
    daylight: 0,
    materialsMet: [],
    ...given,
  };
}

/** A dig result for tests: the cut is the sum of the works', the earth zeros but what is given. */
export function digOf(
  works: readonly WorkQuantities[],
  earth: Partial<DigResult["earth"]> = {},
  pipes: readonly PipeRun[] = [],
): DigResult {
  const cut: Record<string, number> = {};
  for (const work of works) {
    for (const [id, volume] of Object.entries(work.cut)) cut[id] = (cut[id] ?? 0) + volume;
  }
  const none = {
    bank: 0,
    loose: 0,
    reusedBank: 0,
    surplusBank: 0,
    surplusLoose: 0,
    surplusMass: 0,
    importCompacted: 0,
  };
  return { cut, works, earth: { ...none, ...earth }, pipes, findings: [] };
}

/** A scheme for tests with these works and settings. */
export function schemeOf(given: Partial<Scheme> = {}): Scheme {
  return { id: "scheme", name: "Scheme", works: [], ...given };
}

/** A trench as drawn, for tests. */
export function trenchOf(id: string, width: number): Trench {
  return {
    kind: "trench",
    id,
    name: id,
    path: [
      [0, 0],
      [10, 0],
    ],
    width,
    walls: { by: "run", run: 0 },
    bedding: { depth: 0.1, material: "crushed-gravel" },
    zone: { above: 0.15, material: "pea-gravel" },
    backfill: "native",
    pipes: [],
  };
}
