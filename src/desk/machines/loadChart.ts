import type { ChartRow } from "../../estimate/index.js";
import { length, mass, plainNumber } from "../../units/index.js";
import type { UnitSystem } from "../../units/index.js";
import { words } from "../../words/index.js";

/** A load chart as lines of text in the site's units: radius, load. */
export function writeChart(table: readonly ChartRow[], units: UnitSystem): string {
  return table
    .map(({ radius, load }) => {
      const at = plainNumber(length.toSystem(radius, units), 2).replace(/\.?0+$/, "");
      return `${at}\t${plainNumber(mass.toSystem(load, units), 0)}`.replaceAll(",", "");
    })
    .join("\n");
}

/**
 * Lines of text to a load chart, m and kg, the shortest radius first. Columns may be parted by tabs,
 * blanks or semicolons; thousands by a comma; a first line of words is skipped. What cannot be read
 * is named by its line. A chart's loads never grow with the radius, so one that does is refused.
 */
export function readChart(
  text: string,
  units: UnitSystem,
): { ok: true; table: ChartRow[] } | { ok: false; text: string } {
  const table: ChartRow[] = [];
  for (const [i, line] of text.split(/\r?\n/).entries()) {
    const cells = line
      .trim()
      .split(/[\t;]+\s*|,\s+|\s+/)
      .filter((cell) => cell !== "");
    if (cells.length === 0) continue;
    if (i === 0 && cells.every((cell) => !/\d/.test(cell))) continue;
    const [radius, load] = cells.map(chartNumber);
    if (cells.length !== 2 || !isOver(radius) || !isOver(load)) {
      return {
        ok: false,
        text: words.machinesLeaf.lineWriteRadiusLoad(i + 1, line.trim()),
      };
    }
    table.push({
      radius: length.fromSystem(radius, units),
      load: mass.fromSystem(load, units),
    });
  }
  table.sort((a, b) => a.radius - b.radius);
  const problem = chartFault(table);
  return problem === null ? { ok: true, table } : { ok: false, text: problem };
}

/** “12,500” is twelve thousand five hundred, as charts write it; “7,5” is seven and a half. */
function chartNumber(cell: string): number {
  if (/^\d{1,3}(,\d{3})+(\.\d+)?$/.test(cell)) return Number(cell.replaceAll(",", ""));
  return Number(cell.replace(",", "."));
}

function isOver(value: number | undefined): value is number {
  return value !== undefined && Number.isFinite(value) && value > 0;
}

function chartFault(table: readonly ChartRow[]): string | null {
  if (table.length === 0) return words.machinesLeaf.oneLineOrMore;
  for (let i = 1; i < table.length; i += 1) {
    const [before, here] = [table[i - 1]!, table[i]!];
    if (before.radius === here.radius) return words.machinesLeaf.oneRadiusStandsTwice;
    if (here.load > before.load) {
      return words.machinesLeaf.loadGrowsWithRadius;
    }
  }
  return null;
}
