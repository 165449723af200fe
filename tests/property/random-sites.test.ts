/** What must hold for any site (fixtures/faults.ts), on larger random sites than the fuzz. */
import { describe, expect, it } from "vitest";
import { stageMesh } from "../../src/estimate/index.js";
import { lookAt } from "../fixtures/faults.js";
import { randomSite } from "../fixtures/randomSite.js";
import { SCHEME } from "../fixtures/site.js";

const FIRST = 7000;
const BATCH = 40;
const BATCHES = 8;

function faultsOf(seed: number): string[] {
  const looked = lookAt(randomSite(seed), { places: 40, stages: seed % 4 === 0 });
  if ("unfit" in looked) return [`seed ${seed} is unfit: ${looked.unfit}`];
  return looked.faults.map(({ rule, text }) => `seed ${seed}, ${rule}: ${text}`);
}

describe(`${BATCH * BATCHES} random sites, seeds ${FIRST} to ${FIRST + BATCH * BATCHES - 1}`, () => {
  it.each(Array.from({ length: BATCHES }, (_, i) => FIRST + BATCH * i))(
    `${BATCH} of them, from seed %d`,
    (first) => {
      const faults: string[] = [];
      for (let seed = first; seed < first + BATCH; seed++) faults.push(...faultsOf(seed));
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
