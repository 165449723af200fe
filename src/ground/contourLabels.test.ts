import { describe, expect, it } from "vitest";
import { placeLabels } from "./contourLabels.js";
import type { Contour } from "./contours.js";

function contour(line: [number, number][], closed = false): Contour {
  return { elevation: 100, closed, line };
}

const room = { length: 4, spacing: 20, apart: 8 };

describe("placeLabels", () => {
  it("spaces figures evenly on a straight line, and never writes them upside down", () => {
    const labels = placeLabels(
      [
        contour([
          [60, 0],
          [0, 0],
        ]),
      ],
      room,
    );
    expect(labels.map(({ at }) => at[0])).toEqual([50, 30, 10]);
    expect(labels.every(({ angle }) => angle === 0)).toBe(true);
  });

  it.each([0, 30, 89, 90, 91, 150, 180, 200, 269, 270, 271, 359])(
    "reads from the left or the bottom on a line that runs at %d°",
    (degrees) => {
      const [u, v] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
      const [label] = placeLabels(
        [
          contour([
            [0, 0],
            [10 * u, 10 * v],
          ]),
        ],
        room,
      );
      const angle = label?.angle ?? NaN;
      expect(angle).toBeGreaterThan(-90);
      expect(angle).toBeLessThanOrEqual(90);
      const off = (((angle - degrees) % 180) + 180) % 180;
      expect(Math.min(off, 180 - off)).toBeLessThan(1e-9);
    },
  );

  it("looks for a straight part, and leaves a line that has none alone", () => {
    // A saw of 1 m teeth with one straight stretch from 12 to 18.
    const saw: [number, number][] = Array.from({ length: 13 }, (_, i) => [i, i % 2]);
    const labels = placeLabels([contour([...saw, [18, 0]])], room);
    expect(labels).toHaveLength(1);
    expect(labels[0]!.at[0]).toBeGreaterThan(13.9);
    expect(placeLabels([contour(saw)], room)).toEqual([]);
  });

  it("keeps figures of neighbouring lines from one another", () => {
    const lines = Array.from({ length: 12 }, (_, i) =>
      contour([
        [0, i],
        [40, i],
      ]),
    );
    const labels = placeLabels(lines, room);
    expect(labels.length).toBeGreaterThan(4);
    labels.forEach(({ at: [x, y] }, i) => {
      for (const { at } of labels.slice(i + 1)) {
        expect(Math.hypot(at[0] - x, at[1] - y)).toBeGreaterThanOrEqual(room.apart);
      }
    });
  });

  it("goes round a closed line, over its start", () => {
    const square = contour(
      [
        [5, 0],
        [10, 0],
        [10, 10],
        [0, 10],
        [0, 0],
        [5, 0],
      ],
      true,
    );
    const labels = placeLabels([square], { ...room, spacing: 10 });
    expect(labels.length).toBeGreaterThanOrEqual(3);
  });

  it("gives a line shorter than its figure none", () => {
    expect(
      placeLabels(
        [
          contour([
            [0, 0],
            [5, 0],
          ]),
        ],
        room,
      ),
    ).toEqual([]);
  });
});
