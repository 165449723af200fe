import { describe, expect, it } from "vitest";
import { signedArea, type Place } from "./outline.js";
import { joinRings } from "./rings.js";
import { Segments } from "./segments.js";
import { addUnshared } from "./unshared.js";

const NEAR = 1e-6;

function edgesOf(...rings: (readonly Place[])[]): Segments {
  const edges = new Segments();
  for (const ring of rings) {
    ring.forEach(([x, y], i) => {
      const [nextX, nextY] = ring[(i + 1) % ring.length]!;
      edges.add(x, y, nextX, nextY);
    });
  }
  return edges;
}

/** A square of 1 m, counter-clockwise from its south-west corner. */
function square(x: number, y: number): Place[] {
  return [
    [x, y],
    [x + 1, y],
    [x + 1, y + 1],
    [x, y + 1],
  ];
}

describe("joining segments into rings", () => {
  it("closes ends that are nearer than asked, on either side of a grid square's edge", () => {
    const ring = square(0, 0);
    const edges = new Segments();
    ring.forEach(([x, y], i) => {
      const [nextX, nextY] = ring[(i + 1) % 4]!;
      edges.add(x + 4e-7, y - 4e-7, nextX - 4e-7, nextY + 4e-7);
    });
    const rings = joinRings(edges, NEAR);
    expect(rings.length).toBe(1);
    expect(signedArea(rings[0]!)).toBeCloseTo(1, 5);
  });

  it("leaves ends that are farther apart open", () => {
    const edges = new Segments();
    edges.add(0, 0, 1, 0);
    edges.add(1, 3e-4, 0, 1);
    edges.add(0, 1, 0, 0);
    expect(joinRings(edges, NEAR)).toEqual([]);
  });

  it("parts rings that touch at a corner", () => {
    const rings = joinRings(edgesOf(square(0, 0), square(1, 1)), NEAR);
    expect(rings.map(signedArea)).toEqual([1, 1]);
  });

  it("closes a gap that rounding has left where a side is missing, and no other", () => {
    const edges = edgesOf(square(3, 0));
    edges.add(0, 0, 1, 0);
    edges.add(1, 2e-5, 1, 1);
    edges.add(1, 1, 1e-5, 1);
    edges.add(0, 1, 0, 0);
    edges.add(8, 0, 9, 0);
    edges.add(9, 0.01, 8, 1);
    edges.add(8, 1, 8, 0);
    const areas = joinRings(edges, NEAR).map(signedArea);
    expect(areas.length).toBe(2);
    for (const area of areas) expect(area).toBeCloseTo(1, 4);
  });

  it.each([
    ["out of a corner to nowhere", [[1, 0, 1.01, -0.004]]],
    [
      "out of a corner, inward, in two pieces",
      [
        [1, 1, 0.98, 0.97],
        [0.98, 0.97, 0.97, 0.97],
      ],
    ],
    ["from nowhere into a corner", [[1.01, -0.004, 1, 0]]],
    [
      "from one corner across to another",
      [
        [1, 0, 0.5, 0.5],
        [0.5, 0.5, 0, 1],
        [0.5, 0.5, 1, 0],
      ],
    ],
    ["the same side twice", [[1, 0, 1, 1]]],
    ["back along a side", [[1, 1, 1, 0]]],
    ["between two nowheres", [[5, 5, 5.01, 5]]],
  ] as const)("loses only a stray side: %s", (_, strays) => {
    // First or last, with the ring begun at any corner: the order must not matter.
    for (let turned = 0; turned < 4; turned++) {
      const ring = [...square(0, 0).slice(turned), ...square(0, 0).slice(0, turned)];
      for (const first of [true, false]) {
        const edges = new Segments();
        const addStrays = (): void =>
          strays.forEach(([ax, ay, bx, by]) => edges.add(ax, ay, bx, by));
        if (first) addStrays();
        ring.forEach(([x, y], i) => edges.add(x, y, ring[(i + 1) % 4]![0], ring[(i + 1) % 4]![1]));
        if (!first) addStrays();
        expect(joinRings(edges, NEAR).map(signedArea)).toEqual([1]);
      }
    }
  });

  it("loses only strays at every corner of squares that touch, whichever way they point", () => {
    const squares = [square(0, 0), square(1, 1), square(2, 0), square(4, 0)];
    for (let angle = 0.1; angle < 6.3; angle += 0.1) {
      for (const length of [1e-5, 0.01, 0.4]) {
        const edges = edgesOf(...squares);
        squares.flat().forEach(([x, y], i) => {
          const turned = angle + i;
          const [awayX, awayY] = [x + length * Math.cos(turned), y + length * Math.sin(turned)];
          if (i % 2 === 0) edges.add(x, y, awayX, awayY);
          else edges.add(awayX, awayY, x, y);
        });
        const areas = joinRings(edges, NEAR).map(signedArea);
        expect(areas.length).toBe(4);
        // A stray shorter than a gap that is closed may move its corner by its length.
        for (const area of areas) expect(area).toBeCloseTo(1, length < 1e-4 ? 4 : 12);
      }
    }
  });

  it("leaves out corners that lie straight between others", () => {
    const ring = square(0, 0);
    ring.splice(1, 0, [0.5, 0]);
    const rings = joinRings(edgesOf(ring), NEAR);
    expect(rings.map((ring) => ring.length)).toEqual([4]);
  });
});

describe("edges that no other runs back along", () => {
  it("are the outline of a field of squares, few or many", () => {
    for (const side of [2, 9]) {
      const squares = Array.from({ length: side * side }, (_, i) =>
        square(i % side, Math.floor(i / side)),
      );
      const outer = new Segments();
      addUnshared(edgesOf(...squares), 1e-9, outer);
      expect(outer.count).toBe(4 * side);
      expect(joinRings(outer, NEAR).map(signedArea)).toEqual([side * side]);
    }
  });

  it("keep what a shorter edge beyond leaves uncovered", () => {
    const outer = new Segments();
    const wide: Place[] = [
      [0, 1],
      [2, 1],
      [2, 2],
      [0, 2],
    ];
    addUnshared(edgesOf(square(0, 0), wide), 1e-9, outer);
    expect(joinRings(outer, NEAR).map(signedArea)).toEqual([3]);
  });
});
