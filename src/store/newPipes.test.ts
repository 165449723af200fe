import { describe, expect, it } from "vitest";
import { addWork } from "../site/index.js";
import type { PlanPoint, Site, Trench, Work } from "../site/index.js";
import { plainSite, plainTank, plainTrench } from "../site/site.fixture.js";
import { placedWork, withPlaced } from "./placed.js";

// The tank's long side lies north: its ends are at (0, ±1.5). Inlet 99.2, outlet 99.15.
const tank = plainTank({
  body: { length: 3, width: 2, height: 1.5, inlet: 1.2, outlet: 1.15 },
  base: 98,
});
const house: Work = {
  kind: "building",
  id: "house",
  name: "House",
  outline: [
    [-4, 11],
    [4, 11],
    [4, 16],
    [-4, 16],
  ],
  base: 100.2,
  height: 3,
  outlets: [{ id: "o", name: "Drain outlet", at: [0, 11], invert: 99.413 }],
};
const site = plainSite({ works: [tank, house] });

function drawn(on: Site, path: PlanPoint[], kind: "trench" | "field" = "trench"): Trench {
  const work = placedWork(on, "plan", kind, path);
  if (work?.kind !== "trench") throw new Error("expected a trench");
  return work;
}
const gradeOf = (trench: Trench) => trench.pipes[0]?.grade;
const inverts = (start: number, end: number) => ({ by: "inverts", start, end });

describe("the levels of a drawn trench's pipe", () => {
  it("run from the building's outlet to the tank's inlet", () => {
    const path: PlanPoint[] = [
      [0, 11],
      [0, 1.5],
    ];
    expect(gradeOf(drawn(site, path))).toEqual(inverts(99.413, 98 + 1.2));
  });

  it("fall 2% from the one that is known, or to it", () => {
    const from: PlanPoint[] = [
      [0, 11],
      [10, 11],
    ];
    expect(gradeOf(drawn(site, from))).toEqual(inverts(99.413, 99.21));
    const to: PlanPoint[] = [
      [0, -11.5],
      [0, -1.5],
    ];
    expect(gradeOf(drawn(site, to))).toEqual(inverts(99.4, 99.2));
  });

  it("start at the tank's outlet, and go on from another trench's end", () => {
    const path: PlanPoint[] = [
      [0, -1.5],
      [0, -11.5],
    ];
    const grade = gradeOf(drawn(site, path));
    expect(grade).toEqual(inverts(98 + 1.15, 98.95));
    const first = plainTrench({
      id: "first",
      path,
      pipes: [{ ...plainPipe(), grade: { by: "fall", start: 99.15, fall: 0.03 } }],
    });
    const on = drawn(addWork(site, "plan", first), [
      [0.5, -11.5],
      [10.5, -11.5],
    ]);
    expect(gradeOf(on)).toMatchObject({ by: "inverts", end: 98.65 });
    expect((gradeOf(on) as { start: number }).start).toBeCloseTo(98.85, 9);
  });

  it("lie as they did where neither end meets anything", () => {
    const path: PlanPoint[] = [
      [10, -5],
      [10, -15],
    ];
    expect(gradeOf(drawn(site, path))).toEqual(inverts(99.4, 99.2));
  });
});

describe("a field trench", () => {
  const path: PlanPoint[] = [
    [-5, -8],
    [5, -8],
  ];
  // The ground dips to 99 at x = 0.
  const dip = plainSite({ height: (x) => 99 + Math.abs(x) / 10 });

  it("has a level pipe under 0.3 m of the lowest ground on its way", () => {
    const trench = drawn(dip, path, "field");
    expect(trench).toMatchObject({ name: "Field trench 1", width: 0.9, bedding: { depth: 0.15 } });
    const [pipe] = trench.pipes;
    if (pipe?.grade.by !== "inverts") throw new Error("expected inverts");
    expect(pipe.name).toBe("Field pipe");
    expect(pipe.grade.end).toBe(pipe.grade.start);
    const cover = 99 - pipe.grade.start - (pipe.outside + pipe.inside) / 2;
    expect(cover).toBeGreaterThanOrEqual(0.3 - 1e-9);
    expect(cover).toBeLessThan(0.31);
  });

  it("takes the water at once, and the next one has the next name", () => {
    const once = withPlaced(dip, "plan", "field", drawn(dip, path, "field"));
    const second = drawn(once, path, "field");
    const twice = withPlaced(once, "plan", "field", second);
    expect(second.name).toBe("Field trench 2");
    const ids = twice.schemes[0]?.works.map(({ id }) => id);
    expect(twice.schemes[0]?.flow?.field).toEqual(ids);
    expect(withPlaced(dip, "plan", "trench", drawn(dip, path)).schemes[0]?.flow).toBeUndefined();
  });
});

function plainPipe(): Trench["pipes"][number] {
  const work = plainTrench();
  const pipe = work.kind === "trench" ? work.pipes[0] : undefined;
  if (pipe === undefined) throw new Error("expected a pipe");
  return pipe;
}
