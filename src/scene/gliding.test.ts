import { describe, expect, it } from "vitest";
import { eyeOf, glideAt, shortTurn, type Pose } from "./gliding.js";

const FROM: Pose = { target: [0, 0, 0], bearing: 350, dip: 30, far: 100 };
const TO: Pose = { target: [10, 20, 4], bearing: 20, dip: 50, far: 25 };

describe("eyeOf", () => {
  it("stands on the other side from the way it looks, above by the dip", () => {
    const eye = eyeOf({ target: [5, 5, 1], bearing: 90, dip: 30, far: 10 });
    expect(eye[0]).toBeCloseTo(5 - 10 * Math.cos(Math.PI / 6), 12);
    expect(eye[1]).toBeCloseTo(5, 12);
    expect(eye[2]).toBeCloseTo(6, 12);
  });
});

describe("glideAt", () => {
  it("begins and ends at the poses themselves, and stays there beyond", () => {
    expect(glideAt(FROM, TO, 0)).toEqual(FROM);
    expect(glideAt(FROM, TO, 1)).toBe(TO);
    expect(glideAt(FROM, TO, 1.7)).toBe(TO);
    expect(glideAt(FROM, TO, -1)).toEqual(FROM);
  });

  it("turns the short way over north, and halves the distance evenly", () => {
    const half = glideAt(FROM, TO, 0.5);
    expect(half.bearing).toBeCloseTo(365, 12);
    expect(half.far).toBeCloseTo(50, 12);
    expect(half.target).toEqual([5, 10, 2]);
  });

  it("goes slowly at both ends", () => {
    const early = glideAt(FROM, TO, 0.1).target[0];
    const middle = glideAt(FROM, TO, 0.55).target[0] - glideAt(FROM, TO, 0.45).target[0];
    expect(early).toBeLessThan(middle / 3);
  });
});

describe("shortTurn", () => {
  it.each([
    [350, 20, 30],
    [20, 350, -30],
    [0, 180, 180],
    [-90, 270, 0],
    [10, 370 + 5, 5],
  ])("from %d to %d is %d", (from, to, turn) => expect(shortTurn(from, to)).toBeCloseTo(turn, 12));
});
