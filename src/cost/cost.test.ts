import { describe, expect, it } from "vitest";
import type { DigResult, PipeRun } from "../dig/index.js";
import { digOf, schemeOf, tankOf, trenchOf, workOf } from "../dig/dig.fixture.js";
import { planMachines } from "../machines/index.js";
import { catalogueMaterials } from "../site/index.js";
import type { Scheme } from "../site/index.js";
import { cataloguePipes, cataloguePrices } from "./catalogue.js";
import { costOf } from "./cost.js";
import { loadsOf } from "./loads.js";
import type { CostResult } from "./types.js";

const MATERIALS = catalogueMaterials();

function priced(scheme: Scheme, dig: DigResult, currency = "USD"): CostResult {
  return costOf(scheme, currency, dig, planMachines(scheme, dig, MATERIALS), MATERIALS);
}

function line(cost: CostResult, id: string) {
  const found = cost.lines.find((l) => l.id === id);
  if (!found) throw new Error(`got no line "${id}" in ${cost.lines.map((l) => l.id).join(", ")}`);
  return found;
}

function pipeRun(given: Partial<PipeRun>): PipeRun {
  return {
    id: "run",
    name: "Run",
    trench: "trench",
    service: "gravity",
    inside: 0.100965,
    outside: 0.107061,
    material: "pvc",
    length: 30,
    fall: 0.02,
    drop: 0.6,
    cover: { least: 0.5, most: 1 },
    stations: [stationAt(0, 0), stationAt(30, -0.6)],
    ...given,
  };
}

function stationAt(station: number, invert: number): PipeRun["stations"][number] {
  return { station, at: [station, 0], ground: invert + 1, invert };
}

const SCHEME = schemeOf({
  works: [tankOf("tank", { liquidVolume: 3.785 }), trenchOf("trench", 0.6)],
});
const DIG = digOf(
  [
    workOf({
      id: "tank",
      cut: { topsoil: 5, "common-earth": 30 },
      fill: { "crushed-gravel": 2, native: 15 },
      deepest: 2.4,
    }),
    workOf({
      id: "trench",
      kind: "trench",
      cut: { "common-earth": 12 },
      fill: { "crushed-gravel": 1, "pea-gravel": 3, native: 8 },
      deepest: 0.9,
    }),
  ],
  { surplusLoose: 33, importCompacted: 0 },
  [pipeRun({})],
);

describe("the price list", () => {
  it("has a price for every catalogue pipe, and names only materials that exist", () => {
    const prices = cataloguePrices();
    for (const pipe of cataloguePipes()) expect(prices.has(`pipe-${pipe.id}`), pipe.id).toBe(true);
    for (const row of prices.values()) {
      if (row.material !== undefined) expect(MATERIALS.has(row.material), row.id).toBe(true);
      expect(row.source).toBe("demo price, no source; replace it with your supplier's");
    }
  });
});

describe("costing a scheme", () => {
  it("gives no lines and zeros for no works", () => {
    const cost = priced(schemeOf(), digOf([]));
    expect(cost.lines).toEqual([]);
    expect(cost.total).toEqual({ low: 0, likely: 0, high: 0 });
    expect(cost.loads.surplus.value).toBe(0);
    expect(cost.findings).toEqual([]);
  });

  it("prices what is bought, set, laid, hauled and hired, once each", () => {
    const cost = priced(SCHEME, DIG);
    const ids = cost.lines.map((l) => l.id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids).toEqual(
      expect.arrayContaining([
        "material-crushed-gravel",
        "material-pea-gravel",
        "haul-away",
        "tank-to-1000-gal:tank",
        "tank-set",
        "pipe-sdr-35-4-in",
        "fuel",
        "permit",
      ]),
    );
    expect(ids).not.toContain("pump-set");
  });

  it("has a total that its lines reach, end by end", () => {
    const cost = priced(SCHEME, DIG);
    for (const end of ["low", "likely", "high"] as const) {
      const sum = cost.lines.reduce((total, l) => total + l.amount[end], 0);
      expect(cost.total[end]).toBeCloseTo(sum, 9);
    }
    expect(cost.totalWorking.value).toBe(cost.total.likely);
    expect(cost.totalWorking.formula).toMatch(/narrower/);
    for (const l of cost.lines) {
      expect(l.amount.low, l.id).toBeLessThanOrEqual(l.amount.likely);
      expect(l.amount.likely, l.id).toBeLessThanOrEqual(l.amount.high);
    }
  });

  it("buys gravel by the tonne in place, over all works", () => {
    const gravel = line(priced(SCHEME, DIG), "material-crushed-gravel");
    const tonnes = (3 * 1668) / 1000;
    expect(gravel.quantity.value).toBeCloseTo(tonnes * 1000, 6);
    expect(gravel.quantity.unit).toBe("kg");
    expect(gravel.where).toEqual(["tank", "trench"]);
    expect(gravel.amount.likely).toBeCloseTo(tonnes * gravel.price.likely, 9);
  });

  it("prices pipe by its own material, however its name goes on", () => {
    const dig = digOf([], {}, [
      pipeRun({ inside: 0.10226, outside: 0.1143, material: "ABS DWV Schedule 40" }),
    ]);
    const ids = priced(SCHEME, dig).lines.map(({ id }) => id);
    expect(ids).toContain("pipe-abs-dwv-4-in");
    expect(ids).not.toContain("pipe-schedule-40-4-in");
  });

  it("prices pipe along its slope and fuel by the litre", () => {
    const cost = priced(SCHEME, DIG);
    const pipe = line(cost, "pipe-sdr-35-4-in");
    expect(pipe.quantity.value).toBeCloseTo(Math.hypot(30, 0.6), 12);
    expect(pipe.where).toEqual(["trench"]);
    // Up 0.4 over 10 m, then 1 down over 20 m: longer than straight from end to end.
    const stations = [stationAt(0, 0), stationAt(10, 0.4), stationAt(30, -0.6)];
    const bent = priced(SCHEME, { ...DIG, pipes: [pipeRun({ stations })] });
    expect(line(bent, "pipe-sdr-35-4-in").quantity.value).toBeCloseTo(
      Math.hypot(10, 0.4) + Math.hypot(20, 1),
      12,
    );
    const fuel = line(cost, "fuel");
    expect(fuel.amount.likely).toBeCloseTo(fuel.quantity.value * 1000 * fuel.price.likely, 9);
  });

  it("brings the digger and takes it away once for each of its stays", () => {
    const machines = planMachines(SCHEME, DIG, MATERIALS);
    const id = `${machines.digger.id}-delivery`;
    const once = line(costOf(SCHEME, "USD", DIG, machines, MATERIALS), id);
    expect(once).toMatchObject({ per: "each", quantity: { value: 1, unit: "each" } });
    const hires = machines.job.hires.map((hire) => {
      const { likely } = hire.plans;
      const twice = { ...likely, stays: [...likely.stays, ...likely.stays], delivery: 440 };
      return hire.id === machines.digger.id
        ? { ...hire, plans: { ...hire.plans, likely: twice } }
        : hire;
    });
    const rental = { ...machines.rental, delivery: { ...machines.rental.delivery, likely: 440 } };
    const apart = { ...machines, rental, job: { ...machines.job, hires } };
    const twice = line(costOf(SCHEME, "USD", DIG, apart, MATERIALS), id);
    expect(twice.quantity.value).toBe(2);
    expect(twice.price.likely).toBe(220);
    expect(twice.amount.likely).toBe(440);
  });

  it("hires at just what the machines part says", () => {
    const machines = planMachines(SCHEME, DIG, MATERIALS);
    const hire = line(priced(SCHEME, DIG), `${machines.digger.id}-hire`);
    expect(hire.amount).toEqual(machines.rental.cost);
  });

  it("lets the scheme's own price stand, with low and high around it", () => {
    const own = { ...SCHEME, prices: [{ id: "material-pea-gravel", price: 100, high: 120 }] };
    const gravel = line(priced(own, DIG), "material-pea-gravel");
    expect(gravel.price).toEqual({ low: 100, likely: 100, high: 120 });
    expect(gravel.own).toBe(true);
    expect(gravel.source).toBe("entered for this scheme");
  });

  it("names a price that no line has", () => {
    const own = { ...SCHEME, prices: [{ id: "unobtainium", price: 1 }] };
    const codes = priced(own, DIG).findings.map((f) => f.code);
    expect(codes).toContain("cost.unknown-price");
  });

  it("never converts a demo price into another currency", () => {
    const [usd, eur] = [priced(SCHEME, DIG), priced(SCHEME, DIG, "EUR")];
    expect(eur.currency).toBe("EUR");
    expect(eur.total).toEqual(usd.total);
    for (const l of eur.lines) expect(l.source).toMatch(/made up for USD, not converted to EUR/);
  });

  it("adds pump and electrician where a pipe is under pressure", () => {
    const lift = pipeRun({ id: "main", service: "pressure", inside: 0.0525, outside: 0.0603 });
    const cost = priced(SCHEME, { ...DIG, pipes: [...DIG.pipes, lift] });
    expect(line(cost, "pump-set").quantity.value).toBe(1);
    expect(line(cost, "electrician").quantity.value).toBe(1);
    expect(line(cost, "pipe-schedule-40-2-in").quantity.value).toBeCloseTo(Math.hypot(30, 0.6), 9);
  });

  it("prices no haul where a pile takes the surplus, and says so", () => {
    const pile = {
      kind: "pile" as const,
      id: "heap",
      name: "Heap",
      at: [0, 0] as [number, number],
      material: "common-earth",
    };
    const cost = priced({ ...SCHEME, works: [...SCHEME.works, pile] }, DIG);
    expect(cost.lines.map((l) => l.id)).not.toContain("haul-away");
    expect(cost.loads.surplus.value).toBe(5);
    expect(cost.findings.map((f) => f.code)).toContain("cost.surplus-kept");
  });

  it("prices a tank beyond the list in proportion", () => {
    const big = schemeOf({ works: [tankOf("big", { liquidVolume: 15.1416 })] });
    const cost = priced(big, digOf([workOf({ id: "big" })]));
    const tank = line(cost, "tank-to-2000-gal:big");
    expect(tank.quantity.value).toBeCloseTo(2, 2);
    expect(tank.quantity.formula).toMatch(/none so large/);
  });
});

describe("truckloads", () => {
  it("are whole, by loose volume, and count the shortfall of own earth", () => {
    const short = { ...DIG, earth: { ...DIG.earth, importCompacted: 9 } };
    const loads = loadsOf(SCHEME, short, MATERIALS);
    expect(loads.surplus.value).toBe(Math.ceil(33 / 8));
    const fill = loads.imports.find((i) => i.material === "imported-fill");
    // 9 m³ in place are 10 in the bank at 0.90 and 12.5 loose at 1.25: two loads of 8.
    expect(fill?.loose).toBeCloseTo(12.5, 9);
    expect(fill?.loads.value).toBe(2);
    expect(fill?.mass.value).toBeCloseTo(18390, 6);
    const bought = line(priced(SCHEME, short), "shortfall-imported-fill");
    expect(bought.quantity.value).toBe(2);
    expect(bought.quantity.inputs.map(({ name }) => name).join()).not.toContain("left over");
    const beside = { ...short, earth: { ...short.earth, left: { topsoil: 7, native: 2 } } };
    const { quantity } = line(priced(SCHEME, beside), "shortfall-imported-fill");
    expect(quantity.value).toBe(2);
    expect(quantity.inputs.slice(-2)).toEqual([
      { name: "left over as it lay: Topsoil", value: 7, unit: "m³" },
      { name: "share of Topsoil taken as fit", value: 0, unit: "" },
    ]);
  });

  it("follow the scheme's own truck", () => {
    const small = { ...SCHEME, machines: { truckVolume: 3 } };
    expect(loadsOf(small, DIG, MATERIALS).surplus.value).toBe(11);
  });
});
