import { schemeOf } from "../../estimate/index.js";
import type { HandoverJob } from "../job.js";
import { headLines } from "../standing.js";
import { words } from "../../words/index.js";
import type { Sheet } from "../sheet.js";
import type { Cost } from "./cost.js";
import { ENDS, formula, FORMAT, head, Rows, strong } from "./frame.js";
import type { Making } from "./frame.js";
import type { Machines } from "./machines.js";
import type { Quantities } from "./quantities.js";

/** What it is all about, and what it comes to: figures of the other sheets. */
export function summarySheet(
  making: Making,
  job: HandoverJob,
  { quantities, machines, cost }: { quantities: Quantities; machines: Machines; cost: Cost },
): Sheet {
  const said = words.tables;
  const { estimate } = making;
  const rows = new Rows(said.sheets.summary);
  rows.add(strong(`${making.site.name}: ${schemeOf(making.site, job.schemeId).name}`));
  for (const [label, text] of headLines(job)) rows.add(label, text);
  rows.add();
  const cut = Object.values(estimate.cut).reduce((sum, value) => sum + value, 0);
  rows.add(
    said.cutColumn(making.volumeUnit),
    formula(quantities.cutAt, making.volume(cut), FORMAT.volume),
  );
  rows.add(said.hoursAll, formula(machines.hoursAt, estimate.machines.hours.likely, FORMAT.hours));
  const names = { low: said.costLow, likely: said.costLikely, high: said.costHigh };
  for (const end of ENDS) {
    rows.add(
      `${names[end]}, ${estimate.cost.currency}`,
      formula(cost.totalAt[end], estimate.cost.total[end], FORMAT.money),
    );
  }
  rows.add(said.envelope);
  rows.add();
  rows.add(said.changeTinted);
  return rows.done([34, 60]);
}

/** Every standing caution on a sheet of its own, after whose and when. */
export function cautionsSheet(job: HandoverJob): Sheet {
  const rows = new Rows(words.handoverFiles.cautions);
  for (const [label, text] of headLines(job)) rows.add(label, text);
  rows.add(head(words.handoverFiles.cautions));
  for (const caution of job.estimate.cautions) rows.add(null, { text: caution, wrap: true });
  return rows.done([14, 110]);
}
