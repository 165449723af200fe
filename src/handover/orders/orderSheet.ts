import type { HandoverJob } from "../job.js";
import { perOf } from "../../sheets/index.js";
import { words } from "../../words/index.js";
import { MONEY_FORMAT } from "../sheet.js";
import type { Cell, Sheet } from "../sheet.js";
import type { OrderItem } from "./item.js";
import { linesNotOrdered } from "./orderItems.js";

const COUNT = "#,##0.##";

/** Where a cost line's quantity, price and amount stand in the same workbook. */
export type LineAt = ReadonlyMap<string, { quantity: string; price: string; amount: string }>;

/**
 * The lists as one table. Price and amount are the cost line's; with `lineAt` they and the tons and
 * loads of earth are taken from the workbook's cost sheet, so that they follow it.
 */
export function orderSheet(job: HandoverJob, items: readonly OrderItem[], lineAt?: LineAt): Sheet {
  const said = words.orders;
  const strong = (text: string): Cell => ({ text, strong: true, wrap: true });
  const headings = [
    ...[said.supplier, said.what, said.order, said.unit, said.exactly, said.where],
    ...[said.price, said.per, said.amount, said.note],
  ].map(strong);
  const rows = items.map((item) => rowOf(job, item, lineAt));
  const total = items.reduce(
    (sum, { line, share = 1 }) => sum + (line?.amount.likely ?? 0) * share,
    0,
  );
  const last = rows.length + 1;
  const sum: Cell =
    last === 1
      ? { number: 0, format: MONEY_FORMAT }
      : { formula: `SUM(I2:I${last})`, value: total, format: MONEY_FORMAT };
  const rest = linesNotOrdered(job, items).map(({ name }) => name);
  return {
    name: said.sheet,
    widths: [22, 40, 9, 26, 16, 44, 12, 14, 13, 80],
    rows: [
      headings,
      ...rows,
      [
        strong(said.listTotal(job.estimate.cost.currency)),
        ...new Array<null>(7).fill(null),
        sum,
        said.amountRule,
      ],
      [said.notListed(rest.join("; "))],
    ],
    head: 1,
    notes: lineAt === undefined ? [] : [said.countsStay],
  };
}

function rowOf({ site }: HandoverJob, item: OrderItem, lineAt: LineAt | undefined): Cell[] {
  const { line } = item;
  return [
    ...[words.orders.kinds[item.kind], item.name, countCell(item, lineAt)],
    ...[item.unit, item.exact, item.where.join("; ")],
    ...(line === null
      ? [null, null, null]
      : [
          priceCell(line, site, lineAt),
          perOf(line.per, site.units).words,
          amountCell(line, item.share, lineAt),
        ]),
    item.notes.join("; "),
  ];
}

/** Whole tons or loads follow the cost's quantity; whole lengths and rolls stay as they were cut. */
function countCell({ kind, line, count }: OrderItem, lineAt: LineAt | undefined): Cell {
  const place = line === null ? undefined : lineAt?.get(line.id)?.quantity;
  return kind !== "earth" || place === undefined
    ? { number: count, format: COUNT }
    : { formula: `MAX(0,ROUNDUP(${place}-1E-9,0))`, value: count, format: COUNT };
}

type Line = NonNullable<OrderItem["line"]>;

function priceCell(line: Line, site: HandoverJob["site"], lineAt: LineAt | undefined): Cell {
  const value = line.price.likely * perOf(line.per, site.units).size;
  const place = lineAt?.get(line.id)?.price;
  return place === undefined
    ? { number: value, format: MONEY_FORMAT }
    : { formula: place, value, format: MONEY_FORMAT };
}

function amountCell(line: Line, share: number | undefined, lineAt: LineAt | undefined): Cell {
  const place = lineAt?.get(line.id)?.amount;
  const value = line.amount.likely * (share ?? 1);
  if (place === undefined) return { number: value, format: MONEY_FORMAT };
  return {
    formula: share === undefined ? place : `${place}*${share}`,
    value,
    format: MONEY_FORMAT,
  };
}
