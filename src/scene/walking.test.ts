import { describe, expect, it } from "vitest";
import {
  atLowEdge,
  besideThing,
  EYE_HEIGHT,
  eyeHeight,
  isSettling,
  lookAt,
  lookRound,
  standingAt,
  stepWalker,
  type Going,
  type Terrain,
  type Walker,
} from "./walking.js";

const STILL: Going = { ahead: 0, aside: 0, turn: 0, tilt: 0, runs: false };
/** A slope of 1 in 10 rising to the north on a square of 40 m, with a hole 3 m deep in it. */
const inHole = (x: number, y: number): boolean => Math.abs(x) < 2 && Math.abs(y) < 2;
const SLOPE: Terrain = {
  heightAt: (x, y) =>
    Math.abs(x) > 20 || Math.abs(y) > 20 ? null : 0.1 * y - (inHole(x, y) ? 3 : 0),
  isBlocked: (x, y) => x > 10 && x < 14 && y > 10 && y < 14,
};
const at = (x: number, y: number, heading = 0): Walker => {
  const walker = standingAt([x, y], [x, y + 1, 0], SLOPE);
  if (walker === null) throw new Error(`nobody can stand at ${x}, ${y}`);
  return { ...walker, heading, pitch: 0 };
};

describe("stepWalker", () => {
  it("goes ahead the way that it looks, and aside to the right of that", () => {
    const ahead = stepWalker(at(0, 5, 90), { ...STILL, ahead: 1 }, 1, SLOPE);
    expect(ahead.eye[0]).toBeCloseTo(2.2, 9);
    expect(ahead.eye[1]).toBeCloseTo(5, 9);
    const aside = stepWalker(at(0, 5, 90), { ...STILL, aside: 1 }, 1, SLOPE);
    expect(aside.eye[0]).toBeCloseTo(0, 9);
    expect(aside.eye[1]).toBeCloseTo(2.8, 9);
  });

  it("goes no faster when two ways are held at once", () => {
    const { eye } = stepWalker(at(5, 5), { ...STILL, ahead: 1, aside: 1 }, 1, SLOPE);
    expect(Math.hypot(eye[0] - 5, eye[1] - 5)).toBeCloseTo(2.2, 9);
  });

  it("is the same however the time is cut up, on even ground", () => {
    const whole = stepWalker(at(-8, -10), { ...STILL, ahead: 1 }, 1, SLOPE);
    let parts = at(-8, -10);
    for (let i = 0; i < 20; i++) parts = stepWalker(parts, { ...STILL, ahead: 1 }, 0.05, SLOPE);
    expect(parts.eye[1]).toBeCloseTo(whole.eye[1], 9);
  });

  it("never leaves the survey, and goes along its edge instead", () => {
    let walker = at(0, 15, 20);
    for (let i = 0; i < 200; i++) walker = stepWalker(walker, { ...STILL, ahead: 1 }, 0.05, SLOPE);
    expect(SLOPE.heightAt(walker.eye[0], walker.eye[1])).not.toBeNull();
    expect(walker.eye[1]).toBeGreaterThan(19);
    expect(walker.eye[0]).toBeGreaterThan(4);
  });

  it("does not go through what stands in the way", () => {
    let walker = at(12, 5);
    for (let i = 0; i < 100; i++) {
      walker = stepWalker(walker, { ...STILL, ahead: 1 }, 0.05, SLOPE);
      expect(SLOPE.isBlocked(walker.eye[0], walker.eye[1], 0)).toBe(false);
    }
  });

  it("falls into a hole by and by, comes to rest 1.65 m over its floor, never below any ground", () => {
    let walker = at(0, -6);
    const drops: number[] = [];
    for (let i = 0; i < 240; i++) {
      const going = walker.eye[1] < -0.5 ? { ...STILL, ahead: 1 } : STILL;
      const next = stepWalker(walker, going, 1 / 60, SLOPE);
      drops.push(walker.eye[2] - next.eye[2]);
      walker = next;
      const ground = SLOPE.heightAt(walker.eye[0], walker.eye[1]) ?? NaN;
      expect(walker.eye[2]).toBeGreaterThanOrEqual(ground + 0.5);
    }
    expect(Math.max(...drops)).toBeLessThan(0.5);
    expect(isSettling(walker, SLOPE)).toBe(false);
    expect(walker.eye[2]).toBeCloseTo(0.1 * walker.eye[1] - 3 + EYE_HEIGHT, 9);
  });

  it("comes out of the hole with the eye above the bank at once", () => {
    let walker = at(0, 1.9);
    for (let i = 0; i < 10; i++) {
      walker = stepWalker(walker, { ...STILL, ahead: 1 }, 1 / 60, SLOPE);
      const ground = SLOPE.heightAt(walker.eye[0], walker.eye[1]) ?? NaN;
      expect(walker.eye[2]).toBeGreaterThanOrEqual(ground + 0.5 - 1e-9);
    }
    expect(walker.eye[1]).toBeGreaterThan(2);
  });

  it("is at its height at once without smoothing", () => {
    const { eye } = stepWalker(at(0, -2.05), { ...STILL, ahead: 1 }, 0.1, SLOPE, false);
    expect(eye[2]).toBeCloseTo(0.1 * eye[1] - 3 + EYE_HEIGHT, 9);
  });
});

describe("looking", () => {
  it("turns round north and stops short of straight up and down", () => {
    const walker = lookRound(at(5, 5, 350), 20, 200);
    expect(walker.heading).toBeCloseTo(10, 9);
    expect(walker.pitch).toBe(80);
    expect(lookRound(walker, -20, -400)).toMatchObject({ heading: 350, pitch: -80 });
  });

  it("looks at a place", () => {
    const walker = lookAt({ eye: [0, 0, 1], heading: 200, pitch: 9 }, [3, -3, 1 + Math.sqrt(18)]);
    expect(walker.heading).toBeCloseTo(135, 9);
    expect(walker.pitch).toBeCloseTo(45, 9);
  });
});

describe("eyeHeight", () => {
  it("eases to rest and then stays exactly there", () => {
    expect(eyeHeight(5, 0, 0)).toBe(5);
    expect(eyeHeight(5, 0, 0.13)).toBeCloseTo(EYE_HEIGHT + (5 - EYE_HEIGHT) / Math.E, 9);
    expect(eyeHeight(5, 0, 10)).toBe(EYE_HEIGHT);
  });
});

describe("where a walk begins", () => {
  it("is below the thing, looking at it", () => {
    const walker = besideThing({ at: [0, 0, -2], off: 6 }, 0, SLOPE, inHole);
    expect(walker?.eye[0]).toBeCloseTo(0, 9);
    expect(walker?.eye[1]).toBeCloseTo(-6, 9);
    expect(walker?.heading).toBeCloseTo(0, 9);
    expect(walker?.pitch).toBeLessThan(0);
  });

  it("is at another side where the low one is off the survey", () => {
    const walker = besideThing({ at: [0, -18, -2], off: 6 }, 0, SLOPE, inHole);
    expect(walker?.eye[1]).toBeGreaterThan(-20);
    expect(Math.hypot(walker?.eye[0] ?? 0, (walker?.eye[1] ?? 0) + 18)).toBeCloseTo(6, 9);
  });

  it("is at the low edge with nothing picked, looking up the hill", () => {
    const walker = atLowEdge([5, 0, 0], 28, 0, SLOPE);
    expect(walker?.eye[1]).toBeCloseTo(-18.5, 0);
    expect(walker?.heading).toBeCloseTo(0, 6);
    expect(walker?.pitch).toBeCloseTo((Math.atan(0.1) * 180) / Math.PI, 3);
  });

  it("is nowhere on a survey that has no ground", () => {
    expect(atLowEdge([0, 0, 0], 28, 0, { ...SLOPE, heightAt: () => null })).toBeNull();
  });
});
