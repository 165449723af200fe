/**
 * What is handed over as tables, opened by programs that are not ours: the workbook reckoned anew by
 * LibreOffice, GPX read by GDAL and held against the standard's rules by xmllint, CSV by Papa Parse.
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import Papa from "papaparse";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { estimate } from "../../src/estimate/index.js";
import type { HandoverJob } from "../../src/handover/index.js";
import { plainCell, type Sheet } from "../../src/handover/sheet.js";
import { makeStakes, stakeOut } from "../../src/handover/stakes/makeStakes.js";
import { makeTables, tableSheets } from "../../src/handover/tables/makeTables.js";
import { readSite, type Scheme } from "../../src/site/index.js";
import { toPlane } from "../../src/survey/index.js";
import { GPX_RULES } from "./gpxRules.js";

const folder = mkdtempSync(join(tmpdir(), "bankyard-tables-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const PLACE = { longitude: -121.5, latitude: 44.25 };

/** The example with waste, a least load, a line of one's own and tax, so that every kind of row is there. */
function jobWith(change: (scheme: Scheme) => Scheme = (scheme) => scheme): HandoverJob {
  const read = readSite(readFileSync("shared/sites/alder-flat.site.json", "utf8"));
  if (!read.ok) throw new Error("alder-flat could not be read");
  const costs = {
    waste: 0.1,
    leastLoad: 20_000,
    tax: 0.07,
    lines: [{ id: "mine", name: "=Portable toilet", per: "d" as const, count: 9, price: 12.5 }],
  };
  const schemes = read.value.schemes.map((scheme, i) =>
    i === 0 ? change({ ...scheme, costs }) : scheme,
  );
  const site = { ...read.value, place: PLACE, schemes };
  const schemeId = site.schemes[0]!.id;
  const madeAt = "2026-11-27T14:05:00Z";
  return { site, schemeId, estimate: estimate(site, schemeId), madeAt };
}

const GRAVEL = "material-crushed-gravel";
const GRAVEL_PRICE = 40;

const job = jobWith();
/** The same with another price for gravel: what the changed workbook has to come to. */
const dearer = jobWith((scheme) => ({
  ...scheme,
  prices: [...(scheme.prices ?? []), { id: GRAVEL, price: GRAVEL_PRICE }],
}));

/** What is typed over the first volume of crushed gravel that is put in, more than before. */
const MORE_GRAVEL = 10;

const sheets = tableSheets(job);
/** Numbers of the sheets as LibreOffice reckons them, by workbook, sheet and place. */
const reckoned = new Map<string, string[][]>();

/** A workbook without any result of a formula, so that only reckoning can put one there. */
function withoutResults(
  book: Uint8Array,
  change: (name: string, xml: string) => string = (_, xml) => xml,
): Uint8Array {
  const files = unzipSync(book);
  const bare = Object.entries(files).map(([name, data]) => {
    if (!name.startsWith("xl/worksheets/sheet")) return [name, data] as const;
    const xml = change(name, strFromU8(data));
    return [name, strToU8(xml.replace(/<\/f><v>[^<]*<\/v>/g, "</f>"))] as const;
  });
  return zipSync(Object.fromEntries(bare));
}

/** The XML of a sheet with a number typed into a cell. */
function typedInto(xml: string, place: string, value: number): string {
  const cell = new RegExp(`(<c r="${place}"[^>]*><v>)[^<]*`);
  if (!cell.test(xml)) throw new Error(`no number at ${place}`);
  return xml.replace(cell, `$1${value}`);
}

const fileOf = (sheet: keyof typeof sheets): string =>
  `xl/worksheets/sheet${Object.keys(sheets).indexOf(sheet) + 1}.xml`;

/** Row, counted from 0, of the first work that crushed gravel is put into. */
const gravelPutIn = sheets.quantities.rows.findIndex(
  (row) => row[1] === "Crushed gravel (bedding)" && row[2] === "Put in, in place",
);
const rockCut = sheets.quantities.rows.findIndex(
  (row) => row[1] === "Weathered rock (rippable)" && row[2] === "Cut, in the bank",
);
const numberAt = (sheet: Sheet, y: number, x: number): number =>
  Number(plainCell(sheet.rows[y]?.[x] ?? null));

/** Row of a cost line in the sheet, as a spreadsheet counts. */
const costRow = (name: string): number => sheets.cost.rows.findIndex((row) => row[0] === name) + 1;

let book: Uint8Array;
beforeAll(async () => {
  const [first] = await makeTables(job);
  if (!(first?.data instanceof Uint8Array)) throw new Error("expected a workbook first");
  book = first.data;
  const perTon = 0.90718474; // t in a short ton: NIST SP 811, Appendix B
  const at = costRow("Crushed gravel, delivered");
  const changed = withoutResults(book, (name, xml) =>
    name !== fileOf("cost")
      ? xml
      : ["G", "H", "I"].reduce(
          (text, column) => typedInto(text, `${column}${at}`, GRAVEL_PRICE * perTon),
          xml,
        ),
  );
  const fuller = withoutResults(book, (name, xml) =>
    name !== fileOf("quantities")
      ? xml
      : [gravelPutIn, rockCut].reduce((text, y) => {
          const before = numberAt(sheets.quantities, y, 3);
          return typedInto(text, `D${y + 1}`, before + MORE_GRAVEL);
        }, xml),
  );
  writeFileSync(join(folder, "asMade.xlsx"), withoutResults(book));
  writeFileSync(join(folder, "changed.xlsx"), changed);
  writeFileSync(join(folder, "fuller.xlsx"), fuller);
  // Comma, quotes, UTF-8, numbers in full, every sheet a file of its own.
  const filter = "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,false,false,false,-1";
  execFileSync(
    "soffice",
    [
      `-env:UserInstallation=file://${join(folder, "profile")}`,
      ...["--headless", "--convert-to", filter, "--outdir", folder],
      ...["asMade", "changed", "fuller"].map((name) => join(folder, `${name}.xlsx`)),
    ],
    { stdio: "pipe", timeout: 120_000 },
  );
  for (const name of ["asMade", "changed", "fuller"]) {
    for (const sheet of Object.values(sheets) as Sheet[]) {
      const file = join(folder, `${name}-${sheet.name}.csv`);
      const { data } = Papa.parse<string[]>(readFileSync(file, "utf8"));
      reckoned.set(`${name} ${sheet.name}`, data);
    }
  }
}, 180_000);

const cellOf = (name: string, sheet: Sheet, y: number, x: number): string =>
  reckoned.get(`${name} ${sheet.name}`)?.[y]?.[x] ?? "";

describe("the workbook, reckoned by LibreOffice without any result of ours in it", () => {
  it("comes to our own figures in every cell, to 1e-6 and money to a cent", () => {
    let formulas = 0;
    for (const sheet of Object.values(sheets) as Sheet[]) {
      sheet.rows.forEach((row, y) =>
        row.forEach((cell, x) => {
          const ours = plainCell(cell);
          if (typeof ours !== "number") return;
          if (typeof cell === "object" && cell !== null && "formula" in cell) formulas += 1;
          const theirs = Number(cellOf("asMade", sheet, y, x));
          const off = Math.abs(theirs - ours);
          expect(off, `${sheet.name} ${y} ${x}: ${theirs}, ours ${ours}`).toBeLessThanOrEqual(
            1e-6 * Math.max(1, Math.abs(ours)),
          );
        }),
      );
    }
    expect(formulas).toBeGreaterThan(200);
  });

  it("has the estimate's total, and follows a price that is changed to the estimate with that price", () => {
    const y = sheets.cost.rows.findIndex((row) => plainCell(row[0] ?? null) === "Total, USD");
    const { likely } = job.estimate.cost.total;
    expect(Number(cellOf("asMade", sheets.cost, y, 10))).toBeCloseTo(likely, 2);
    const after = dearer.estimate.cost.total.likely;
    expect(Math.abs(after - likely)).toBeGreaterThan(50);
    expect(Number(cellOf("changed", sheets.cost, y, 10))).toBeCloseTo(after, 2);
    const summary = sheets.summary.rows.findIndex(
      (row) => row[0] === "Cost, every likely figure, USD",
    );
    expect(Number(cellOf("changed", sheets.summary, summary, 1))).toBeCloseTo(after, 2);
  });

  it("lets a changed volume move tons, hours, fuel, wear and the total, and nothing else", () => {
    const now = (sheet: Sheet, y: number, x: number): number =>
      Number(cellOf("fuller", sheet, y, x));
    const { cost, quantities, incoming, machines } = sheets;
    const name = String(plainCell(quantities.rows[gravelPutIn]?.[0] ?? null));
    const hoursOf = (work: string, material: string): number =>
      machines.rows.findIndex((row) => row[0] === work && row[1] === material);
    // By hand: 10 yd³ more, a tenth of waste, tons in a yard, times the price of a ton.
    const coming = incoming.rows.findIndex((row) => row[0] === "Crushed gravel (bedding)");
    const tons = MORE_GRAVEL * 1.1 * numberAt(incoming, coming, 3);
    const gravel = costRow("Crushed gravel, delivered") - 1;
    const dearerGravel = tons * numberAt(cost, gravel, 7);
    expect(now(cost, gravel, 10) - numberAt(cost, gravel, 10)).toBeCloseTo(dearerGravel, 4);
    // Hours are volume ÷ output; fuel is so much in an hour.
    const rockWork = String(plainCell(quantities.rows[rockCut]?.[0] ?? null));
    const hours = [
      hoursOf(name, "Crushed gravel (bedding)"),
      hoursOf(rockWork, "Weathered rock (rippable)"),
    ].reduce((sum, y) => sum + MORE_GRAVEL / numberAt(machines, y, 5), 0);
    const fuel = costRow("Diesel fuel") - 1;
    const inAnHour = machines.rows.findIndex((row) =>
      String(plainCell(row[0] ?? null)).startsWith("Fuel in an hour"),
    );
    const dearerFuel = hours * numberAt(machines, inAnHour, 1) * numberAt(cost, fuel, 7);
    expect(now(cost, fuel, 10) - numberAt(cost, fuel, 10)).toBeCloseTo(dearerFuel, 4);
    const teeth = costRow("Bucket teeth worn in soft rock") - 1;
    const worn = MORE_GRAVEL * numberAt(cost, teeth, 7);
    expect(now(cost, teeth, 10) - numberAt(cost, teeth, 10)).toBeCloseTo(worn, 4);
    const total = cost.rows.findIndex((row) => plainCell(row[0] ?? null) === "Total, USD");
    const moved = (dearerGravel + dearerFuel + worn) * 1.07;
    expect(now(cost, total, 10) - numberAt(cost, total, 10)).toBeCloseTo(moved, 3);
  });

  it("carries in the order list what the cost has", () => {
    const y = sheets.orders.rows.findIndex((row) => row[1] === "Crushed gravel, delivered");
    const line = dearer.estimate.cost.lines.find(({ id }) => id === GRAVEL);
    expect(Number(cellOf("changed", sheets.orders, y, 8))).toBeCloseTo(
      line?.amount.likely ?? NaN,
      2,
    );
  });

  it("keeps a name that begins like a formula a text", () => {
    const y = costRow("=Portable toilet") - 1;
    expect(cellOf("asMade", sheets.cost, y, 0)).toBe("=Portable toilet");
  });
});

describe("the workbook as it is made", () => {
  it("holds what every formula comes to, for programs that show without reckoning", () => {
    const files = unzipSync(book);
    const names = Object.keys(files).filter((name) => /sheet\d+\.xml$/.test(name));
    const all = names.map((name) => strFromU8(files[name]!)).join();
    const formulas = all.match(/<f>/g) ?? [];
    expect(formulas.length).toBeGreaterThan(200);
    expect(all.match(/<\/f><v>-?[\d.]+(e[+-]?\d+)?<\/v>/g)).toHaveLength(formulas.length);
  });
});

describe("the tables as CSV, read by Papa Parse", () => {
  it("hold the sheets' numbers, text guarded against formulas, every caution", async () => {
    const files = (await makeTables(job)).filter(({ name }) => name.endsWith(".csv"));
    expect(files).toHaveLength(4);
    for (const { data } of files) {
      const read = Papa.parse<string[]>(String(data).replace(/^\uFEFF/, ""));
      expect(read.errors).toEqual([]);
      expect(read.data.flat().filter((cell) => /^[=+@]/.test(cell))).toEqual([]);
      for (const caution of job.estimate.cautions) expect(read.data.flat()).toContain(caution);
    }
    const cost = Papa.parse<string[]>(String(files[2]?.data)).data;
    const lines = job.estimate.cost.lines;
    const amounts = cost.slice(1, lines.length + 1).map((row) => row[10] ?? "");
    // Money in CSV is written to the cent, so half a cent is the most that it may be off.
    amounts.forEach((amount, i) => {
      expect(amount).toMatch(/^-?\d+\.\d\d$/);
      expect(Math.abs(Number(amount) - lines[i]!.amount.likely)).toBeLessThanOrEqual(0.005 + 1e-9);
    });
    expect(cost.flat()).toContain("'=Portable toilet");
  });
});

describe("stakes as GPX", () => {
  const file = join(folder, "stakes.gpx");
  const stakes = stakeOut(job).groups.flatMap((group) => group.stakes);
  beforeAll(async () => {
    const gpx = (await makeStakes(job)).find(({ name }) => name.endsWith(".gpx"));
    writeFileSync(file, String(gpx?.data));
  });

  it("keep to the rules of GPX 1.1", () => {
    const rules = join(folder, "gpx.xsd");
    writeFileSync(rules, GPX_RULES);
    const check = (name: string): void => {
      execFileSync("xmllint", ["--noout", "--schema", rules, name], { stdio: "pipe" });
    };
    expect(() => check(file)).not.toThrow();
    const wrong = join(folder, "wrong.gpx");
    writeFileSync(wrong, readFileSync(file, "utf8").replace(/ lat="[^"]*"/, ' lat="91"'));
    expect(() => check(wrong)).toThrow();
  });

  it("are read by GDAL at their places, to a millimetre, with the ground's elevation", () => {
    const args = ["-f", "GeoJSON", "-lco", "COORDINATE_PRECISION=9", "/vsistdout/", file];
    const text = execFileSync("ogr2ogr", [...args, "waypoints"], { encoding: "utf8" });
    const read = JSON.parse(text) as {
      features: {
        properties: { name: string; ele: number };
        geometry: { coordinates: [number, number] };
      }[];
    };
    expect(read.features).toHaveLength(stakes.length);
    read.features.forEach(({ properties, geometry }, i) => {
      const stake = stakes[i]!;
      const [longitude, latitude] = geometry.coordinates;
      const [x, y] = toPlane(PLACE, { longitude, latitude });
      expect(properties.name).toBe(stake.name);
      // Eight decimals of a degree are 1.1 mm.
      expect(Math.hypot(x - stake.at[0], y - stake.at[1])).toBeLessThan(0.0012);
      expect(properties.ele).toBeCloseTo(stake.ground ?? NaN, 3);
    });
    const info = execFileSync("ogrinfo", ["-ro", "-al", "-so", file], { encoding: "utf8" });
    const tracks = /Layer name: tracks[\s\S]*?Feature Count: (\d+)/.exec(info)?.[1];
    const drawn = stakeOut(job).groups.filter(({ kind }) => kind !== "left" && kind !== "right");
    expect(Number(tracks)).toBe(drawn.length);
  });
});
