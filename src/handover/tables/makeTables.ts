import { bookOf, XLSX_TYPE } from "../book.js";
import { csvOf, CSV_TYPE } from "../csv.js";
import { fileName } from "../job.js";
import type { HandoverFile, HandoverJob, HandoverMaker, MakeOptions } from "../job.js";
import type { Sheet } from "../sheet.js";
import { words } from "../../words/index.js";
import { orderItems } from "../orders/orderItems.js";
import { orderSheet } from "../orders/orderSheet.js";
import { costSheet } from "./cost.js";
import { makingOf } from "./frame.js";
import { incomingSheet } from "./incoming.js";
import { machinesSheet } from "./machines.js";
import { quantitiesSheet } from "./quantities.js";
import { schemesSheet, waysOf } from "./schemes.js";
import { cautionsSheet, summarySheet } from "./summary.js";

/** The sheets of the workbook by what they hold. */
export interface TableSheets {
  summary: Sheet;
  quantities: Sheet;
  incoming: Sheet;
  machines: Sheet;
  cost: Sheet;
  orders: Sheet;
  schemes: Sheet;
  cautions: Sheet;
}

/** Quantities, machines, cost and schemes as sheets whose figures follow from one another. */
export function tableSheets(job: HandoverJob, options: MakeOptions = {}): TableSheets {
  const making = makingOf(job.site, job.estimate);
  const quantities = quantitiesSheet(making);
  const incoming = incomingSheet(making, quantities);
  const machines = machinesSheet(making, quantities);
  const cost = costSheet(making, { quantities, incoming, machines });
  const ways = waysOf(making, options);
  return {
    summary: summarySheet(making, job, { quantities, machines, cost }),
    quantities: quantities.sheet,
    incoming: incoming.sheet,
    machines: machines.sheet,
    cost: cost.sheet,
    orders: orderSheet(job, orderItems(job, options.choices?.orders), cost.lineAt),
    schemes: schemesSheet(making, ways, cost),
    cautions: cautionsSheet(job),
  };
}

/** One workbook that reckons, and a CSV each of quantities, machines, cost and schemes. */
export const makeTables: HandoverMaker = async (job, options = {}) => {
  const sheets = tableSheets(job, options);
  options.signal?.throwIfAborted();
  const names = words.tables.file;
  const csv = (what: string, sheet: Sheet): HandoverFile => ({
    name: fileName(job, what, "csv"),
    type: CSV_TYPE,
    data: csvOf(job, sheet.rows),
  });
  return [
    {
      name: fileName(job, names.book, "xlsx"),
      type: XLSX_TYPE,
      data: await bookOf(Object.values(sheets)),
    },
    csv(names.quantities, sheets.quantities),
    csv(names.machines, sheets.machines),
    csv(names.cost, sheets.cost),
    csv(words.tables.schemesFile, sheets.schemes),
  ];
};
