import { pipeLength } from "../dig/index.js";
import type { DigResult, PipeRun } from "../dig/index.js";
import { catalogueName } from "../site/index.js";
import type { Quantity, Scheme, Tank } from "../site/index.js";
import { cataloguePipes, cataloguePrices, priceRow } from "./catalogue.js";
import type { PipeRow, PriceRow } from "./catalogue.js";
import { costLine, countOf } from "./line.js";
import { pumpLines } from "./pumpLines.js";
import type { Pricing } from "./line.js";
import type { CostLine } from "./types.js";

/** Each tank by its volume, and setting them all. */
export function tankLines(pricing: Pricing, scheme: Scheme): CostLine[] {
  const tanks = scheme.works.filter((work): work is Tank => work.kind === "tank");
  if (tanks.length === 0) return [];
  const lines = tanks.map((tank) => tankLine(pricing, tank));
  const set = costLine(pricing, priceRow("tank-set"), {
    quantity: countOf(tanks.length, "one for each tank"),
    where: tanks.map((tank) => tank.id),
  });
  return [...lines, set];
}

function tankLine(pricing: Pricing, tank: Tank): CostLine {
  const { length, width, height, liquidVolume } = tank.body;
  const volume = liquidVolume ?? length * width * height;
  const rows = tankPrices();
  const largest = rows[rows.length - 1];
  if (!largest) throw new Error("price list: got no tanks, expected at least one");
  const row = rows.find((r) => volume <= r.upTo * (1 + 1e-3)) ?? largest;
  // A tank beyond the list counts as so many of the largest, in proportion to its volume.
  const count = Math.max(1, volume / largest.upTo / (1 + 1e-3));
  const base =
    liquidVolume === undefined ? "outside volume (no liquid volume given)" : "liquid volume";
  return costLine(pricing, row.price, {
    id: `${row.price.id}:${tank.id}`,
    name: `${tank.name}: ${lowerFirst(catalogueName(row.price.name, pricing.units))}`,
    where: [tank.id],
    quantity: {
      value: count,
      unit: "each",
      formula:
        count === 1
          ? `one, priced by the least listed size that holds its ${base}`
          : `${base} ÷ largest listed volume, as the list has none so large`,
      inputs: [
        { name: base, value: volume, unit: "m³" },
        { name: "listed up to", value: row.upTo, unit: "m³" },
      ],
      source: "the scheme",
    },
  });
}

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

function tankPrices(): { price: PriceRow; upTo: number }[] {
  const rows: { price: PriceRow; upTo: number }[] = [];
  for (const price of cataloguePrices().values()) {
    if (price.volumeUpTo !== undefined) rows.push({ price, upTo: price.volumeUpTo });
  }
  return rows.sort((a, b) => a.upTo - b.upTo);
}

/** m of each size of pipe, along its slope, one line for each price. */
export function pipeLines(pricing: Pricing, dig: DigResult): CostLine[] {
  const byPrice = new Map<string, { row: PriceRow; runs: PipeRun[] }>();
  for (const run of dig.pipes) {
    const row = pipePrice(run);
    const entry = byPrice.get(row.id) ?? { row, runs: [] };
    entry.runs.push(run);
    byPrice.set(row.id, entry);
  }
  return [...byPrice.values()].map(({ row, runs }) => {
    const inputs = runs.map((run) => ({
      name: run.name,
      value: pipeLength(run),
      unit: "m",
    }));
    return costLine(pricing, row, {
      where: [...new Set(runs.map((run) => run.trench))],
      quantity: {
        value: inputs.reduce((sum, input) => sum + input.value, 0),
        unit: "m",
        formula:
          "sum of the runs, each along the pipe: √(length in plan² + drop²) from station to station",
        inputs,
        source: "geometry",
      },
    });
  });
}

/** The price of the catalogue pipe nearest in size, of the run's own material where there is one. */
function pipePrice(run: PipeRun): PriceRow {
  const kind = run.material.toLowerCase().split(/[^a-z]+/);
  const own = cataloguePipes().filter((pipe) => kind.includes(pipe.material));
  const rows = own.length > 0 ? own : cataloguePipes();
  const [first, ...others] = rows;
  if (!first) throw new Error("pipes: got none in the catalogue, expected at least one");
  const nearest = others.reduce(
    (best, pipe) => (sizeDifference(pipe, run) < sizeDifference(best, run) ? pipe : best),
    first,
  );
  return priceRow(`pipe-${nearest.id}`);
}

function sizeDifference(pipe: PipeRow, run: PipeRun): number {
  return Math.abs(pipe.outside - run.outside) + Math.abs(pipe.inside - run.inside);
}

/** The erosion barrier below bare ground, by the m. */
export function barrierLines(pricing: Pricing, barrier: Quantity | undefined): CostLine[] {
  if (barrier === undefined || !(barrier.value > 0)) return [];
  return [costLine(pricing, priceRow("erosion-barrier"), { quantity: barrier })];
}

/** Lump sums that the scheme calls for: fees for any works, pump and power for a pressure pipe. */
export function lumpLines(pricing: Pricing, scheme: Scheme, dig: DigResult): CostLine[] {
  const calledFor = {
    works: scheme.works.length > 0,
    "pressure-pipe": dig.pipes.some((pipe) => pipe.service === "pressure"),
  };
  const reasons = { works: "one for the job", "pressure-pipe": "one, as a pipe is under pressure" };
  const pumps = pumpLines(pricing, scheme);
  const lines: CostLine[] = [];
  for (const row of cataloguePrices().values()) {
    if (row.when === undefined || !calledFor[row.when]) continue;
    if (row.id === "pump-set" && pumps.length > 0) {
      lines.push(...pumps);
      continue;
    }
    lines.push(costLine(pricing, row, { quantity: countOf(1, reasons[row.when], "lump") }));
  }
  return lines;
}
