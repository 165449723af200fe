/**
 * Every code of a finding that the engine can raise: on a small job that raises it, and on the like
 * of it that does not. Codes whose rule stands in the rule book are held on both sides of its number
 * in tests/published/rule-book.test.ts; others where `ELSEWHERE` says.
 */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import alder from "../../shared/sites/alder-flat.site.json" with { type: "json" };
import { estimate } from "../../src/estimate/index.js";
import type { Site } from "../../src/site/index.js";
import { ENGINE_FOLDERS } from "../lint/folder-table.js";
import { estimated, type Job } from "../fixtures/job.js";
import { DUG } from "./findingCodes/dug.js";
import { MACHINES } from "./findingCodes/machines.js";

const PAIRS = [...DUG, ...MACHINES];
const ROOT = new URL("../../", import.meta.url);

/** Tests that hold the codes named in them on both sides. */
const ELSEWHERE: Readonly<Record<string, readonly string[]>> = {
  "tests/published/ruleBook/holes.ts": [
    ...["walls.protect", "walls.way-out", "walls.engineer", "walls.too-steep", "walls.bench-high"],
    ...["edge.load", "edge.undermines", "pile.near-edge", "lift.edge", "dig.digs-earlier-work"],
  ],
  "tests/published/ruleBook/land.ts": [
    ...["runoff.comes-in", "runoff.hollow", "slope.cut-stays", "slope.fill-stays", "ground.steep"],
    ...["land.permit", "land.drains", "building.gap"],
  ],
  "tests/published/ruleBook/lines.ts": [
    ...["line.by-hand", "line.overhead-ask", "lift.slope", "tank.riser", "tank.rock-bedding"],
    "pipe.cover-too-small",
  ],
  "tests/reference/flow-findings.test.ts": [
    ...["beds.uneven", "laterals.uneven", "dose.large", "dose.no-design-flow", "dose.small"],
    ...["chamber.intake-low", "chamber.little-reserve", "chamber.no-room"],
    ...["drain.bend-without-cleanout", "drain.cleanouts-apart", "drain.deep", "drain.slow"],
    ...["drain.too-small", "main.air", "main.fast", "main.freezes", "main.sags", "main.siphon"],
    ...["main.slow", "pipe.crosses", "pipe.starts-above", "pressure.part-missing"],
    ...["pump.below-shut-off", "pump.no-curve", "pump.off-curve", "pump.outrun", "pump.too-weak"],
    ...["sizing.field-small", "sizing.percolation-outside", "sizing.soil-unsuitable"],
    ...["sizing.tank-small", "tank.floats", "tank.floats-bare", "tank.little-drop"],
    ...["drain.fast", "chamber.few-doses", "tank.shallow-liquid"],
  ],
  "src/flow/checkFlow.test.ts": [
    ...["pipe.cover-unknown", "pipe.stretch-too-flat", "lift.below-low-water"],
  ],
  "src/flow/fieldPipes.test.ts": ["field.rises"],
  "src/flow/floating.test.ts": ["tank.water-set-low"],
  "src/flow/pipeEnds.test.ts": ["pipe.starts-at-nothing", "pipe.ends-at-nothing"],
  "src/flow/sizingMound.test.ts": ["sizing.mound-too-steep"],
  "src/flow/settling.test.ts": ["chamber.no-settling"],
  "tests/published/soak-depth.test.ts": ["field.little-soil"],
  "src/land/land.test.ts": ["land.drive-width"],
  "src/machines/canIt.test.ts": ["machine.dig-backwards"],
  "src/dig/dig.test.ts": ["walls.too-many-benches"],
};

const NO_CODES = new Set([
  // Places in a site file, named by a problem of the survey.
  "survey.points",
  "survey.breaklines",
]);

/** Every string of the engine that reads like a code, from what stands in its files. */
function codesInEngine(): string[] {
  const files = ENGINE_FOLDERS.filter((folder) => folder !== "site").flatMap((folder) =>
    readdirSync(new URL(`src/${folder}/`, ROOT))
      .filter((file) => /\.ts$/.test(file) && !/\.(test|fixture)\.ts$/.test(file))
      .map((file) => readFileSync(new URL(`src/${folder}/${file}`, ROOT), "utf8")),
  );
  const codes = files.flatMap((text) => [
    ...[...text.matchAll(/"([a-z]+\.[a-z][a-z-]*)"/g)].map(([, code = ""]) => code),
    // Reasons against a stand, which liftFindings.ts turns into codes.
    ...[...text.matchAll(/\bagainst\("([a-z-]+)"/g)].map(([, reason = ""]) => `lift.${reason}`),
  ]);
  return [...new Set(codes)].filter((code) => !NO_CODES.has(code)).sort();
}

const codesOf = (job: Job): string[] => estimated(job).findings.map(({ code }) => code);

describe.each(PAIRS)("%s", (code, raises, silent) => {
  it("is raised, with a text and a source", () => {
    const found = estimated(raises).findings.find((one) => one.code === code);
    expect(found?.text).toMatch(/\S/);
    expect(found?.source).toMatch(/\S/);
  });

  it("is silent on the like of it", () => {
    expect(codesOf(silent)).not.toContain(code);
  });
});

describe("the engine's codes", () => {
  const held = new Set([...PAIRS.map(([code]) => code), ...Object.values(ELSEWHERE).flat()]);

  it("are each held on both sides", () => {
    expect(codesInEngine().filter((code) => !held.has(code))).toEqual([]);
  });

  it("of the flow are not raised on the example that its tests change, but for a main that sags", () => {
    const codes = estimate(alder as unknown as Site, "pumped").findings.map(({ code }) => code);
    const changed = ELSEWHERE["tests/reference/flow-findings.test.ts"] ?? [];
    expect(changed.filter((code) => codes.includes(code))).toEqual([
      "main.sags",
      "tank.floats-bare",
    ]);
  });

  it.each(Object.entries(ELSEWHERE))("of %s are named there", (file, codes) => {
    const text = readFileSync(new URL(file, ROOT), "utf8");
    expect(codes.filter((code) => !text.includes(`"${code}"`))).toEqual([]);
  });
});
