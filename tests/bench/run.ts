/**
 * `npm run bench`: how long the engine takes, beside general-purpose libraries in the same run.
 * Seeded; medians of many runs after warming up. `-- --json` prints one JSON object a line;
 * `-- edit tin` measures only the rows whose names begin so.
 */
import { editBesideSolid, editOfMillion, flatCost, readingLimit } from "./edits.js";
import { exampleRows } from "./example.js";
import { solveOf200 } from "./network.js";
import { measureTin } from "./tin.js";
import { beside, inWords, type Row } from "./timing.js";

async function tinRow(name: string, points: number, breaklines: number): Promise<Row> {
  const { ours_ms, vs_ms, peak_mb, input_mb } = await measureTin(points, breaklines);
  return { ...beside(name, ours_ms, "delaunator alone", vs_ms), breaklines, peak_mb, input_mb };
}

function print(row: Row): void {
  console.log(asked.includes("--json") ? JSON.stringify(row) : inWords(row));
}

/** The example first, then the edits, then what runs in processes of its own. */
async function* rows(): AsyncGenerator<Row> {
  if (wanted("estimate", "mesh")) yield* exampleRows();
  if (wanted("edit", "limit")) {
    yield editBesideSolid(10_000).row;
    const { row: edit100k, hill, edited } = editBesideSolid(100_000);
    yield edit100k;
    yield readingLimit(hill, edited, edit100k);
    yield editOfMillion(edit100k);
    yield flatCost();
  }
  if (wanted("network")) yield solveOf200();
  if (wanted("tin")) {
    yield await tinRow("tin-100k", 100_000, 100);
    yield await tinRow("tin-1m", 1_000_000, 1000);
  }
}

const asked = process.argv.slice(2);

/** True when no rows were asked for by name, or one of these was. */
function wanted(...names: string[]): boolean {
  const only = asked.filter((each) => !each.startsWith("--"));
  return only.length === 0 || only.some((each) => names.some((name) => each.startsWith(name)));
}

for await (const row of rows()) print(row);
