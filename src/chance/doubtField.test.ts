import { describe, expect, it } from "vitest";
import { DoubtField, type Seen } from "./doubtField.js";
import { randomOf } from "./random.js";

const DOUBT = { sd: 0.4, range: 20 };
const exact = (x: number, y: number): Seen => ({ x, y, atLeast: false });

function drawn(probes: readonly Seen[], places: readonly { x: number; y: number }[], runs = 4000) {
  const field = new DoubtField(DOUBT, probes, places);
  const values = Array.from({ length: runs }, (_, run) => {
    const into = new Float64Array(places.length);
    field.draw(randomOf(5, run), into);
    return into;
  });
  return { field, values };
}

describe("the doubt about a layer", () => {
  it("is nothing at a probe and grows with the distance from it", () => {
    const places = [0, 1, 3, 8, 20, 60].map((x) => ({ x, y: 0 }));
    const { field, values } = drawn([exact(0, 0)], places);
    const expected = places.map(({ x }) => 0.4 * Math.sqrt(1 - Math.exp((-6 * x) / 20)));
    const given = field.deviations();
    expected.forEach((sd, k) => {
      expect(given[k]).toBeCloseTo(sd, 3);
      const mean = values.reduce((sum, value) => sum + value[k]!, 0) / values.length;
      const spread = Math.sqrt(
        values.reduce((sum, value) => sum + (value[k]! - mean) ** 2, 0) / values.length,
      );
      // Standard error of a deviation over 4,000 draws is 1.1% of it.
      expect(Math.abs(spread - sd)).toBeLessThan(0.05 * sd + 1e-3);
      expect(Math.abs(mean)).toBeLessThan(0.02);
    });
  });

  it("goes together between places near each other", () => {
    const { values } = drawn(
      [exact(100, 100)],
      [
        { x: 0, y: 0 },
        { x: 5, y: 0 },
      ],
    );
    let [xx, yy, xy] = [0, 0, 0];
    for (const [one, other] of values as unknown as [number, number][]) {
      xx += one * one;
      yy += other * other;
      xy += one * other;
    }
    expect(xy / Math.sqrt(xx * yy)).toBeCloseTo(Math.exp(-15 / 20), 1);
  });

  it("never thins a layer where a probe stopped in it", () => {
    const stopped = { x: 0, y: 0, atLeast: true };
    const { values } = drawn(
      [stopped, exact(30, 0)],
      [
        { x: 0, y: 0 },
        { x: 2, y: 0 },
      ],
    );
    for (const value of values) expect(value[0]).toBeGreaterThan(-1e-3);
    const mean = values.reduce((sum, value) => sum + value[0]!, 0) / values.length;
    // The mean of half a normal distribution: sd √(2/π), here hardly changed by the far probe.
    expect(mean).toBeCloseTo(0.4 * Math.sqrt(2 / Math.PI), 1);
    const beside = values.reduce((sum, value) => sum + value[1]!, 0) / values.length;
    expect(beside).toBeCloseTo(mean * Math.exp(-6 / 20), 1);
  });
});
