/**
 * Many small random sites, borderline ones above all. Each must keep its ground whole, its ledger
 * balanced; every eighth also the layers that plain arithmetic finds at any place
 * (tests/fixtures/faults), and every fortieth through all stages of the job, with the estimate.
 *
 *   FUZZ=200000 npx vitest run tests/property/fuzz.test.ts     that many sites
 *   FUZZ_FROM=7                                                the first seed
 *   FUZZ_KEEP=1                                                keeps shrunk failures as fixtures
 */
import { writeFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { writeSite, type Site } from "../../src/site/index.js";
import { lookAt, type Fault, type Thoroughness } from "../fixtures/faults.js";
import { shrunk } from "../fixtures/shrink.js";
import { smallSite } from "../fixtures/smallSite.js";

const COUNT = Number(process.env["FUZZ"] ?? 20_000);
const FIRST = Number(process.env["FUZZ_FROM"] ?? 1);
const BATCH = 1000;
/** Failures that are shrunk and told in a batch; more say nothing new. */
const TOLD = 5;

function thoroughness(seed: number): Thoroughness {
  // Every site's ledger and cells are checked; columns and stages, which take longer, now and then.
  return { places: seed % 8 === 0 ? 8 : 0, stages: seed % 40 === 0 };
}

function reported(seed: number, site: Site, how: Thoroughness, fault: Fault): string {
  const same = (other: Site): boolean => {
    const looked = lookAt(other, how);
    return "faults" in looked && looked.faults.some(({ rule }) => rule === fault.rule);
  };
  const small = shrunk(site, same);
  if (process.env["FUZZ_KEEP"]) {
    const name = `${fault.rule.replaceAll(/\W+/g, "-")}-${seed}.site.json`;
    writeFileSync(new URL(`../fixtures/repro/${name}`, import.meta.url), writeSite(small));
  }
  return `seed ${seed}, ${fault.rule}: ${fault.text}\nas small as it gets:\n${JSON.stringify(small)}`;
}

describe(`${COUNT} small random sites, seeds ${FIRST} to ${FIRST + COUNT - 1}`, () => {
  const starts = Array.from({ length: Math.ceil(COUNT / BATCH) }, (_, i) => FIRST + BATCH * i);
  it.each(starts)("hold, from seed %d", { timeout: 300_000 }, (first) => {
    const faults: string[] = [];
    let [unfit, compared, failed] = [0, 0, 0];
    const last = Math.min(first + BATCH, FIRST + COUNT);
    for (let seed = first; seed < last; seed++) {
      const site = smallSite(seed);
      const how = thoroughness(seed);
      const looked = lookAt(site, how);
      if ("unfit" in looked) {
        unfit++;
        continue;
      }
      compared += looked.compared;
      const [fault] = looked.faults;
      if (!fault) continue;
      failed++;
      if (faults.length < TOLD) faults.push(reported(seed, site, how, fault));
    }
    expect(faults, `${failed} of ${last - first} sites fail`).toEqual([]);
    // The generator must not quietly stop making what is to be tested.
    expect(unfit).toBeLessThan(0.1 * (last - first) + 5);
    expect(compared).toBeGreaterThan(0.2 * (last - first) - 50);
  });
});
