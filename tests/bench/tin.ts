/** From survey points to ready ground: time beside delaunator alone, and the memory it takes. */
import { execFile } from "node:child_process";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";

const run = promisify(execFile);
const ONCE = fileURLToPath(new URL("./tinOnce.ts", import.meta.url));

/** Median times, ms, and the greatest resident memory of a process that does nothing else, MB. */
export interface TinMeasure {
  /** Welding, splitting breaklines, triangulating, constraining, sorting, indexing. */
  ours_ms: number;
  /** `new Delaunator(coords)` on the same points, in the order of the survey. */
  vs_ms: number;
  /** The whole process at its peak: Node, tsx, the survey as objects, and the building. */
  peak_mb: number;
  /** The same process with the survey in memory, before building. */
  input_mb: number;
}

/** Measures building the ground of a seeded random survey, in two processes one after the other. */
export async function measureTin(points: number, breaklines: number): Promise<TinMeasure> {
  const times = await once<{ ours_ms: number; vs_ms: number }>("time", points, breaklines);
  const memory = await once<{ input_mb: number; peak_mb: number }>("memory", points, breaklines);
  return { ...times, ...memory };
}

async function once<T>(what: "time" | "memory", points: number, breaklines: number): Promise<T> {
  const args = ["--expose-gc", "--import", "tsx", ONCE, what, String(points), String(breaklines)];
  const { stdout } = await run(process.execPath, args);
  return JSON.parse(stdout) as T;
}
