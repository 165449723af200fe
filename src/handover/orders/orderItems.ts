import { schemeOf } from "../../estimate/index.js";
import type { CostLine } from "../../estimate/index.js";
import type { OrderChoices } from "../choices.js";
import type { HandoverJob } from "../job.js";
import { words } from "../../words/index.js";
import { earthItems } from "./earth.js";
import { fabricItems } from "./fabric.js";
import { fittingItems } from "./fittings.js";
import type { OrderItem, SupplierKind } from "./item.js";
import { bedPipeItems, pipeItems } from "./pipes.js";
import { thingItems } from "./things.js";

/** The kinds of supplier in the order in which they are listed. */
export const SUPPLIERS = Object.keys(words.orders.kinds) as readonly SupplierKind[];

/** Everything that is ordered, by supplier. */
export function orderItems(job: HandoverJob, choices: OrderChoices = {}): OrderItem[] {
  const { site, estimate } = job;
  const ordering = { site, estimate, choices, scheme: schemeOf(site, job.schemeId) };
  const items = [
    ...earthItems(ordering),
    ...fabricItems(ordering),
    ...pipeItems(ordering),
    ...bedPipeItems(ordering),
    ...fittingItems(ordering),
    ...thingItems(ordering),
  ];
  return SUPPLIERS.flatMap((kind) => items.filter((item) => item.kind === kind));
}

/** Cost lines that no list orders: hire, fuel, fees and such. */
export function linesNotOrdered(job: HandoverJob, items: readonly OrderItem[]): CostLine[] {
  const ordered = new Set(items.map(({ line }) => line));
  return job.estimate.cost.lines.filter((line) => !ordered.has(line));
}
