import type { Figures } from "../../estimate/index.js";
import type { Site } from "../../site/index.js";
import { earthVolume, money, plainNumber } from "../../units/index.js";
import { words } from "../../words/index.js";
import { isWithout } from "./leftOut.js";

/** One of the five figures as it is printed. */
export interface FigureRow {
  id: "cut" | "rock" | "spoil" | "days" | "cost";
  title: string;
  /** SI; days; money in the site's currency. */
  value: number;
  figure: string;
  unit: string;
  /** What else is said of it; empty for nothing. */
  more: string;
}

/** The five figures in the site's units; four in a copy that was made without costs. */
export function figureRows(five: Figures, site: Site): FigureRow[] {
  const { units, currency } = site;
  const said = words.viewer;
  const volume = (value: number): string => earthVolume.print(value, units, { bare: true });
  const sum = (value: number): string => money(currency).print(value, units);
  const days = (value: number): string => plainNumber(value, Number.isInteger(value) ? 0 : 1);
  const unit = earthVolume.unitLabel(units);
  const row = (
    id: FigureRow["id"],
    title: string,
    value: number,
    print: (value: number) => string,
    [of, more]: readonly [string, string] = ["", ""],
  ): FigureRow => ({ id, title, value, figure: print(value), unit: of, more });
  const rows = [
    row("cut", words.desk.cut, five.cut, volume, [unit, ""]),
    row("rock", words.desk.rock, five.rock, volume, [unit, ""]),
    row("spoil", words.desk.spoilToMove, five.spoil, volume, [unit, said.spoil]),
    row("days", words.desk.days, five.days, days, ["", said.withDigger(five.digger.name)]),
    row("cost", words.desk.cost, five.cost.likely, sum, [
      "",
      said.range(sum(five.cost.low), sum(five.cost.high)),
    ]),
  ];
  return isWithout(site, "costs") ? rows.filter(({ id }) => id !== "cost") : rows;
}
