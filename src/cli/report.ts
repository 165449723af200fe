/** The estimate as text that a builder can read, in the site's own units. */
import type { Estimate, Range } from "../estimate/index.js";
import { materialsOf, type Finding, type Site } from "../site/index.js";
import {
  area,
  distance,
  earthVolume,
  elevation,
  haulMass,
  length,
  money,
  pipeSlope,
  plainNumber,
  type Measure,
} from "../units/index.js";

import type { Chance } from "../chance/index.js";
import { chanceRows } from "./chanceReport.js";
import { daysRows, hireRows, liftRows } from "./jobReport.js";
import { flowParts } from "./flowReport.js";
import { findingLines, groundParts, permitPart } from "./permitReport.js";

/** Printing in the site's own units; a figure that is not known prints as a dash. */
interface Printer {
  print: (measure: Measure, value: number) => string;
  name: (materialId: string) => string;
}

/** The whole report, lines of at most about 100 characters. */
export function reportText(site: Site, answer: Estimate, chance: Chance | null): string {
  const materials = materialsOf(site);
  const printer: Printer = {
    print: (measure, value) => (Number.isFinite(value) ? measure.print(value, site.units) : "–"),
    name: (id) => (id === "native" ? "the site's own earth" : (materials.get(id)?.name ?? id)),
  };
  const scheme = site.schemes.find((each) => each.id === answer.scheme);
  const sections = [
    [`${site.name} · ${scheme?.name ?? answer.scheme}`],
    summary(answer, printer, site),
    worksSection(answer, printer),
    earthSection(answer, printer),
    pipesSection(answer, printer),
    ...flowParts(answer, printer.print).map(({ title, rows }) => [title, ...table(rows)]),
    machinesSection(answer),
    ...[daysRows(answer), hireRows(answer), liftRows(answer, printer.print)]
      .filter(({ rows }) => rows.length > 0)
      .map(({ title, rows }) => [title, ...table(rows)]),
    costSection(answer, site),
    ...(chance === null ? [] : [chanceSection(chance, answer, printer)]),
    ...[...groundParts(site, answer, printer.print), permitPart(answer)].map(({ title, rows }) => [
      ...wrapped(title, "  "),
      ...table(rows).flatMap((line) => indented(line.trimEnd(), "      ")),
    ]),
    findingsSection(answer.findings),
    ...takenSection(answer.findings),
    ["STANDING CAUTIONS", ...answer.cautions.flatMap((text) => wrapped(`• ${text}`, "  "))],
  ];
  return `${sections.map((lines) => lines.join("\n")).join("\n\n")}\n`;
}

function chanceSection(chance: Chance, { cost }: Estimate, { print }: Printer): string[] {
  const { title, rows } = chanceRows(chance, cost.currency, print);
  return [title, ...table(rows)];
}

function summary(answer: Estimate, { print }: Printer, site: Site): string[] {
  const { earth, machines, cost } = answer;
  const materials = materialsOf(site);
  const rock = Object.entries(answer.cut)
    .filter(([id]) => ["rippable", "rock"].includes(materials.get(id)?.kind ?? ""))
    .reduce((sum, [, volume]) => sum + volume, 0);
  return table([
    ["Cut, bank", print(earthVolume, earth.bank)],
    ["  of it rock", print(earthVolume, rock)],
    ["Left over, loose", print(earthVolume, earth.surplusLoose)],
    ["Machine days", rangeText(machines.days, (days) => plainNumber(days, 0))],
    ["Cost", moneyRange(cost.total, cost.currency)],
  ]);
}

function worksSection(answer: Estimate, { print, name }: Printer): string[] {
  const lines = ["WORKS, in building order"];
  for (const work of answer.works) {
    lines.push("", `${work.name} (${work.kind})`);
    const rows: [string, string][] = [];
    for (const [id, volume] of Object.entries(work.cut)) {
      const how = id === "native" ? "as it lay" : "bank";
      rows.push([`  cut ${name(id)}, ${how}`, print(earthVolume, volume)]);
    }
    for (const [id, volume] of Object.entries(work.fill)) {
      rows.push([`  fill ${name(id)}, in place`, print(earthVolume, volume)]);
    }
    if (work.displaced > 0) rows.push(["  displaced", print(earthVolume, work.displaced)]);
    if (work.daylight > 0) {
      rows.push(["  deepest cut", print(length, work.deepest)]);
      rows.push(["  tallest face", print(length, work.tallestFace)]);
      rows.push(["  opening at the ground", print(area, work.daylight)]);
    }
    const { lowest, highest } = work.floor;
    const floor =
      highest - lowest < 0.005
        ? print(elevation, lowest)
        : `${print(elevation, lowest)} to ${print(elevation, highest)}`;
    rows.push([work.daylight > 0 ? "  floor" : "  stands at", floor]);
    lines.push(...table(rows));
  }
  return lines;
}

function earthSection({ earth, land }: Estimate, { print }: Printer): string[] {
  return [
    "EARTH",
    ...table([
      ["Cut, bank", print(earthVolume, earth.bank)],
      ["Cut, loose", print(earthVolume, earth.loose)],
      ["Put back on the site, bank", print(earthVolume, earth.reusedBank)],
      ["Surplus, bank", print(earthVolume, earth.surplusBank)],
      ["Surplus, loose", print(earthVolume, earth.surplusLoose)],
      ["Surplus, mass", print(haulMass, earth.surplusMass)],
      ["Fill to bring in, compacted", print(earthVolume, earth.importCompacted)],
      ["Ground laid bare", print(area, land.disturbed.value)],
      ["Erosion barrier", print(distance, land.barrier.value)],
    ]),
  ];
}

function pipesSection(answer: Estimate, { print }: Printer): string[] {
  const lines = ["PIPES"];
  for (const pipe of answer.flow.pipes) {
    lines.push("", `${pipe.name} (${pipe.service}): ${pipe.verdict}`);
    const least = pipe.leastFall ? ` (at least ${print(pipeSlope, pipe.leastFall.value)})` : "";
    lines.push(
      ...table([
        ["  length in plan", print(distance, pipe.length)],
        ["  fall", `${print(pipeSlope, pipe.fall)}${least}`],
        ["  drop", print(distance, pipe.drop)],
        ["  cover", `${print(length, pipe.cover.least)} to ${print(length, pipe.cover.most)}`],
      ]),
    );
  }
  for (const lift of answer.flow.lifts) {
    lines.push("", `${lift.name}: static lift`);
    lines.push(
      ...table([
        ["  low water", print(elevation, lift.lowWater)],
        ["  outlet", print(elevation, lift.outlet)],
        ["  lift", print(distance, lift.lift.value)],
      ]),
    );
  }
  return answer.flow.pipes.length === 0 ? ["PIPES", "none"] : lines;
}

function machinesSection({ machines, cost }: Estimate): string[] {
  const { candidates } = machines;
  return [
    "MACHINE",
    ...table([
      [machines.digger.name, machines.digger.reason],
      ["Hours", rangeText(machines.hours, (h) => plainNumber(h, 1))],
      ["Days", rangeText(machines.days, (d) => plainNumber(d, 0))],
      ["Hire and delivery", moneyRange(machines.rental.total, cost.currency)],
      ...machines.byHand.map((part): [string, string] => [
        `  by hand: ${part.name}, beside ${part.limitName}`,
        `${rangeText(part.hours, (h) => plainNumber(h, 1))} h`,
      ]),
      ...candidates.map(({ name, can, reason, whole }): [string, string] => [
        `  ${name}`,
        can && whole !== undefined
          ? `yes: ${reason} (${money(cost.currency).print(whole, "metric")})`
          : `no: ${reason}`,
      ]),
    ]),
  ];
}

function costSection({ cost }: Estimate, site: Site): string[] {
  const print = money(cost.currency);
  const rows = cost.lines.map((line): [string, string] => [
    line.name,
    `${print.print(line.amount.likely, site.units)}${line.own ? "" : "  (demo price)"}`,
  ]);
  return ["COST", ...table([...rows, ["Total", moneyRange(cost.total, cost.currency)]])];
}

/** What stands open; what was taken on is counted, and stands below. */
function findingsSection(findings: readonly Finding[]): string[] {
  const open = findings.filter(({ accepted }) => accepted === undefined);
  const taken = findings.length - open.length;
  const title = taken === 0 ? "FINDINGS" : `FINDINGS, besides ${taken} taken on`;
  if (open.length === 0) return [title, "none"];
  return [title, ...open.flatMap(findingLines).flatMap((line) => wrapped(line, "  "))];
}

function takenSection(findings: readonly Finding[]): string[][] {
  const taken = findings.filter(({ accepted }) => accepted !== undefined);
  if (taken.length === 0) return [];
  const lines = taken.flatMap(findingLines).flatMap((line) => wrapped(line, "  "));
  return [[`TAKEN ON, with a reason: ${taken.length}`, ...lines]];
}

function moneyRange(range: Range, currency: string): string {
  return rangeText(range, (value) => money(currency).print(value, "us"));
}

function rangeText({ low, likely, high }: Range, print: (value: number) => string): string {
  return `${print(likely)}  (${print(low)} to ${print(high)})`;
}

/** Rows in two columns, the second lined up. */
function table(rows: readonly [string, string][]): string[] {
  const width = Math.min(44, Math.max(0, ...rows.map(([label]) => label.length)));
  return rows.map(([label, text]) => `${label.padEnd(width)}  ${text}`);
}

/** A row that keeps the blanks it begins with. */
function indented(row: string, indent: string): string[] {
  const lead = row.length - row.trimStart().length;
  const [first = "", ...more] = wrapped(row.trimStart(), indent);
  return [`${" ".repeat(lead)}${first}`, ...more];
}

function wrapped(text: string, indent: string): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    if (line.length + word.length > 98 && line.trim() !== "") {
      lines.push(line);
      line = `${indent}${word}`;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  return [...lines, line];
}
