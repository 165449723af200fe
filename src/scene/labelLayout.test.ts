import { describe, expect, it } from "vitest";
import { layLabels, stalkOf, type LabelBox } from "./labelLayout.js";

type At = LabelBox["anchor"];
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
      if (a === null || b === null) throw new Error("got a label left out, expected all");
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
      if (place === null) throw new Error("got a label left out, expected all");
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

  it("keeps clear of a handle that lies where it would stand", () => {
    const [free] = layLabels([box(400, 300)], bounds);
    if (!free) throw new Error("got a label left out, expected it");
    const handle = { left: free.left + 90, top: free.top + 30, width: 30, height: 30 };
    const [place] = layLabels([box(400, 300)], bounds, { handles: [handle] });
    if (!place) throw new Error("got a label left out, expected it");
    const across = Math.min(place.left + 110, handle.left + 30) - Math.max(place.left, handle.left);
    const down = Math.min(place.top + 44, handle.top + 30) - Math.max(place.top, handle.top);
    expect(Math.min(across, down)).toBeLessThanOrEqual(0);
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

  it("leaves a trench in sight where there is room beside it", () => {
    // It runs up the screen from the anchor, where a lone label would stand.
    const strips = Array.from({ length: 30 }, (_, i) => ({
      ...{ left: 394, top: 300 - 10 * i, width: 12, height: 12 },
    }));
    const [place] = layLabels([box(400, 300)], bounds, { strips });
    if (!place) throw new Error("got no label, expected one");
    const clear = place.left >= 406 || place.left + 110 <= 394 || place.top >= 312;
    expect(clear).toBe(true);
  });

  it("does not cross the line of a label that stands already", () => {
    // Side by side, the left anchor's label pushed to the right by what stands about it.
    const wall = { left: 150, top: 100, width: 200, height: 190 };
    const boxes = [box(380, 300), box(420, 310), box(400, 330)];
    const places = layLabels(boxes, bounds, { unnamed: [wall] });
    const stalks = places.map((place, i) => {
      if (place === null) throw new Error("got a label left out, expected all");
      return stalkOf(boxes[i]!, place);
    });
    const side = (a: At, b: At, c: At): number =>
      Math.sign((b.left - a.left) * (c.top - a.top) - (b.top - a.top) * (c.left - a.left));
    stalks.forEach(([a, b], i) => {
      for (const [c, d] of stalks.slice(i + 1)) {
        const crossing = side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
        expect(crossing).toBe(false);
      }
    });
  });

  it("keeps out from under what the page lays over the scene", () => {
    const taken = [{ left: 300, top: 150, width: 200, height: 130 }];
    const [place] = layLabels([box(400, 300)], bounds, { taken });
    const clear = place && (place.left >= 500 || place.left + 110 <= 300 || place.top >= 280);
    expect(clear).toBe(true);
  });

  it("leaves out what has no room where fewer are wanted, but never the first", () => {
    const small = { left: 0, top: 0, right: 200, bottom: 120 };
    const boxes = [box(100, 60), box(104, 62), box(98, 66)];
    const places = layLabels(boxes, small, { fewer: true });
    expect(places[0]).not.toBeNull();
    expect(places.filter((place) => place === null).length).toBeGreaterThan(0);
    expect(layLabels(boxes, small).every((place) => place !== null)).toBe(true);
  });

  it("gives the same picture for the same view", () => {
    const boxes = [box(300, 300), box(320, 310), box(500, 200)];
    expect(layLabels(boxes, bounds)).toEqual(layLabels(boxes, bounds));
  });
});
