/** The days of the job, its hires and its lifts as rows of the report. */
import { listedDays } from "../estimate/index.js";
import type { Estimate } from "../estimate/index.js";
import { length, mass, money, plainNumber, type Measure } from "../units/index.js";

interface Part {
  title: string;
  rows: [string, string][];
}

/** Day by day what is done, with what comes. */
export function daysRows({ machines }: Estimate): Part {
  const { low, likely, high } = machines.job.schedule;
  const span = (pick: (one: typeof low) => number): string =>
    `${plainNumber(pick(likely), 0)}  (${plainNumber(pick(low), 0)} to ${plainNumber(pick(high), 0)})`;
  if (likely.workingDays === 0) return { title: "DAYS", rows: [] };
  const rows: [string, string][] = [
    ["Working days", span((one) => one.workingDays)],
    ["Days kept for weather", span((one) => one.lostDays)],
    ["From first day to last", span((one) => one.calendarDays)],
    ...listedDays(machines.job.schedule).map((listed): [string, string] => {
      const { calendarDay, date } = "worked" in listed ? listed.worked : listed.kept;
      return [
        `  day ${calendarDay}${date === undefined ? "" : ` ${date}`}`,
        "worked" in listed
          ? listed.worked.tasks.map(({ name }) => name).join("; ")
          : "kept for weather: nothing is planned",
      ];
    }),
  ];
  return { title: "DAYS", rows };
}

/** Everything hired: periods of the likely job and the price. */
export function hireRows({ machines, cost }: Estimate): Part {
  const print = (value: number): string => money(cost.currency).print(value, "us");
  const rows = machines.job.hires.map((hire): [string, string] => {
    const stays = hire.plans.likely.stays.map(({ from, to, idleDays, cover }) => {
      const periods = [
        [cover.fourWeeks, "four weeks"],
        [cover.weeks, "week"],
        [cover.days, "day"],
      ] as const;
      const hired = periods.filter(([count]) => count > 0).map(([n, name]) => `${n} × ${name}`);
      return `day ${from} to ${to} (${idleDays} idle), ${hired.join(" + ")}`;
    });
    const line = cost.lines.find(({ id }) => id === hire.within);
    const within = line === undefined ? "" : `, within the cost's line “${line.name}”`;
    const { low, likely, high } = line?.amount ?? hire.price;
    return [
      hire.name,
      `${stays.join("; ")}: ${print(likely)}  (${print(low)} to ${print(high)})${within}`,
    ];
  });
  return { title: "HIRE", rows };
}

/** Each tank from each stand. */
export function liftRows(
  { lift }: Estimate,
  print: (measure: Measure, value: number) => string,
): Part {
  const rows = (lift?.tanks ?? []).flatMap((tank) =>
    tank.stands.map((stand): [string, string] => {
      const share =
        stand.share === null ? "" : `, ${plainNumber(100 * stand.share.value, 0)}% of the chart`;
      const said = [...stand.reasons, ...stand.warnings].map(({ text }) => text);
      const verdict =
        said.length === 0
          ? "nothing entered speaks against it; the operator decides"
          : said.join("; ");
      const load = tank.load === null ? "weight not entered" : print(mass, tank.load.value);
      const mark = tank.best === stand.stand ? " (best)" : "";
      return [
        `${tank.name} from ${stand.name}${mark}`,
        `${print(length, stand.radius.value)} off, ${load}${share}: ${verdict}`,
      ];
    }),
  );
  return { title: "LIFT", rows };
}
