import { estimate as reckon } from "../../estimate/index.js";
import type { CostLine, Estimate, Range } from "../../estimate/index.js";
import { materialsOf } from "../../site/index.js";
import type { Scheme } from "../../site/index.js";
import type { MakeOptions } from "../job.js";
import { countOf, perOf } from "../../sheets/index.js";
import { words } from "../../words/index.js";
import { cellAt, columnName } from "../sheet.js";
import type { Cell, Sheet } from "../sheet.js";
import type { Cost } from "./cost.js";
import { ENDS, figure, formula, FORMAT, head, input, Rows, strong } from "./frame.js";
import type { Making } from "./frame.js";

/** One scheme of the site with its estimate. */
export interface Way {
  scheme: Scheme;
  estimate: Estimate;
}

/** Every scheme's estimate, the present one first; the others are reckoned here. */
export function waysOf({ site, estimate }: Making, { signal, progress }: MakeOptions): Way[] {
  const present = site.schemes.filter(({ id }) => id === estimate.scheme);
  const others = site.schemes.filter(({ id }) => id !== estimate.scheme);
  return [...present, ...others].map((scheme, i, all) => {
    signal?.throwIfAborted();
    progress?.(i, all.length);
    return { scheme, estimate: i === 0 ? estimate : reckon(site, scheme.id) };
  });
}

/** Figures of every scheme, then every cost line of any: quantity × price = amount, and the sums. */
export function schemesSheet(making: Making, ways: readonly Way[], cost: Cost): Sheet {
  const said = words.tables;
  const rows = new Rows(said.sheets.schemes);
  rows.add(head(said.figure), ...ways.flatMap(({ scheme }) => [null, null, head(scheme.name)]));
  for (const { name, of, format, end } of figureRows(making)) {
    const cell = (way: Way, i: number): Cell =>
      i === 0 && end !== undefined
        ? formula(cost.totalAt[end], of(way), format)
        : figure(of(way), format);
    rows.add(name, ...ways.flatMap((way, i) => [null, null, cell(way, i)]));
  }
  rows.add();
  rows.add(
    head(said.line),
    ...ways.flatMap(({ scheme: { name } }) =>
      [said.quantityOf(name), said.priceOf(name), said.amountOf(name)].map(head),
    ),
  );
  const first = rows.next;
  for (const [id, name] of lineNames(ways)) {
    const at = rows.next;
    rows.add(
      name,
      ...ways.flatMap((way, i) => lineCells(making, ways, { way, i, id, at, first, cost })),
    );
  }
  const last = rows.next;
  const totals = rows.add(
    strong(said.total(making.estimate.cost.currency)),
    ...ways.flatMap((way, i): Cell[] => {
      const column = columnName(3 + 3 * i);
      const written = last === first ? "0" : `SUM(${column}${first + 1}:${column}${last})`;
      return [null, null, formula(written, way.estimate.cost.total.likely, FORMAT.money)];
    }),
  );
  const mine = ways[0]!;
  rows.add(
    said.difference(mine.scheme.name),
    ...ways.flatMap(({ estimate }, i): Cell[] => {
      const written = `${cellAt(totals, 3 + 3 * i)}-$D$${totals + 1}`;
      const value = estimate.cost.total.likely - mine.estimate.cost.total.likely;
      return [null, null, formula(written, value, FORMAT.money)];
    }),
  );
  rows.add();
  rows.add(said.stands);
  return rows.done([40, ...ways.flatMap(() => [12, 12, 14])], 1);
}

interface FigureRow {
  name: string;
  of: (way: Way) => number;
  format: string;
  /** The end of the cost's total that it is: the present scheme's follows the cost. */
  end?: keyof Range;
}

function figureRows(making: Making): FigureRow[] {
  const said = words.tables;
  const kinds = materialsOf(making.site);
  const isRock = (id: string): boolean => ["rock", "rippable"].includes(kinds.get(id)?.kind ?? "");
  const cut = ({ estimate }: Way, take: (id: string) => boolean): number =>
    Object.entries(estimate.cut).reduce((sum, [id, v]) => sum + (take(id) ? v : 0), 0);
  const { volumeUnit, volume } = making;
  return [
    {
      name: said.cutColumn(volumeUnit),
      of: (way) => volume(cut(way, () => true)),
      format: FORMAT.volume,
    },
    { name: said.rock(volumeUnit), of: (way) => volume(cut(way, isRock)), format: FORMAT.volume },
    {
      name: said.surplusLoose(volumeUnit),
      of: ({ estimate }) => volume(estimate.earth.surplusLoose),
      format: FORMAT.volume,
    },
    {
      name: said.hoursAll,
      of: ({ estimate }) => estimate.machines.hours.likely,
      format: FORMAT.hours,
    },
    ...ENDS.map((end) => ({
      name: { low: said.costLow, likely: said.costLikely, high: said.costHigh }[end],
      of: ({ estimate }: Way) => estimate.cost.total[end],
      format: FORMAT.money,
      end,
    })),
    {
      name: said.calendarDays,
      of: ({ estimate }) => estimate.machines.job.schedule.likely.calendarDays,
      format: FORMAT.count,
    },
  ];
}

/** Every line of any scheme once, by id; tax last. */
function lineNames(ways: readonly Way[]): [id: string, name: string][] {
  const names = new Map<string, string>();
  const all = ways.flatMap(({ estimate }) => estimate.cost.lines);
  for (const { id, name } of [
    ...all.filter(({ made }) => made !== "tax"),
    ...all.filter(({ made }) => made === "tax"),
  ]) {
    if (!names.has(id)) names.set(id, name);
  }
  return [...names];
}

interface Spot {
  way: Way;
  /** Which of the schemes. */
  i: number;
  id: string;
  /** Row, and the first row of any line, from 0. */
  at: number;
  first: number;
  cost: Cost;
}

/** Quantity, price and amount of one line in one scheme; the present scheme's are those of the cost. */
function lineCells(making: Making, ways: readonly Way[], spot: Spot): Cell[] {
  const { way, i, id, at, cost } = spot;
  const line = way.estimate.cost.lines.find((each) => each.id === id);
  if (line === undefined) return [null, null, null];
  const column = 1 + 3 * i;
  const size = perOf(line.per, making.site.units).size;
  const quantity = countOf(line) / size;
  const price = line.price.likely * size;
  const product = formula(
    `${cellAt(at, column)}*${cellAt(at, column + 1)}`,
    line.amount.likely,
    FORMAT.money,
  );
  const mine = cost.lineAt.get(id);
  if (i === 0 && mine !== undefined) {
    if (line.made === "tax")
      return [null, null, formula(mine.amount, line.amount.likely, FORMAT.money)];
    return [
      formula(mine.quantity, quantity, FORMAT.volume),
      formula(mine.price, price, FORMAT.money),
      product,
    ];
  }
  if (line.made === "tax") return taxCells(line, spot);
  const same = ways[0]!.estimate.cost.lines.find((each) => each.id === id);
  const follows = mine !== undefined && same?.price.likely === line.price.likely;
  // What a mix of hire comes to is the scheme's own, even where two happen to be alike.
  return [
    input(quantity, FORMAT.volume),
    follows && line.priceIds.length === 1
      ? formula(mine.price, price, FORMAT.money)
      : input(price, FORMAT.money),
    product,
  ];
}

/** Another scheme's tax: its share of the lines above. */
function taxCells(line: CostLine, { i, at, first }: Spot): Cell[] {
  const share = line.quantity.inputs.find(({ unit }) => unit === "")?.value ?? 0;
  const column = columnName(3 + 3 * i);
  const written = `SUM(${column}${first + 1}:${column}${at})*${cellAt(at, 1 + 3 * i)}`;
  return [input(share, FORMAT.factor), null, formula(written, line.amount.likely, FORMAT.money)];
}
