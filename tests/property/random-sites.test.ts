/** What must hold for any site: the ground stays whole, the ledger balances, nothing is not a number. */
import { describe, expect, it } from "vitest";
import { estimate, stageMesh } from "../../src/estimate/index.js";
import { apart, dug, SCHEME, total } from "../fixtures/site.js";
import { randomSite } from "../fixtures/randomSite.js";

const FIRST = 7000;
const BATCH = 40;
const BATCHES = 8;

/** Paths of numbers in a result that are not finite. */
function notFinite(thing: unknown, path = ""): string[] {
  if (typeof thing === "number") return Number.isFinite(thing) ? [] : [`${path} is ${thing}`];
  if (typeof thing !== "object" || thing === null) return [];
  return Object.entries(thing).flatMap(([key, each]) => notFinite(each, `${path}.${key}`));
}

function faultOf(seed: number): string | null {
  const site = randomSite(seed);
  const { result, gap } = dug(site);
  if (gap > 1e-9) return `ledger gap ${gap}`;
  const cuts = result.works.reduce((sum, work) => sum + total(work.cut), 0);
  if (apart(cuts, total(result.cut), 1) > 1e-12) return "the whole cut is not the works' cuts";
  for (const work of result.works) {
    for (const [id, volume] of Object.entries({ ...work.cut, ...work.fill })) {
      if (volume < 0) return `${work.id} has ${volume} m³ of ${id}`;
    }
    if (work.kind === "tank" || work.kind === "trench") {
      const put = total(work.fill) + work.displaced;
      if (apart(put, total(work.cut), 1e-3) > 1e-9) {
        return `${work.id} takes out ${total(work.cut)} and puts in ${put}`;
      }
    }
  }
  const done = estimate(site, SCHEME);
  const offSurvey = new Set(
    done.findings.filter((f) => f.code === "survey.too-small").map((f) => f.where),
  );
  const broken = notFinite(done);
  if (broken.length > 0 && offSurvey.size === 0) return broken.join("; ");
  return null;
}

describe(`${BATCH * BATCHES} random sites, seeds ${FIRST} to ${FIRST + BATCH * BATCHES - 1}`, () => {
  it.each(Array.from({ length: BATCHES }, (_, i) => FIRST + BATCH * i))(
    `${BATCH} of them, from seed %d`,
    (first) => {
      const faults: string[] = [];
      for (let seed = first; seed < first + BATCH; seed++) {
        try {
          const fault = faultOf(seed);
          if (fault) faults.push(`seed ${seed}: ${fault}`);
        } catch (error) {
          faults.push(
            `seed ${seed}: ${error instanceof Error ? (error.stack ?? "") : String(error)}`,
          );
        }
      }
      expect(faults).toEqual([]);
    },
  );
});

describe("stages as triangles", () => {
  it.each([7003, 7004, 7005, 7006])("every number is finite at every stage, seed %d", (seed) => {
    const site = randomSite(seed);
    for (const stage of ["found", "dug", "bedded", "set", "backfilled"] as const) {
      const { positions, normals, edges } = stageMesh(site, SCHEME, stage);
      expect(positions.length).toBeGreaterThan(0);
      expect(positions.length % 9).toBe(0);
      for (const array of [positions, normals, edges])
        expect(array.every(Number.isFinite)).toBe(true);
    }
  });
});
