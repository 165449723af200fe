/**
 * Bank, loose and compacted volume, and truckloads, against published values.
 * Marks: read = seen in a copy of the source; second = seen quoted; recalled = from memory.
 */
import { describe, expect, it } from "vitest";
import { digScheme } from "../../src/dig/index.js";
import { baseGround } from "../../src/ground/index.js";
import {
  bankForCompacted,
  compactedByFhwaShrink,
  compactedByNunnallyShrink,
  looseFromBank,
  truckLoads,
} from "../../src/machines/index.js";
import { catalogueMaterials } from "../../src/site/index.js";
import type { Site, Tank } from "../../src/site/index.js";

function material(id: string) {
  const found = catalogueMaterials().get(id);
  if (!found) throw new Error(`got no material "${id}", expected it in the catalogue`);
  return found;
}

describe("Dagostino & Peterson, Estimating in Building Construction, ch. 9 (read)", () => {
  it("Ex 9-2: 1,000 bank yd³ of dense clay, 30% swell, is 1,300 loose: 186 loads of 7", () => {
    // The catalogue's clay swells by the same 30%. Ratios are the same in yd³ and m³.
    const loose = looseFromBank(1000, material("clay").loose);
    expect(loose).toBeCloseTo(1300, 9);
    expect(truckLoads(loose, 7)).toBe(186);
  });

  it("Ex 9-3: 500 compacted yd³ at factor 0.95 need 526 bank", () => {
    expect(Math.round(bankForCompacted(500, 0.95))).toBe(526);
    // The catalogue's sand (US Army FM 5-434, Table 1-1, second) has that factor.
    expect(Math.round(bankForCompacted(500, material("sand").compacted))).toBe(526);
  });

  it("Ex 9-14: 407 bank yd³ at 30% swell is 529 loose: 76 loads of 7", () => {
    const loose = looseFromBank(407, material("clay").loose);
    expect(Math.round(loose)).toBe(529);
    expect(truckLoads(loose, 7)).toBe(76);
  });

  it("p. 87: 100 bank at 15% swell is 115 loose", () => {
    expect(looseFromBank(100, 1.15)).toBeCloseTo(115, 9);
  });
});

describe("Nunnally, Construction Methods and Management, Table 2-5", () => {
  // lb per bank, loose and compacted yd³ (second); the shrink behind the last column is recalled.
  const rows = [
    { id: "clay", bank: 3000, loose: 2310, compacted: 3750 },
    { id: "common-earth", bank: 3100, loose: 2480, compacted: 3450 },
    { id: "shelf-rock", bank: 4600, loose: 3060, compacted: 3550 },
    { id: "sand-and-gravel", bank: 3200, loose: 2860, compacted: 3650 },
  ];
  it.each(rows)("$id: the catalogue's ratios are those of the published weights", (row) => {
    // The table's own rounding of weights to 10 lb is within 0.5% of the ratio.
    const { loose, compacted, density } = material(row.id);
    expect(Math.abs(loose / (row.bank / row.loose) - 1)).toBeLessThan(0.005);
    expect(Math.abs(compacted / (row.bank / row.compacted) - 1)).toBeLessThan(0.005);
    expect(Math.abs(density / ((row.bank * 0.45359237) / 0.9144 ** 3) - 1)).toBeLessThan(0.001);
  });
});

describe("Peurifoy, Construction Planning, Equipment and Methods, Table 4-1 (second)", () => {
  // Swell %, low to high.
  const rows = [
    { id: "sand", low: 5, high: 15 },
    { id: "sand-and-gravel", low: 5, high: 15 },
    { id: "topsoil", low: 10, high: 25 },
    { id: "sandy-loam", low: 10, high: 35 },
    { id: "common-earth", low: 20, high: 45 },
    { id: "clay", low: 30, high: 60 },
    { id: "shelf-rock", low: 50, high: 80 },
    { id: "limestone", low: 50, high: 80 },
    { id: "granite", low: 50, high: 80 },
  ];
  it.each(rows)("$id swells by $low to $high %", ({ id, low, high }) => {
    const swell = (material(id).loose - 1) * 100;
    expect(swell).toBeGreaterThanOrEqual(low - 1e-9);
    expect(swell).toBeLessThanOrEqual(high + 1e-9);
  });
});

describe("two definitions of shrink, never to be mixed", () => {
  it("FHWA Federal Lands Highway, Project Development and Design Manual, §9.4.C (read)", () => {
    expect(compactedByFhwaShrink(25)).toBeCloseTo(0.8, 12);
    // Swell: 1 + percent ÷ 100, 25% is 1.25, as the catalogue's common earth.
    expect(looseFromBank(1, material("common-earth").loose)).toBeCloseTo(1 + 25 / 100, 12);
  });

  it("the same clay is 20% by Nunnally (recalled) and 25% by FHWA", () => {
    const { compacted } = material("clay");
    expect(compactedByNunnallyShrink(20)).toBeCloseTo(compacted, 12);
    expect(compactedByFhwaShrink(25)).toBeCloseTo(compacted, 12);
    expect(compactedByFhwaShrink(20)).not.toBeCloseTo(compacted, 2);
  });
});

describe("Dagostino & Peterson, p. 86 (read): backfill is hole less building less footing", () => {
  // The book's solids as boxes of the same volumes, by its average dimensions: the hole 34′1″ ×
  // 40′4″ × 8′ is 10,997 ft³, the building in it 6,746 and the footing below it 117.
  const FT = 0.3048;
  const [long, wide, deep] = [(40 + 4 / 12) * FT, (34 + 1 / 12) * FT, 8 * FT];
  const footing = (117 * FT ** 3) / (long * wide);
  const height = deep - footing;
  // Overdig o on all sides with (long − 2o)(wide − 2o) × height = 6,746 ft³.
  const area = (6746 * FT ** 3) / height;
  const overdig = (long + wide - Math.sqrt((long - wide) ** 2 + 4 * area)) / 4;
  const house: Tank = {
    kind: "tank",
    id: "house",
    name: "House",
    at: [0, 0],
    bearing: 90,
    body: { length: long - 2 * overdig, width: wide - 2 * overdig, height },
    base: 100 - height,
    overdig,
    bedding: { depth: footing, material: "crushed-gravel" },
    walls: { by: "run", run: 0 },
    backfill: "native",
  };
  const corners = [
    [-20, -20],
    [20, -20],
    [20, 20],
    [-20, 20],
  ] as const;
  const site: Site = {
    format: "bankyard-site",
    version: 1,
    name: "Level ground",
    units: "us",
    currency: "USD",
    survey: { points: corners.map(([x, y], i) => ({ id: `p${i}`, x, y, z: 100 })) },
    ground: { layers: [{ id: "earth", name: "Earth", material: "clay" }], probes: [] },
    schemes: [{ id: "a", name: "A", works: [house] }],
  };

  it("4,134 ft³, 153 yd³, by the engine's own layers", () => {
    const base = baseGround(site);
    if (!base.ok) throw new Error(`got ${base.problem.text}, expected level ground`);
    const { result } = digScheme(site, site.schemes[0]!, base.base);
    const work = result.works[0]!;
    const cubicFeet = (volume: number | undefined) => (volume ?? NaN) / FT ** 3;
    expect(Math.abs(cubicFeet(work.cut.clay) - 10997)).toBeLessThan(1);
    const backfill = cubicFeet(work.fill.native);
    expect(Math.abs(backfill - 4134)).toBeLessThan(1);
    expect(Math.round(backfill / 27)).toBe(153);
  });
});
