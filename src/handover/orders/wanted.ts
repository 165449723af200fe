import type { Estimate } from "../../estimate/index.js";
import type { OrderItem } from "./item.js";

type Day = Estimate["machines"]["job"]["schedule"]["days"][number];

/** The first day of every task that passes. */
function firstDays(days: readonly Day[], passes: (task: string) => boolean): Day[] {
  const begun = new Set<string>();
  return days.filter(({ tasks }) => {
    const first = tasks.filter(({ id }) => passes(id) && !begun.has(id));
    for (const { id } of first) begun.add(id);
    return first.length > 0;
  });
}

const breaksGround = (id: string): boolean => /:(hand|strip|dig|break)$/.test(id);

/** Steps of a work that may need what is ordered for it: the first of them that the schedule has. */
const STEPS = {
  // Over the stone and under the earth.
  fabric: ["zone", "fill", "backfill"],
  other: ["lay", "set", "fill", "pad"],
} as const;

function taskNeeding(
  days: readonly Day[],
  kind: OrderItem["kind"],
  work: string,
): string | undefined {
  const known = new Set(days.flatMap(({ tasks }) => tasks.map(({ id }) => id)));
  return (kind === "fabric" ? STEPS.fabric : STEPS.other)
    .map((step) => `${work}:${step}`)
    .find((id) => known.has(id));
}

/**
 * Days of the likely schedule on which something that is ordered is to be on the site; none where the
 * schedule does not know it.
 */
export function wantedDays(
  { machines }: Pick<Estimate, "machines">,
  { kind, line, delivered, works = [], beforeDigging }: OrderItem,
): Day[] {
  const { days } = machines.job.schedule;
  if (delivered !== undefined) return days.filter((day) => day.deliveries.includes(delivered));
  if (beforeDigging) return firstDays(days, breaksGround).slice(0, 1);
  const needing = works.flatMap((work) => taskNeeding(days, kind, work) ?? []);
  if (needing.length > 0) return firstDays(days, (id) => needing.includes(id));
  if (kind === "tank") {
    const tank = line?.id.split(":")[1];
    return firstDays(days, (id) =>
      tank === undefined ? id.endsWith(":set") : id === `${tank}:set`,
    );
  }
  if (kind === "pipe") return firstDays(days, (id) => id.endsWith(":lay"));
  if (kind === "pump" || kind === "electrical") return firstDays(days, (id) => id === kind);
  return [];
}

/** The days as a supplier reads them: dates where the first day is set, else counted from it. */
export const dayWords = (days: readonly Day[], counted: (day: number) => string): string =>
  days.map(({ date, calendarDay }) => date ?? counted(calendarDay)).join(", ");
