// Archimedes' principle: a body weighing less than the water it displaces rises.
import { describe, expect, it } from "vitest";
import { schemeOf, tankOf } from "../dig/dig.fixture.js";
import { tanksAfloat, waterFindings } from "./floating.js";
import { wordingFor } from "./wording.js";

const tank = { ...tankOf("t", { emptyMass: 3000 }), base: 98 };
const groundAt = (): number => 100;

describe("the water that an empty tank is weighed against", () => {
  it("is not known where neither the scheme nor a probe says", () => {
    expect(tanksAfloat(schemeOf({ works: [tank] }), { groundAt })).toEqual([]);
    expect(tanksAfloat(schemeOf({ works: [tank] }), { groundAt, waterAt: null })).toEqual([]);
  });

  it("is what the probes met where the scheme says of none", () => {
    const [met] = tanksAfloat(schemeOf({ works: [tank] }), { groundAt, waterAt: () => 1 });
    expect(met?.met).toBe(true);
    // 2.6 × 1.5 × 1 m of water: 3.9 t.
    expect(met?.uplift.inputs.at(-1)?.value).toBeCloseTo(1, 12);
  });

  it("is the highest of the year where the scheme says how high that comes", () => {
    const flow = { flotation: { water: 0.5 } };
    const [set] = tanksAfloat(schemeOf({ works: [tank], flow }), { groundAt, waterAt: () => 1 });
    expect(set?.met).toBeUndefined();
    expect(set?.uplift.inputs.at(-1)?.value).toBeCloseTo(1.5, 12);
  });

  it("is what the probes met where the scheme sets it lower, and the two are told", () => {
    const flow = { flotation: { water: 1.2 } };
    const ground = { groundAt, waterAt: () => 0.8 };
    const [result] = tanksAfloat(schemeOf({ works: [tank], flow }), ground);
    expect(result?.met).toBe(true);
    expect(result?.uplift.inputs.at(-1)?.value).toBeCloseTo(1.2, 12); // 2 m down to its underside
    const [told, ...rest] = waterFindings(result ? [result] : [], wordingFor("metric"));
    expect(rest).toEqual([]);
    expect(told?.code).toBe("tank.water-set-low");
    expect(told?.text).toMatch(/set 1\.20 m below .* 0\.80 m below by what the probes met/);
    const same = tanksAfloat(schemeOf({ works: [tank], flow }), { groundAt, waterAt: () => 1.2 });
    expect(same[0]?.met).toBeUndefined();
    expect(waterFindings(same, wordingFor("metric"))).toEqual([]);
    // Where no probe's water reaches, the one that is set holds.
    const dry = tanksAfloat(schemeOf({ works: [tank], flow }), { groundAt, waterAt: () => NaN });
    expect(dry[0]?.uplift.inputs.at(-1)?.value).toBeCloseTo(0.8, 12);
  });

  it("is, on a slope, that at the uphill edge of the floor of its hole", () => {
    // Ground rises 0.1 m per m eastward; the tank points north, 1.5 m wide, dug 0.3 m wider each side.
    const slope = ([x]: readonly [number, number]): number => 100 + 0.1 * x;
    const lying = { ...tank, at: [0, 0] as [number, number], bearing: 0, overdig: 0.3 };
    const scheme = schemeOf({ works: [lying], flow: { flotation: { water: 0.5 } } });
    const [result] = tanksAfloat(scheme, { groundAt: slope });
    const uphill = lying.body.width / 2 + 0.3;
    expect(result?.uplift.inputs.at(-1)?.value).toBeCloseTo(1.5 + 0.1 * uphill, 9);
  });
});
