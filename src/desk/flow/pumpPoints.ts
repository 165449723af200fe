import type { Pump, Site } from "../../site/index.js";
import { flow, head, plainNumber } from "../../units/index.js";
import { words } from "../../words/index.js";

type Points = NonNullable<Pump["curve"]>;

/** Points as lines of text in the site's units: flow, head, watts. */
export function writeCurve(
  points: readonly { flow: number; head: number; power?: number | undefined }[],
  units: Site["units"],
): string {
  return points
    .map((point) => {
      const power = point.power === undefined ? "" : `\t${plainNumber(point.power, 0)}`;
      const [at, up] = [flow.toSystem(point.flow, units), head.toSystem(point.head, units)];
      return `${plainNumber(at, 2)}\t${plainNumber(up, 2)}${power}`.replaceAll(",", "");
    })
    .join("\n");
}

/**
 * Lines of text to points. Columns may be parted by tabs, blanks, semicolons or commas followed by a
 * blank; a first line of words is skipped. What cannot be read is named by its line.
 */
export function readCurve(
  text: string,
  units: Site["units"],
): { ok: true; points: Points } | { ok: false; text: string } {
  const points: Points = [];
  const lines = text.split(/\r?\n/);
  for (const [i, line] of lines.entries()) {
    const cells = line
      .trim()
      .split(/[\t;]+|,\s+|\s+/)
      .filter((cell) => cell !== "");
    if (cells.length === 0) continue;
    if (i === 0 && cells.every((cell) => !/\d/.test(cell))) continue;
    const numbers = cells.map((cell) => Number(cell.replace(",", ".")));
    const [at, up, power] = numbers;
    const fine = numbers.every((one) => Number.isFinite(one) && one >= 0);
    if (!fine || at === undefined || up === undefined || numbers.length > 3) {
      return {
        ok: false,
        text: words.flowLeaf.lineWriteFlowHead(i + 1, line.trim()),
      };
    }
    points.push({
      flow: flow.fromSystem(at, units),
      head: head.fromSystem(up, units),
      ...(power === undefined ? {} : { power }),
    });
  }
  const problem = curveFault(points);
  return problem === null ? { ok: true, points } : { ok: false, text: problem };
}

/** What keeps points from being a pump's curve, in words. */
function curveFault(points: Points): string | null {
  if (points.length < 2) return words.flowLeaf.twoPointsOrMore;
  const sorted = [...points].sort((a, b) => a.flow - b.flow);
  for (let i = 1; i < sorted.length; i += 1) {
    const [before, here] = [sorted[i - 1]!, sorted[i]!];
    if (before.flow === here.flow) return words.flowLeaf.twoPointsHaveOne;
    if (here.head > before.head) return words.flowLeaf.headHasFallFlow;
  }
  return null;
}
