import type { Range } from "../../estimate/index.js";
import { liquidVolume } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { Cell, Sheet } from "../sheet.js";
import { ENDS, figure, formula, FORMAT, head, input, Rows, strong } from "./frame.js";
import type { Making } from "./frame.js";
import type { Quantities } from "./quantities.js";

/** The sheet of machines and days, and where the cost finds the fuel. */
export interface Machines {
  sheet: Sheet;
  /** Address of the digger's fuel in the unit that it is priced in, low, likely and high. */
  fuelAt: Readonly<Record<keyof Range, string>>;
  hoursAt: string;
}

/** The columns between a label and its three ends. */
const GAP = [null, null, null, null, null, null] as const;

type Hours = Making["estimate"]["machines"]["works"][number]["materials"][number];

/** Columns of each end's output and hours. */
const OUTPUT = { low: "E", likely: "F", high: "G" } as const;
const COLUMN = { low: "H", likely: "I", high: "J" } as const;

/** Hours by work and material from volume and output, the digger's days, its fuel, the job by day. */
export function machinesSheet(making: Making, quantities: Quantities): Machines {
  const said = words.tables;
  const { machines } = making.estimate;
  const { units } = making.site;
  const rows = new Rows(said.sheets.machines);
  rows.add(strong(said.digger(machines.digger.name)));
  rows.add(said.hoursInDay, input(machines.hoursPerDay, FORMAT.hours));
  const once = addOnce(making, rows);
  const fuelHour = fuelPerHour(making);
  const fuelRow = rows.add(
    said.fuelPerHour(liquidVolume.unitLabel(units)),
    input(liquidVolume.toSystem(fuelHour, units), FORMAT.factor),
  );
  rows.add();
  rows.add(...headings(making).map(head));
  const first = rows.next;
  for (const work of machines.works) {
    for (const line of work.materials) addHours(making, quantities, rows, work, line);
  }
  const last = rows.next;
  const all = rows.add(
    strong(said.hoursAll),
    ...GAP,
    ...ENDS.map((end) => {
      const column = COLUMN[end];
      const works = last === first ? "" : `+SUM(${column}${first + 1}:${column}${last})`;
      const both = once.map((row) => `${column}${row + 1}`).join("+");
      return formula(`${both}${works}`, sumOfHours(making, end), FORMAT.hours);
    }),
  );
  rows.add(
    said.daysAll,
    ...GAP,
    ...ENDS.map((end) =>
      formula(
        `MAX(0,ROUNDUP(${COLUMN[end]}${all + 1}/$B$2-1E-9,0))`,
        Math.max(0, Math.ceil(sumOfHours(making, end) / machines.hoursPerDay - 1e-9)),
        FORMAT.count,
      ),
    ),
  );
  const fuel = rows.add(
    said.fuel(liquidVolume.unitLabel(units)),
    ...GAP,
    ...ENDS.map((end) =>
      formula(
        `${COLUMN[end]}${all + 1}*$B$${fuelRow + 1}`,
        liquidVolume.toSystem(sumOfHours(making, end) * fuelHour, units),
        FORMAT.volume,
      ),
    ),
  );
  rows.add();
  addSchedule(making, rows);
  return {
    sheet: rows.done([34, 26, 12, 14, 12, 12, 12, 12, 12, 12], undefined, [said.scheduleStays]),
    fuelAt: { low: rows.from(fuel, 7), likely: rows.from(fuel, 8), high: rows.from(fuel, 9) },
    hoursAt: rows.from(all, 8),
  };
}

/** Hours once for the job, setting up and what is left over; gives their rows. */
function addOnce({ estimate }: Making, rows: Rows): number[] {
  const said = words.tables;
  const { setUp, left } = estimate.machines;
  const threeEnds = (of: Range): Cell[] => ENDS.map((end) => input(of[end], FORMAT.hours));
  return [
    rows.add(said.setUp, ...GAP, ...threeEnds(setUp)),
    ...(left ? [rows.add(said.leftHours(left.name), ...GAP, ...threeEnds(left.hours))] : []),
  ];
}

function headings({ volumeUnit }: Making): string[] {
  const said = words.tables;
  return [
    ...[said.work, said.material, said.does, said.volume(volumeUnit)],
    ...[said.outputLow(volumeUnit), said.outputLikely(volumeUnit), said.outputHigh(volumeUnit)],
    ...[said.hoursLow, said.hoursLikely, said.hoursHigh],
  ];
}

/** m³ of fuel in an hour of the digger; 0 where it does nothing. */
function fuelPerHour({ estimate }: Making): number {
  const { fuel, hours } = estimate.machines;
  return hours.likely > 0 ? fuel.likely / hours.likely : 0;
}

/** Setting up, what is left over and every line of every work, h. */
function sumOfHours({ estimate }: Making, end: keyof Range): number {
  const { works, setUp, left } = estimate.machines;
  const lines = works.flatMap(({ materials }) => materials);
  return lines.reduce((sum, line) => sum + line.hours[end], setUp[end] + (left?.hours[end] ?? 0));
}

/** One material of one work: its volume as in the quantities, outputs, and hours from the two. */
function addHours(
  making: Making,
  quantities: Quantities,
  rows: Rows,
  work: { id: string; name: string },
  line: Hours,
): void {
  const said = words.tables;
  const volume = making.volume(line.volume);
  const place = quantities.volumeAt(work.id, line.action, line.material);
  const dug = line.action === "dig";
  const at = rows.next + 1;
  // An end without hours has no output: its hours stand as they are.
  const timed = (end: keyof Range): boolean => line.hours[end] > 0;
  rows.add(
    work.name,
    dug ? making.cutName(line.material) : making.fillName(line.material),
    dug ? said.dig : said.place,
    place === undefined ? input(volume, FORMAT.volume) : formula(place, volume, FORMAT.volume),
    ...ENDS.map((end) => (timed(end) ? input(volume / line.hours[end], FORMAT.volume) : null)),
    ...ENDS.map((end) => {
      return timed(end)
        ? formula(`D${at}/${OUTPUT[end]}${at}`, line.hours[end], FORMAT.hours)
        : figure(line.hours[end], FORMAT.hours);
    }),
  );
}

function addSchedule(making: Making, rows: Rows): void {
  const said = words.tables;
  const { schedule, tasks } = making.estimate.machines.job;
  rows.add(strong(said.byDay));
  rows.add(said.workingDays, ...ENDS.map((end) => figure(schedule[end].workingDays, FORMAT.count)));
  rows.add(
    said.calendarDays,
    ...ENDS.map((end) => figure(schedule[end].calendarDays, FORMAT.count)),
  );
  rows.add(
    ...[
      ...[said.task, said.hoursLow, said.hoursLikely, said.hoursHigh],
      ...[said.wait, said.firstDay, said.lastDay],
    ].map(head),
  );
  const likely = new Map(schedule.likely.tasks.map((timed) => [timed.id, timed]));
  for (const task of tasks) {
    const timed = likely.get(task.id);
    rows.add(
      task.name,
      ...ENDS.map((end) => figure(task.hours[end], FORMAT.hours)),
      figure(task.wait, FORMAT.count),
      timed === undefined ? null : figure(timed.firstDay, FORMAT.count),
      timed === undefined ? null : figure(timed.lastDay, FORMAT.count),
    );
  }
}
