/** The simulation as rows of the report. */
import type { Chance, Spread } from "../chance/index.js";
import { distance, earthVolume, hours, money, plainNumber, type Measure } from "../units/index.js";

/** Drivers that are listed. */
const LISTED = 6;

/** Ranges, what drives the total, and where to probe next; `print` writes in the site's units. */
export function chanceRows(
  chance: Chance,
  currency: string,
  print: (measure: Measure, value: number) => string,
): { title: string; rows: [string, string][] } {
  const spread = ({ low, likely, high }: Spread, write: (value: number) => string): string =>
    `${write(low)} · ${write(likely)} · ${write(high)}`;
  const count = (value: number): string => plainNumber(value, 0);
  const volume = (value: number): string => print(earthVolume, value);
  const price = (value: number): string => print(money(currency), value);
  const rows: [string, string][] = [
    ["Total", spread(chance.total, price)],
    ["Calendar days, first to last", spread(chance.jobDays, count)],
    ["Digger's days", spread(chance.days, count)],
    ["Digger's hours", spread(chance.hours, (h) => print(hours, h))],
    ["Rock in all", spread(chance.rock, volume)],
    ["Hard rock", spread(chance.hardRock, volume)],
    ["Truckloads", spread(chance.loads, count)],
    ...chance.drivers
      .slice(0, LISTED)
      .map(({ name, share }): [string, string] => [
        `  unsure by: ${name}`,
        `${plainNumber(100 * share, 1)}% of the spread`,
      ]),
  ];
  const { nextProbe } = chance;
  if (nextProbe !== null) {
    const [x, y] = nextProbe.at;
    rows.push(
      ["Probe next at, east and north", `${print(distance, x)}, ${print(distance, y)}`],
      [
        "  narrows the rock's deviation",
        `${volume(nextProbe.rockBefore)} to ${volume(nextProbe.rockAfter)}`,
      ],
      ["  and the total's", `${price(nextProbe.sdBefore)} to ${price(nextProbe.sdAfter)}`],
    );
  }
  const title = `HOW SURE IT IS: low · likely · high of ${count(chance.runs)} runs, seed ${chance.seed}`;
  return { title, rows };
}
