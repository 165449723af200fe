import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import { changePressure } from "../../site/index.js";
import { flow, FOOT, head, length, mass } from "../../units/index.js";
import { exampleJob, withScheme } from "../job.fixture.js";
import type { HandoverJob } from "../job.js";
import { plainCell } from "../sheet.js";
import { sheetsOf, unpricedWords } from "../../sheets/index.js";
import { tableSheets } from "../tables/makeTables.js";
import { deliveryCautions } from "../../estimate/index.js";
import type { OrderItem } from "./item.js";
import { makeOrders } from "./makeOrders.js";
import { linesNotOrdered, orderItems } from "./orderItems.js";
import { wantedDays } from "./wanted.js";
import { allOrderTexts, messagesFor, orderText, plainLetters } from "./orderText.js";

const alder = exampleJob("alder-flat");
const quarry = exampleJob("quarry-lane");

const money = (job: HandoverJob): number =>
  orderItems(job).reduce((sum, { line, share = 1 }) => sum + (line?.amount.likely ?? 0) * share, 0);

describe("order lists", () => {
  it.each([
    ["alder-flat", alder],
    ["quarry-lane", quarry],
    ["alder-flat, the gravity scheme", exampleJob("alder-flat", undefined, "gravity")],
  ])("agree with the cost: lines ordered and lines not ordered make its total (%s)", (_, job) => {
    const rest = linesNotOrdered(job, orderItems(job)).reduce(
      (sum, { amount }) => sum + amount.likely,
      0,
    );
    expect(money(job) + rest).toBeCloseTo(job.estimate.cost.total.likely, 6);
    expect(money(job)).toBeGreaterThan(0);
  });

  it("round gravel up to whole tons and pipe up to whole lengths", () => {
    const items = orderItems(alder);
    const gravel = items.find(({ name }) => name.startsWith("Crushed gravel"));
    const tons = (gravel?.line?.quantity.value ?? 0) / 907.18474; // NIST SP 811: 2000 lb
    expect(gravel?.count).toBe(Math.ceil(tons));
    expect(gravel?.unit).toBe("tons");
    const drain = items.find(({ name }) => name.startsWith("ABS DWV Schedule 40, 4 in"));
    const feet = (drain?.line?.quantity.value ?? 0) / FOOT;
    expect(drain?.count).toBe(Math.ceil(feet / 10));
    const longer = { pipeLength: { gravity: 20 * FOOT } };
    expect(orderItems(alder, longer).find(({ name }) => name === drain?.name)?.count).toBe(
      Math.ceil(feet / 20),
    );
  });

  it("hold all pressure pipe that the pump part counts, each as long as there", () => {
    const [system] = alder.estimate.flow.pressure;
    const inputs = system?.pipeVolume.inputs ?? [];
    const long = (part: string): number =>
      inputs
        .filter(({ name }) => name.startsWith(part) && name.endsWith("long"))
        .reduce((sum, { value }) => sum + value, 0);
    const items = orderItems(alder);
    const main = items.find(({ name }) => name.startsWith("Schedule 40 PVC, 1½ in"));
    expect(main?.line?.quantity.value).toBeCloseTo(long("main"), 9);
    const rest = items.filter(({ name }) => name.startsWith("Pressure pipe in"));
    const ordered = rest.reduce((sum, { exact }) => sum + parseFloat(exact) * FOOT, 0);
    const counted = long("riser") + long("branches") + long("manifolds and laterals");
    expect(long("branches' rise")).toBeGreaterThan(1);
    expect(ordered).toBeCloseTo(counted, 2); // lengths to buy are printed to 0.01 ft
    expect(rest.flatMap(({ notes }) => notes).join()).toContain("rise from the main's end 4.03 ft");
  });

  it("hold a connector for each pipe and conduit through a tank's wall, and the valves said", () => {
    const count = (job: HandoverJob, part: string): number[] =>
      orderItems(job)
        .filter(({ name }) => name.includes(part))
        .map((item) => item.count);
    // Of three sizes: drain 4½ in, lift line 1.9 in and the conduit, which the electrician sets.
    expect(count(alder, "Watertight connector")).toEqual([1, 1, 1]);
    const seal = orderItems(alder).find(({ name }) => name.includes("for conduit"));
    expect(seal?.kind).toBe("electrical");
    expect(count(quarry, "Watertight connector")).toEqual([2]);
    expect(count(alder, "Drain valve")).toEqual([1]);
    const plain = exampleJob("alder-flat", (site) =>
      changePressure(site, "pumped", "lift", { drainValve: undefined, checkValve: true }),
    );
    expect(count(plain, "Drain valve")).toEqual([]);
    expect(count(plain, "Check valve")).toEqual([1]);
    const pump = (job: HandoverJob): string =>
      orderItems(job)
        .filter(({ kind }) => kind === "pump")
        .flatMap(({ notes }) => notes)
        .join();
    expect(pump(alder)).toContain("small hole inside the tank");
    expect(pump(plain)).not.toContain("small hole");
  });

  it("hold a box where a drain parts to two pipes of the field", () => {
    const boxes = (job: HandoverJob) =>
      orderItems(job).filter(({ name }) => name.startsWith("Distribution box"));
    expect(boxes(quarry).map(({ name, count }) => [name, count])).toEqual([
      ["Distribution box, 1 inlet and 2 outlets, 110 mm", 1],
    ]);
    expect(boxes(quarry)[0]?.notes.join()).toContain("set level");
    expect(boxes(exampleJob("alder-flat", undefined, "gravity"))).toEqual([]);
  });

  it("name a pipe as the site does, and sizes as they are sold", () => {
    const names = orderItems(alder).map(({ name }) => name);
    expect(names.some((name) => name.startsWith("Schedule 40 PVC, 4 in"))).toBe(false);
    expect(names).toContain("Gate valve, 1½ in"); // 1.610 in inside: ASTM D1785
  });

  it("tell what a tank holds in the site's units, and a pipe's inches with DN on a metric site", () => {
    const text = allOrderTexts(quarry, orderItems(quarry));
    expect(text).toContain("Septic tank: precast tank, holds 3,500 L");
    expect(text).not.toMatch(/\d gal\b/);
    const names = quarry.estimate.cost.lines.map(({ name }) => name);
    expect(names).toContain("SDR 35 PVC, 4 in (DN 100), with joints");
    expect(allOrderTexts(alder, orderItems(alder))).toContain("precast tank, holds 1,000 gal");
  });

  it("order what waste adds, and say so", () => {
    const wasting = exampleJob("alder-flat", (site) => withScheme(site, { costs: { waste: 0.1 } }));
    const of = (job: HandoverJob) =>
      orderItems(job).find(({ name }) => name.startsWith("Crushed gravel"));
    const [plain, more] = [of(alder), of(wasting)];
    expect(more?.line?.quantity.value).toBeCloseTo(1.1 * (plain?.line?.quantity.value ?? 0), 6);
    expect(more?.notes.join()).toMatch(/10% waste is in it; rounding up adds \d/);
    expect(money(wasting)).toBeGreaterThan(money(alder));
  });

  it("keep perforated pipe apart from solid, and share the line's money by length", () => {
    const pipes = orderItems(quarry).filter(({ line }) => line?.id === "pipe-sdr-35-4-in");
    expect(pipes).toHaveLength(2);
    // 110 mm outside is not the 4 in pipe that prices it.
    expect(pipes[0]?.name).toBe("PVC-U, 110 mm");
    expect(pipes[0]?.notes.join()).toContain("priced as SDR 35 PVC, 4 in");
    expect(pipes.reduce((sum, { share = 1 }) => sum + share, 0)).toBeCloseTo(1, 12);
  });

  it("put conduit on the electrical list", () => {
    const electrical = orderItems(alder).filter(({ kind }) => kind === "electrical");
    expect(electrical.map(({ name }) => name)).toContain("Schedule 40 PVC, 1 in, with joints");
  });
});

describe("what is ordered without a price", () => {
  const without = orderItems(alder).filter(({ line }) => line === null);

  it("is said whole by the cost, on its sheet and in the workbook", () => {
    expect(without.length).toBeGreaterThan(5);
    const text = unpricedWords(alder.site, alder.estimate) ?? "";
    for (const { name } of without) expect(text).toContain(`${name} (`);
    expect(text).toContain("Filter fabric (429 ft²)");
    expect(text).toContain("Not in the total");
    const cost = tableSheets(alder)
      .cost.rows.flat()
      .map((cell) => plainCell(cell));
    expect(cost).toContain(text);
    const sheets = sheetsOf({ ...alder, date: "2026-11-27", paper: "letter" });
    const marks = JSON.stringify(sheets.find(({ id }) => id === "cost")?.marks);
    expect(marks).toContain("Ordered without a price: Filter fabric");
  });

  it("is nothing where all is priced", () => {
    const bare = exampleJob("alder-flat", (site) => withScheme(site, { works: [], flow: {} }));
    expect(unpricedWords(bare.site, bare.estimate)).toBeNull();
  });
});

describe("waste", () => {
  it("is said with what is left over, by hand", () => {
    const notes = (part: string): string =>
      orderItems(alder)
        .find(({ name }) => name.includes(part))
        ?.notes.join("; ") ?? "";
    // 31 tons for 30.65; 3 lengths of 10 ft for 23.88 ft; a roll of 600 ft² for 429 ft²;
    // 2 rolls of 100 ft for 160.9 ft.
    expect(notes("Crushed gravel")).toContain("no waste added; rounding up adds 0.35 ton");
    expect(notes("ABS DWV")).toContain("no waste added; 6.12 ft left over");
    expect(notes("Filter fabric")).toContain("no waste added but the laps; 171 ft² left over");
    expect(notes("Erosion barrier")).toContain("39.1 ft left over");
  });
});

describe("the order message", () => {
  it("holds one supplier's lines with who and where, in plain letters, and nothing of an empty list", () => {
    const items = orderItems(alder);
    const tank = orderText(alder, items, "tank");
    expect(tank).toContain("\n- 1 x Tank 1: precast tank");
    expect(tank).not.toContain("gravel");
    expect(tank).toContain("local codes and licensed practice decide");
    const yard = orderText(alder, items, "yard");
    expect(yard).toMatch(/- 31 tons: Crushed gravel.*loose, \d+ loads of/);
    expect(yard).not.toContain("Not in the cost");
    expect(orderText(alder, items, "pipes")).toMatch(
      /Not in the cost: Filter fabric, .*ask the price/,
    );
    expect(messagesFor(orderItems(quarry))).not.toContain("pump");
    expect(/^[\x20-\x7e\n°]*$/.test(allOrderTexts(alder, items))).toBe(true);
    const named = {
      ...alder,
      site: { ...alder.site, project: { owner: "A. Nother", place: "9 Long Lane" } },
    };
    expect(orderText(named, items, "yard")).toContain("From: A. Nother\nTo: 9 Long Lane\n");
  });

  it("tells tank and pump by what they must be, not by the price line's name", () => {
    const tank = orderText(quarry, orderItems(quarry), "tank");
    // As entered in the example: 3.00 × 1.70 × 1.30 m, 3,600 kg, inlet 1.00 m, outlet 0.95 m up.
    expect(tank).toContain("  - outside 3.00 m x 1.70 m x 1.30 m high\n  - empty 3,600 kg\n");
    expect(tank).toContain("  - inlet 1.00 m above its underside\n  - outlet 0.95 m above");
    expect(tank).not.toContain("tank, up to");
    expect(tank).toContain("how far the crane would reach is not settled");
    const named = orderItems(quarry).find(({ name }) => name.startsWith("Septic tank"));
    expect(named?.notes.join()).toContain('priced as "Septic tank: precast tank, up to 3,785 L"');
    const lifted = orderText(alder, orderItems(alder), "tank");
    const lift = alder.estimate.lift?.tanks[0];
    const load = plainLetters(mass.print(lift?.load?.value ?? NaN, "us"));
    expect(lifted).toContain(`Tank 1: ${load} on the hook`);
    const stand = lift?.stands.find((each) => each.stand === lift.best);
    const radius = plainLetters(length.print(stand?.radius.value ?? NaN, "us"));
    expect(lifted).toContain(`Tank 1: ${radius} from the crane's turning axis`);
    const hole = alder.estimate.works.find(({ id }) => id === "tank-1")?.deepest ?? NaN;
    expect(lifted).toContain(`Tank 1: hole ${plainLetters(length.print(hole, "us"))} deep`);
    const light = exampleJob("quarry-lane", (site) =>
      withScheme(site, {
        works: site.schemes[0]!.works.map((work) =>
          work.kind === "tank" ? { ...work, body: { ...work.body, emptyMass: undefined } } : work,
        ),
      }),
    );
    expect(orderText(light, orderItems(light), "tank")).toContain("weight not entered");
    const pump = orderText(alder, orderItems(alder), "pump");
    const { flow: rate, head: high } = alder.estimate.flow.pressure[0]!.wanted;
    expect(pump).toContain(
      `to give at least ${flow.print(rate.value, "us")} at ${head.print(high.value, "us")} of head`,
    );
    expect(pump).not.toContain("Electrician");
    expect(orderText(alder, orderItems(alder), "electrician")).toContain("- 1 x Electrician");
  });

  it("says the grade, the day, whom to call, and to the driver what a delivery brings with it", () => {
    const dated = exampleJob("alder-flat", (site) => ({
      ...withScheme(site, {
        machines: {
          ...site.schemes[0]!.machines,
          days: { ...site.schemes[0]!.machines?.days, start: "2026-06-01" },
          access: { width: 3, slope: 0.1 },
        },
      }),
      project: { preparer: "D. Rawn", contact: "A. Nother", telephone: "555 0100" },
    }));
    const items = orderItems(dated);
    const yard = orderText(dated, items, "yard");
    expect(yard).toContain("From: A. Nother\nTelephone: 555 0100\n");
    expect(yard).not.toContain("D. Rawn");
    expect(yard).toMatch(/Crushed gravel.*grade crushed, angular, 3\/4 in.*wanted 2026-06-\d\d/);
    expect(yard).toContain(`The way in: 9' 10 1/8" at its narrowest, 10% at its steepest.`);
    for (const caution of deliveryCautions()) expect(yard).toContain(plainLetters(caution));
    // Cautions of the dig are for those who dig.
    for (const caution of dated.estimate.cautions)
      expect(yard).not.toContain(plainLetters(caution));
    expect(yard).toContain("All other cautions stand in the plan");
    expect(orderText(alder, orderItems(alder), "yard")).toMatch(/Crushed gravel.*wanted day \d/);
  });

  it("wants each thing on the first day on which the schedule uses it", () => {
    const { days } = alder.estimate.machines.job.schedule;
    const items = orderItems(alder);
    const of = (passes: (item: OrderItem) => boolean) =>
      items.filter(passes).map((item) => wantedDays(alder.estimate, item));
    const set = days.find(({ tasks }) => tasks.some(({ id }) => id === "tank-1:set"));
    expect(of(({ line }) => line?.id.startsWith("tank-to-") === true)).toEqual([[set]]);
    const gravel = days.filter(({ deliveries }) => deliveries.includes("Crushed gravel (bedding)"));
    expect(of(({ name }) => name.startsWith("Crushed gravel"))).toEqual([gravel]);
    expect(gravel.length).toBeGreaterThan(1);
  });

  it("wants what goes into a work with the task of that work that needs it", () => {
    const { days } = alder.estimate.machines.job.schedule;
    const items = orderItems(alder);
    const first = (task: string) => days.find(({ tasks }) => tasks.some(({ id }) => id === task));
    const daysFor = (passes: (item: OrderItem) => boolean) => {
      const found = items.filter(passes);
      expect(found.length).toBeGreaterThan(0);
      return found.map((item) => wantedDays(alder.estimate, item));
    };
    const [lift, bed, dig] = [
      first("lift-trench:lay"),
      first("sand-bed:fill"),
      first("tank-1:dig"),
    ];
    expect(lift).not.toBe(first("pump"));
    expect(bed).not.toBe(lift);
    const conduit = daysFor(({ name }) => /conduit/i.test(name));
    expect(conduit.every(([day]) => day === lift)).toBe(true);
    const inBed = daysFor(({ kind, works }) => kind !== "tank" && works?.join() === "sand-bed");
    expect(inBed.every((wanted) => wanted.length === 1 && wanted[0] === bed)).toBe(true);
    expect(daysFor(({ beforeDigging }) => beforeDigging === true)).toEqual([[dig]]);
    expect(orderText(alder, items, "pipes")).toContain("wanted before the first digging, day 1");
  });

  it("spells fractions and powers", () => {
    expect(plainLetters("1½ in, ½ hp, 5 yd³ · 4′ 10¾″")).toBe(
      `1 1/2 in, 1/2 hp, 5 yd3 , 4' 10 3/4"`,
    );
  });
});

describe("the files of an order", () => {
  it("are a CSV that reads back, guarded against formulas, and a text, both with every caution", async () => {
    const job = exampleJob("alder-flat", (site) =>
      withScheme(site, {
        works: site.schemes[0]!.works.map((work) =>
          work.id === "tank-1" ? { ...work, name: '=HYPERLINK("x")' } : work,
        ),
      }),
    );
    const [csv, text] = await makeOrders(job);
    const table = Papa.parse<string[]>(String(csv?.data).replace(/^\uFEFF/, ""));
    expect(table.errors).toEqual([]);
    const cells = table.data.flat();
    expect(cells.some((cell) => /^[=+@\t\r]/.test(cell))).toBe(false);
    expect(cells.some((cell) => cell.startsWith("'=HYPERLINK"))).toBe(true);
    const rows = table.data.filter((row) => row.length === 10).slice(1);
    const amounts = rows.slice(0, -1).map((row) => Number(row[8]));
    // Each is rounded to the cent; the total is that of the whole amounts.
    const off = Math.abs(amounts.reduce((sum, value) => sum + value, 0) - money(job));
    expect(off).toBeLessThanOrEqual(0.005 * amounts.length);
    expect(rows.at(-1)?.[8]).toBe(money(job).toFixed(2));
    for (const caution of job.estimate.cautions) {
      expect(cells).toContain(caution);
      expect(text?.data).toContain(caution);
    }
    expect(csv?.name).toBe("alder-flat-pumped-order-list.csv");
  });
});
