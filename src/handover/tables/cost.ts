import type { CostLine, Range } from "../../estimate/index.js";
import { countOf, perOf, unpricedWords } from "../../sheets/index.js";
import { materialsOf } from "../../site/index.js";
import { words } from "../../words/index.js";
import type { Cell, NumberCell, FormulaCell, Sheet } from "../sheet.js";
import { ENDS, formula, FORMAT, head, input, Rows, strong } from "./frame.js";
import type { Making } from "./frame.js";
import type { Incoming } from "./incoming.js";
import type { Machines } from "./machines.js";
import type { Quantities } from "./quantities.js";

/** The sheet of cost lines, and where the schemes find them. */
export interface Cost {
  sheet: Sheet;
  totalAt: Readonly<Record<keyof Range, string>>;
  lineAt: ReadonlyMap<string, { quantity: string; price: string; amount: string }>;
}

/** Columns of quantity, price and amount. */
const QUANTITY = { low: "C", likely: "D", high: "E" } as const;
const PRICE = { low: "G", likely: "H", high: "I" } as const;
const AMOUNT = { low: "J", likely: "K", high: "L" } as const;

/** A quantity's low, likely and high in the unit that the site's people buy by. */
export function quantityEnds(line: CostLine, size: number): Range {
  const likely = countOf(line) / size;
  // A line whose quantity has a spread of its own shows it in amount ÷ price.
  const end = (which: "low" | "high"): number => {
    const flat = countOf(line) * line.price[which];
    const spread = Math.abs(line.amount[which] - flat) > 1e-9 * Math.max(1, Math.abs(flat));
    return spread && line.price[which] > 0 ? line.amount[which] / line.price[which] / size : likely;
  };
  return { low: end("low"), likely, high: end("high") };
}

/** Every line: quantity × price at each end, and the sums. Quantities follow the other sheets. */
export function costSheet(
  making: Making,
  { quantities, incoming, machines }: Omit<Sources, "making">,
): Cost {
  const said = words.tables;
  const { estimate } = making;
  const { lines, total, currency } = estimate.cost;
  const rows = new Rows(said.sheets.cost);
  rows.add(
    ...[
      ...[said.line, said.where, said.quantityLow, said.quantity, said.quantityHigh, said.unit],
      ...[said.priceLow, said.price, said.priceHigh, said.low, said.likely, said.high],
      said.priceFrom,
    ].map(head),
  );
  const lineAt = new Map<string, { quantity: string; price: string; amount: string }>();
  const sources = { making, incoming, machines, quantities };
  for (const line of lines) {
    const row = line.made === "tax" ? taxRow(rows, line) : lineRow(rows, line, sources);
    lineAt.set(line.id, {
      ...{ quantity: rows.from(row, 3), price: rows.from(row, 7), amount: rows.from(row, 10) },
    });
  }
  const last = rows.next;
  const row = rows.add(
    strong(said.total(currency)),
    ...new Array<null>(8).fill(null),
    ...ENDS.map((end) =>
      formula(
        last === 1 ? "0" : `SUM(${AMOUNT[end]}2:${AMOUNT[end]}${last})`,
        total[end],
        FORMAT.money,
      ),
    ),
  );
  rows.add();
  const unpriced = unpricedWords(making.site, estimate);
  if (unpriced !== null) rows.add(unpriced);
  rows.add(said.envelope);
  return {
    sheet: rows.done([38, 30, 12, 12, 12, 10, 12, 12, 12, 13, 13, 13, 50], 1, [said.hireStays]),
    totalAt: { low: rows.from(row, 9), likely: rows.from(row, 10), high: rows.from(row, 11) },
    lineAt,
  };
}

interface Sources {
  making: Making;
  quantities: Quantities;
  incoming: Incoming;
  machines: Machines;
}

function lineRow(rows: Rows, line: CostLine, sources: Sources): number {
  const { site, estimate } = sources.making;
  const per = perOf(line.per, site.units);
  const at = rows.next + 1;
  const names = (line.where ?? []).map(
    (id) => estimate.works.find((work) => work.id === id)?.name ?? id,
  );
  return rows.add(
    line.name,
    names.join(", "),
    ...quantityCells(line, per.size, at, sources),
    per.words,
    ...ENDS.map((end) => input(line.price[end] * per.size, FORMAT.money)),
    ...amounts(line, at),
    line.source,
  );
}

const amounts = (line: CostLine, at: number): FormulaCell[] =>
  ENDS.map((end) =>
    formula(`${QUANTITY[end]}${at}*${PRICE[end]}${at}`, line.amount[end], FORMAT.money),
  );

/** Quantities that follow from other sheets, or are one cell to change with two that follow it. */
function quantityCells(
  line: CostLine,
  size: number,
  at: number,
  { making, quantities, incoming, machines }: Sources,
): (NumberCell | FormulaCell)[] {
  const ends = quantityEnds(line, size);
  if (line.id === "fuel") {
    return ENDS.map((end) => formula(machines.fuelAt[end], ends[end], FORMAT.volume));
  }
  if (ends.low !== ends.likely || ends.high !== ends.likely) {
    return ENDS.map((end) => input(ends[end], FORMAT.volume));
  }
  const follows = (value: number): FormulaCell => formula(`D${at}`, value, FORMAT.volume);
  const written = fromOtherSheets(line, incoming) ?? fromRock(line, making, quantities);
  const likely =
    written === null
      ? input(ends.likely, FORMAT.volume)
      : formula(written, ends.likely, FORMAT.volume);
  return [follows(ends.low), likely, follows(ends.high)];
}

/** How the quantity of a line follows from what comes in or goes away; null where it does not. */
function fromOtherSheets(line: CostLine, incoming: Incoming): string | null {
  if (line.id === "haul-away") return incoming.surplusLoadsAt;
  const loads = incoming.loadsAt.get(line.id);
  const weight = incoming.weightAt.get(line.id);
  if (line.per === "load" && loads !== undefined) return loads;
  if (line.per === "t" && weight !== undefined) {
    return `IF(${weight}=0,0,MAX(${weight},${incoming.leastAt}))`;
  }
  return null;
}

/** What is worn, by the kind of rock that wears it. */
const WORN_BY: Readonly<Record<string, "rippable" | "rock">> = {
  "tooth-wear": "rippable",
  "hammer-wear": "rock",
};

/** The sum of all rock that wears teeth or hammer, as it stands in the quantities; else null. */
function fromRock(line: CostLine, { site }: Making, quantities: Quantities): string | null {
  const kind = WORN_BY[line.id];
  if (kind === undefined) return null;
  const materials = materialsOf(site);
  const cut = quantities.cutWhere((id) => materials.get(id)?.kind === kind);
  return cut.length === 0 ? null : cut.join("+");
}

/** Tax: its share, as a quantity, of the sum of the lines above, as a price. */
function taxRow(rows: Rows, line: CostLine): number {
  const share = line.quantity.inputs.find(({ unit }) => unit === "")?.value;
  if (share === undefined) throw new Error("tax: got a line without its share");
  const at = rows.next + 1;
  const sum = (end: keyof Range): Cell =>
    formula(`SUM(${AMOUNT[end]}2:${AMOUNT[end]}${at - 1})`, line.amount[end] / share, FORMAT.money);
  const follows = formula(`D${at}`, share, FORMAT.factor);
  return rows.add(
    ...[line.name, ""],
    ...[follows, input(share, FORMAT.factor), follows],
    words.tables.ofTheSum,
    ...ENDS.map(sum),
    ...amounts(line, at),
    line.source,
  );
}
