/**
 * `npm run bench`: how long the engine takes, beside general-purpose libraries in the same run.
 * Seeded; medians of many runs. `-- --json` prints one JSON object a line.
 */
import { readFileSync } from "node:fs";
import Delaunator from "delaunator";
import Module from "manifold-3d";
import { digScheme } from "../../src/dig/index.js";
import { estimate, stageMesh } from "../../src/estimate/index.js";
import { baseGround, type BaseGround } from "../../src/ground/index.js";
import { readSite, type Site } from "../../src/site/index.js";
import { plainSite, plainTank } from "../../src/site/site.fixture.js";

interface Row {
  name: string;
  median_ms: number;
  vs?: string;
  vs_median_ms?: number;
  ratio?: number;
}

/** Median time of a call, ms, after warming up. */
function median(runs: number, call: () => void): number {
  for (let i = 0; i < Math.min(5, runs); i++) call();
  const times: number[] = [];
  for (let i = 0; i < runs; i++) {
    const start = performance.now();
    call();
    times.push(performance.now() - start);
  }
  return times.sort((a, b) => a - b)[Math.floor(runs / 2)]!;
}

/** A small seeded generator (mulberry32), 0 up to 1. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A hole 3 × 5 m with 1:1 walls and one rock layer in random ground, 100 m square. */
function hillSite(count: number): Site {
  const random = seeded(20261125);
  const height = (x: number, y: number): number =>
    100 + 3 * Math.sin(x / 15) + 2 * Math.cos(y / 11);
  const points = Array.from({ length: count }, (_, i) => {
    const [x, y] = [100 * random() - 50, 100 * random() - 50];
    return { id: `p${i}`, x, y, z: height(x, y) };
  });
  const tank = plainTank({
    base: height(0, 0) - 7.5,
    body: { length: 5, width: 3, height: 2 },
    bedding: { depth: 0, material: "pea-gravel" },
    walls: { by: "run", run: 1 },
  });
  const site = plainSite({ works: [tank], layers: [0, 1.5] });
  return { ...site, survey: { points } };
}

function baseOf(site: Site): BaseGround {
  const base = baseGround(site);
  if (!base.ok) throw new Error(base.problem.text);
  return base.base;
}

async function editAgainstKernel(count: number): Promise<Row> {
  const site = hillSite(count);
  const base = baseOf(site);
  const scheme = site.schemes[0]!;
  let cut = 0;
  const ours = median(30, () => {
    const { result } = digScheme(site, scheme, base, "dug");
    cut = Object.values(result.cut).reduce((sum, volume) => sum + volume, 0);
  });
  const kernel = await kernelEdit(base, 7.5);
  const apart = Math.abs(kernel.volume - cut) / cut;
  if (apart > 1e-4) throw new Error(`kernel digs ${kernel.volume} m³, we dig ${cut} m³`);
  return {
    name: `edit-${count / 1000}k`,
    median_ms: ours,
    vs: "manifold-3d",
    vs_median_ms: kernel.ms,
    ratio: kernel.ms / ours,
  };
}

/** The same hole by a general solid kernel: intersection with a solid made beforehand. */
async function kernelEdit(
  { tin }: BaseGround,
  depth: number,
): Promise<{ ms: number; volume: number }> {
  const kernel = await Module();
  kernel.setup();
  const ground = kernel.Manifold.ofMesh(groundSolid(kernel, tin));
  const floor = 100 + 2 - depth - tin.origin[2];
  const top = 40;
  const corners = (half: [number, number], z: number): [number, number, number][] => [
    [-half[0], -half[1], z],
    [half[0], -half[1], z],
    [half[0], half[1], z],
    [-half[0], half[1], z],
  ];
  const shift: [number, number, number] = [-tin.origin[0], -tin.origin[1], 0];
  const hole = kernel.Manifold.hull([
    ...corners([1.5, 2.5], floor),
    ...corners([1.5 + top, 2.5 + top], floor + top),
  ]).translate(shift);
  let volume = 0;
  const ms = median(5, () => {
    const dug = ground.intersect(hole);
    volume = dug.volume();
    dug.delete();
  });
  return { ms, volume };
}

function groundSolid(
  kernel: Awaited<ReturnType<typeof Module>>,
  tin: BaseGround["tin"],
): InstanceType<Awaited<ReturnType<typeof Module>>["Mesh"]> {
  const count = tin.x.length;
  const bottom = tin.lowest - 20;
  const vertProperties = new Float32Array(6 * count);
  for (let i = 0; i < count; i++) {
    vertProperties.set([tin.x[i]!, tin.y[i]!, tin.z[i]!], 3 * i);
    vertProperties.set([tin.x[i]!, tin.y[i]!, bottom], 3 * (count + i));
  }
  const triVerts: number[] = [];
  for (let t = 0; t < tin.triangles.length; t += 3) {
    const [a, b, c] = [tin.triangles[t]!, tin.triangles[t + 1]!, tin.triangles[t + 2]!];
    triVerts.push(a, b, c, count + a, count + c, count + b);
  }
  tin.hull.forEach((v, i) => {
    const w = tin.hull[(i + 1) % tin.hull.length]!;
    triVerts.push(v, count + v, w, w, count + v, count + w);
  });
  return new kernel.Mesh({ numProp: 3, vertProperties, triVerts: Uint32Array.from(triVerts) });
}

function tinAgainstDelaunator(count: number): Row {
  const { survey, ground } = hillSite(count);
  const xy = Float64Array.from(survey.points.flatMap(({ x, y }) => [x, y]));
  const vs = median(5, () => new Delaunator(xy));
  const ours = median(5, () => {
    // A new survey object each time: the ground is remembered by identity.
    baseOf({ ...plainSite({}), survey: { ...survey }, ground });
  });
  return {
    name: `tin-${count / 1000}k`,
    median_ms: ours,
    vs: "delaunator alone",
    vs_median_ms: vs,
    ratio: vs / ours,
  };
}

function exampleRows(): Row[] {
  const text = readFileSync(
    new URL("../../shared/sites/alder-flat.site.json", import.meta.url),
    "utf8",
  );
  const read = readSite(text);
  if (!read.ok) throw new Error("the example cannot be read");
  const site = read.value;
  const scheme = site.schemes[0]!.id;
  return [
    { name: "estimate-example", median_ms: median(100, () => estimate(site, scheme)) },
    { name: "mesh-example", median_ms: median(100, () => stageMesh(site, scheme, "dug")) },
  ];
}

const rows: Row[] = [
  ...exampleRows(),
  await editAgainstKernel(10_000),
  await editAgainstKernel(100_000),
  tinAgainstDelaunator(100_000),
];
for (const row of rows) {
  if (process.argv.includes("--json")) console.log(JSON.stringify(row));
  else {
    const beside = row.ratio
      ? `  ${row.vs} ${row.vs_median_ms?.toFixed(2)} ms, ratio ${row.ratio.toFixed(2)}`
      : "";
    console.log(`${row.name.padEnd(18)} ${row.median_ms.toFixed(2).padStart(9)} ms${beside}`);
  }
}
