/** The cost sheet: every line with its quantity, its ends and where its price comes from. */
import type { CostLine } from "../../estimate/index.js";
import {
  days,
  distance,
  earthVolume,
  haulMass,
  hours,
  liquidVolume,
  money,
  plainNumber,
  type Measure,
  type UnitSystem,
} from "../../units/index.js";
import { words } from "../../words/index.js";
import { perOf } from "../per.js";
import { unpricedWords } from "../unpricedNames.js";
import type { SheetJob, SheetMaker } from "../paper.js";
import type { Table, TableRow } from "../table.js";
import { listSheets } from "./listSheets.js";

const says = words.handoverLeaf;
const own = words.sheetsLists;

/** The cost over as many sheets as it takes; none where nothing is priced. */
export const costSheets: SheetMaker = (job, room) => {
  const { lines } = job.estimate.cost;
  if (lines.length === 0) return [];
  const demo = lines.filter((line) => !line.own).length;
  const unpriced = unpricedWords(job.site, job.estimate);
  const notes = [
    ...(unpriced === null ? [] : [unpriced]),
    ...(demo === 0 ? [] : [own.demo(plainNumber(demo, 0), plainNumber(lines.length, 0))]),
    own.rounded,
    own.range,
  ];
  return listSheets(job, room, "cost", own.cost, [costTable(job), ...notes], [1]);
};

function costTable({ site, estimate: { cost } }: SheetJob): Table {
  const print = (value: number): string => money(cost.currency).print(value, site.units);
  const rows = cost.lines.map((line): TableRow => {
    const { low, likely, high } = line.amount;
    return {
      cells: [
        line.name,
        quantityWords(line, site.units),
        priceWords(line, site.units, cost.currency),
        print(low),
        print(likely),
        print(high),
        line.source,
      ],
    };
  });
  const { low, likely, high } = cost.total;
  return {
    columns: [
      { head: says.lineColumn, share: 3 },
      { head: says.quantity, figures: true },
      { head: own.priceOfOne, figures: true },
      { head: says.low, figures: true },
      { head: says.likely, figures: true },
      { head: says.high, figures: true },
      { head: says.priceFrom, share: 3 },
    ],
    rows: [
      ...rows,
      { kind: "sum", cells: [says.total, "", "", print(low), print(likely), print(high), ""] },
    ],
  };
}

const MEASURES: Readonly<Record<string, Measure>> = {
  kg: haulMass,
  m: distance,
  "m³": earthVolume,
  h: hours,
  d: days,
};

/** How much of it, as this site's people read it; nothing for what is priced as a whole. */
function quantityWords({ per, quantity: { value, unit } }: CostLine, units: UnitSystem): string {
  if (per === "lump" || unit === "lump") return "";
  const measure = per === "L" ? liquidVolume : MEASURES[unit];
  if (measure !== undefined) return measure.print(value, units);
  const number = plainNumber(value, Number.isInteger(value) ? 0 : 1);
  return unit === "load" ? words.counts.loads(value, number) : number;
}

/** The likely price of one, as this site's people buy it; nothing for what is priced as a whole. */
function priceWords({ per, price }: CostLine, units: UnitSystem, currency: string): string {
  if (per === "lump") return "";
  const { words: one, size } = perOf(per, units);
  const likely = money(currency).print(price.likely * size, units, { digits: 2 });
  return per === "each" ? likely : own.priceFor(likely, one);
}
