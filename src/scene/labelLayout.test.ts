import { describe, expect, it } from "vitest";
import { layLabels, type LabelBox } from "./labelLayout.js";

const bounds = { left: 0, top: 0, right: 800, bottom: 600 };
const box = (left: number, top: number): LabelBox => ({
  anchor: { left, top },
  width: 110,
  height: 44,
});

function overlapping(boxes: readonly LabelBox[]): number {
  const places = layLabels(boxes, bounds);
  let count = 0;
  places.forEach((a, i) => {
    places.slice(i + 1).forEach((b) => {
      const across = 110 - Math.abs(a.left - b.left);
      const down = 44 - Math.abs(a.top - b.top);
      if (across > 0.5 && down > 0.5) count += 1;
    });
  });
  return count;
}

describe("layLabels", () => {
  it("stands a lone label above its anchor", () => {
    const [place] = layLabels([box(400, 300)], bounds);
    expect(place?.left).toBe(345);
    expect((place?.top ?? 0) + 44).toBeLessThan(300);
  });

  it("keeps seven labels apart that point to nearly one place", () => {
    expect(overlapping(Array.from({ length: 7 }, (_, i) => box(400 + i * 9, 300 + i * 5)))).toBe(0);
  });

  it("keeps labels in the bounds", () => {
    const corners = [box(2, 2), box(798, 2), box(2, 598), box(798, 598)];
    for (const place of layLabels(corners, bounds)) {
      expect(place.left).toBeGreaterThanOrEqual(0);
      expect(place.top).toBeGreaterThanOrEqual(0);
      expect(place.left + 110).toBeLessThanOrEqual(800);
      expect(place.top + 44).toBeLessThanOrEqual(600);
    }
  });

  it("leaves the thing that it names in sight, large as it is", () => {
    const thing = { left: 330, top: 260, width: 160, height: 80 };
    const [place] = layLabels([{ ...box(400, 300), thing }], bounds);
    expect((place?.top ?? 0) + 44).toBeLessThanOrEqual(260);
  });

  it("goes beside its thing where another stands above it", () => {
    const above = { left: 300, top: 150, width: 200, height: 100 };
    const boxes = [
      { ...box(400, 200), thing: above },
      { ...box(400, 300), thing: { left: 370, top: 280, width: 60, height: 40 } },
    ];
    const place = layLabels(boxes, bounds)[1];
    expect(Math.max(place?.top ?? 0, 250)).toBe(place?.top);
  });

  it("gives the same picture for the same view", () => {
    const boxes = [box(300, 300), box(320, 310), box(500, 200)];
    expect(layLabels(boxes, bounds)).toEqual(layLabels(boxes, bounds));
  });
});
