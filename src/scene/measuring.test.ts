import { describe, expect, it } from "vitest";
import type { PlanPoint } from "../site/index.js";
import {
  copyText,
  legTexts,
  measure,
  NOTHING_MEASURED,
  stepMeasuring,
  wholeTexts,
  type MeasureEvent,
} from "./measuring.js";

const after = (...events: MeasureEvent[]) => events.reduce(stepMeasuring, NOTHING_MEASURED);
const set = (x: number, y: number): MeasureEvent => ({ type: "set", at: [x, y] });

describe("stepMeasuring", () => {
  it("gathers places, once each where a click is double", () => {
    const state = after(set(0, 0), set(3, 4), set(3, 4.01), set(9, 4));
    expect(state.points).toEqual([
      [0, 0],
      [3, 4],
      [9, 4],
    ]);
  });

  it("takes the last one back, down to none", () => {
    expect(after(set(0, 0), set(3, 4), { type: "back" }).points).toEqual([[0, 0]]);
    expect(after({ type: "back" }, { type: "back" }).points).toEqual([]);
  });

  it("sets no more when done, and is not done with one place", () => {
    const done = after(set(0, 0), set(3, 4), { type: "done" }, set(9, 9));
    expect(done).toEqual({
      points: [
        [0, 0],
        [3, 4],
      ],
      isSetting: false,
    });
    expect(after(set(0, 0), { type: "done" }).isSetting).toBe(true);
  });

  it("goes on when a place is taken back after it was done, and begins again", () => {
    const done = after(set(0, 0), set(3, 4), { type: "done" });
    expect(stepMeasuring(done, { type: "back" })).toEqual({ points: [[0, 0]], isSetting: true });
    expect(stepMeasuring(done, { type: "again" })).toEqual(NOTHING_MEASURED);
  });
});

/** Ground that rises 1 in 4 to the east. */
const heightAt = ([x]: PlanPoint): number | null => (x > 100 ? null : 10 + x / 4);

describe("measure", () => {
  it("gives plan and slope distance, rise and bearing of each leg", () => {
    const { legs, length } = measure(
      [
        [0, 0],
        [4, 0],
        [4, -3],
        [0, 0],
      ],
      heightAt,
    );
    expect(legs[0]).toEqual({ plan: 4, rise: 1, slope: Math.sqrt(17), bearing: 90 });
    expect(legs[1]).toEqual({ plan: 3, rise: 0, slope: 3, bearing: 180 });
    expect(legs[2]?.rise).toBe(-1);
    expect(legs[2]?.bearing).toBeCloseTo(306.8699, 4);
    expect(length).toBe(12);
  });

  it("gives the area inside, whichever way round, from three places on", () => {
    const places: PlanPoint[] = [
      [0, 0],
      [6, 0],
      [6, 4],
    ];
    expect(measure(places, heightAt).area).toBe(12);
    expect(measure([...places].reverse(), heightAt).area).toBe(12);
    expect(measure(places.slice(0, 2), heightAt).area).toBeNull();
  });

  it("gives no rise where the ground is not known", () => {
    const [leg] = measure(
      [
        [98, 0],
        [102, 0],
      ],
      heightAt,
    ).legs;
    expect(leg).toEqual({ plan: 4, rise: null, slope: null, bearing: 90 });
  });
});

describe("the figures in words", () => {
  const three = measure(
    [
      [0, 0],
      [4, 0],
      [4, -3],
    ],
    heightAt,
  );

  it("writes the fall in percent and as run for a rise of one", () => {
    const [first, second] = legTexts(three, "metric");
    expect(first).toMatchObject({ name: "1–2", percent: "+25.0%", ratio: "4.00 : 1" });
    expect(first?.rise.startsWith("+1")).toBe(true);
    expect(second).toMatchObject({ ratio: "–", bearing: "180.0°" });
  });

  it("has no grade where the mark lies on the place before it", () => {
    const [leg] = legTexts(
      measure(
        [
          [3, 3],
          [3, 3],
        ],
        heightAt,
      ),
      "us",
    );
    expect(leg).toMatchObject({ percent: "–", ratio: "–" });
  });

  it("copies a row for each leg, and the whole", () => {
    const lines = copyText(three, "metric").split("\n");
    expect(lines).toHaveLength(5);
    expect(lines[1]?.split("\t")).toHaveLength(7);
    expect(lines.slice(3)).toEqual(wholeTexts(three, "metric"));
    expect(wholeTexts(three, "metric").join()).toMatch(/7.00 m.*6/);
  });
});
