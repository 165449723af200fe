/** Machines, days, hires and lifts. */
import { listedDays } from "../../estimate/index.js";
import { hours, length, mass, money, plainNumber } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { SheetJob, SheetMaker } from "../paper.js";
import type { Table, TableRow } from "../table.js";
import { listSheets, type ListPart } from "./listSheets.js";

const own = words.sheetsLists;

/** Machines and days over as many sheets as they take; none where nothing is dug. */
export const machineSheets: SheetMaker = (job, room) => {
  const { schedule } = job.estimate.machines.job;
  if (schedule.likely.workingDays === 0) return [];
  const tables = [daysTable(job), hiresTable(job), liftsTable(job), handTable(job)];
  const parts: ListPart[] = [
    diggersTable(job),
    ...chosenWords(job),
    ...tables.filter(({ rows }) => rows.length > 0),
    ...(job.estimate.lift === null ? [] : [own.operator]),
  ];
  return listSheets(job, room, "machines", own.machines, parts);
};

function chosenWords({ site, estimate: { machines } }: SheetJob): string[] {
  const { digger, job, hours: spent } = machines;
  const { low, likely, high } = job.schedule;
  const whole = (value: number): string => plainNumber(value, 0);
  return [
    own.chosenIs(digger.name, digger.reason),
    own.hours(
      hours.print(spent.likely, site.units),
      plainNumber(spent.low, 1),
      plainNumber(spent.high, 1),
    ),
    own.span(
      whole(likely.workingDays),
      whole(low.workingDays),
      whole(high.workingDays),
      words.counts.calendarDays(likely.calendarDays, whole(likely.calendarDays)),
      likely.lostDays,
    ),
  ];
}

function diggersTable({ site, estimate: { machines, cost } }: SheetJob): Table {
  return {
    title: own.compared,
    columns: [
      { head: own.digger, share: 2 },
      { head: own.canDo, share: 4 },
      { head: own.whole, figures: true },
    ],
    rows: machines.candidates.map(({ name, can, reason, whole }): TableRow => ({
      cells: [
        name,
        can ? own.yes(reason) : own.no(reason),
        whole === undefined ? "–" : money(cost.currency).print(whole, site.units),
      ],
    })),
  };
}

function daysTable({ estimate: { machines } }: SheetJob): Table {
  const { days } = machines.job.schedule;
  const dated = days.some(({ date }) => date !== undefined);
  const comes = days.some(({ deliveries }) => deliveries.length > 0);
  return {
    title: own.dayByDay,
    columns: [
      { head: own.day, figures: true },
      ...(dated ? [{ head: own.date, figures: true }] : []),
      { head: own.done, share: 3 },
      ...(comes ? [{ head: own.comes, share: 1 }] : []),
    ],
    rows: listedDays(machines.job.schedule).map((listed): TableRow => {
      const { calendarDay, date } = "worked" in listed ? listed.worked : listed.kept;
      const cells = [plainNumber(calendarDay, 0), ...(dated ? [date ?? ""] : [])];
      if ("kept" in listed) return { cells: [...cells, own.keptDay, ...(comes ? [""] : [])] };
      const { tasks, deliveries } = listed.worked;
      const done = tasks.map(({ name, hours: spent }) => (spent > 0 ? name : own.waiting(name)));
      return { cells: [...cells, done.join("; "), ...(comes ? [deliveries.join("; ")] : [])] };
    }),
  };
}

function hiresTable({ site, estimate: { machines, cost } }: SheetJob): Table {
  const print = (value: number): string => money(cost.currency).print(value, site.units);
  return {
    title: own.hired,
    columns: [
      { head: own.what, share: 3 },
      { head: own.kept, share: 3 },
      { head: words.handoverLeaf.likely, figures: true },
    ],
    rows: machines.job.hires.map(({ name, plans, price, within }): TableRow => ({
      cells: [
        name,
        plans.likely.stays
          .map(({ from, to }) =>
            from === to
              ? own.oneDay(plainNumber(from, 0))
              : own.stay(plainNumber(from, 0), plainNumber(to, 0)),
          )
          .join("; "),
        within === undefined ? print(price.likely) : withinWords(within, cost, print),
      ],
    })),
  };
}

/** What is hired within a line of the cost has that line's price; its own rates are not added. */
export function withinWords(
  id: string,
  { lines }: Pick<SheetJob["estimate"]["cost"], "lines">,
  print: (value: number) => string,
): string {
  const line = lines.find((each) => each.id === id);
  return line === undefined ? own.withinOther : own.within(print(line.amount.likely), line.name);
}

function liftsTable({ site, estimate: { lift } }: SheetJob): Table {
  const { units } = site;
  return {
    title: own.lifts,
    columns: [
      { head: own.tank, share: 2 },
      { head: own.radius, figures: true },
      { head: own.load, figures: true },
      { head: own.share, figures: true },
      { head: own.verdict, share: 3 },
    ],
    rows: (lift?.tanks ?? []).flatMap(({ name: tank, load, stands, best }) =>
      stands.map((stand): TableRow => {
        const from = own.from(tank, stand.name);
        return {
          cells: [
            stand.stand === best && stands.length > 1 ? own.best(from) : from,
            length.print(stand.radius.value, units),
            load === null ? own.unknown : mass.print(load.value, units),
            stand.share === null ? "–" : `${plainNumber(100 * stand.share.value, 0)}%`,
            against(stand),
          ],
        };
      }),
    ),
  };
}

type Stand = NonNullable<SheetJob["estimate"]["lift"]>["tanks"][number]["stands"][number];

/** All that is said of a stand: what rules it out, then what is to be minded there. */
function against({ reasons, warnings }: Stand): string {
  const said = [...reasons, ...warnings].map(({ text }) => text);
  return said.length === 0 ? own.nothing : said.join("; ");
}

function handTable({ estimate: { machines } }: SheetJob): Table {
  return {
    title: own.byHand,
    columns: [
      { head: words.handoverLeaf.work },
      { head: own.line },
      { head: own.hoursColumn, figures: true },
    ],
    rows: machines.byHand.map(({ name, limitName, hours: spent }): TableRow => ({
      cells: [name, limitName, plainNumber(spent.likely, 1)],
    })),
  };
}
