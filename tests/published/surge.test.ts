/**
 * Surge, power and energy. Sources: Joukowsky (1898), rise of head a v / g; in US units the
 * handbooks' rule that stopping 1 ft/s in a pipe with a wave of 4,660 ft/s adds about 145 ft, or
 * 63 psi (recalled); 3,960 gpm·ft to the horsepower (recalled, every pump handbook).
 */
import { describe, expect, it } from "vitest";
import {
  PVC_STIFFNESS,
  surgeHead,
  waterPower,
  waveSpeed,
  yearlyEnergy,
} from "../../src/hydraulics/index.js";

const FOOT = 0.3048;
const GPM = 3.785411784e-3 / 60;

it("1 ft/s stopped at 4,660 ft/s adds about 145 ft", () => {
  expect(surgeHead(4660 * FOOT, FOOT) / FOOT).toBeCloseTo(144.8, 0);
});

describe("a pressure wave", () => {
  it("runs at the speed of sound in water, 1,439 m/s, in a pipe that does not give", () => {
    expect(waveSpeed(0.05, 0.004, 1e20)).toBeCloseTo(Math.sqrt(2.07e9 / 1000), 3);
  });
  it("is slower in plastic, and slower still in a thinner wall", () => {
    const thick = waveSpeed(0.0525, 0.0039, PVC_STIFFNESS);
    expect(thick).toBeGreaterThan(300);
    expect(thick).toBeLessThan(500);
    expect(waveSpeed(0.0525, 0.002, PVC_STIFFNESS)).toBeLessThan(thick);
  });
});

it("lifts 3,960 gallons a minute by a foot for each horsepower", () => {
  expect(waterPower(3960 * GPM, FOOT)).toBeCloseTo(745.7, -1);
});

it("a pump of 500 W that runs an hour a day takes 183 kWh a year", () => {
  // 1 h in 24: the day's mean flow is a 24th of the pump's.
  expect(yearlyEnergy(500, 1e-3 / 24, 1e-3)).toBeCloseTo((0.5 * 8766) / 24, 9);
});
