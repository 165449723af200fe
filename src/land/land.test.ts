import { describe, expect, it } from "vitest";
import { digScheme } from "../dig/index.js";
import { baseGround } from "../ground/index.js";
import { publishedRule } from "../site/index.js";
import type { Limit, Site, Work } from "../site/index.js";
import { plainSite, plainTank } from "../site/site.fixture.js";
import { checkLand } from "./checkLand.js";

/** Ground that falls 1 in 10 to the south, and what is made of a scheme on it. */
function landOf(works: Work[], over: Partial<Site> = {}, slope = 0.1) {
  const site = { ...plainSite({ height: (_, y) => 100 + slope * y, works }), ...over };
  const scheme = site.schemes[0]!;
  const ground = baseGround(site);
  if (!ground.ok) throw new Error(ground.problem.text);
  const { result, ground: dug } = digScheme(site, scheme, ground.base);
  dug.release();
  return checkLand(site, scheme, result.works, ground.base);
}

const pad = (id: string, x: number, y: number, side: number): Work => ({
  ...{ kind: "pad", id, name: id, top: 100 + 0.1 * y, walls: { by: "run", run: 0 } },
  ...{ fillRun: 0, fill: "native" },
  outline: [
    [x, y],
    [x + side, y],
    [x + side, y + side],
    [x, y + side],
  ],
});

const creek = (y: number, kind = "watercourse"): Limit => ({
  ...{ id: "creek", kind, name: "Creek" },
  path: [
    [-30, y],
    [30, y],
  ],
});

const codes = (...given: Parameters<typeof landOf>): string[] =>
  landOf(...given).findings.map(({ code }) => code);

describe("ground laid bare", () => {
  it("counts each place once, piles and fill with the rest", () => {
    // Two squares of 4 m that share 2 × 4 m, and a hole of 2 × 3 m off by itself.
    const works = [pad("a", 5, 5, 4), pad("b", 7, 5, 4), plainTank({ at: [-5, 0] })];
    expect(landOf(works).land.disturbed.value).toBeCloseTo(6 * 4 + 6, 2);
    const pile: Work = { kind: "pile", id: "p", name: "p", at: [-5, -12], material: "native" };
    expect(landOf([...works, pile]).land.disturbed.value).toBeGreaterThan(6 * 4 + 6 + 3);
    expect(landOf([]).land.disturbed.value).toBe(0);
  });

  it("counts a drive that the job builds, once with the works on it, and none that was there", () => {
    const drive: Limit = {
      ...{ id: "d", kind: "drive", name: "Drive", width: 3, built: true },
      path: [
        [-15, -15],
        [5, -15],
      ],
    };
    const area = (limit: Partial<Limit>, works: Work[] = []): number =>
      landOf(works, { limits: [{ ...drive, ...limit }] }).land.disturbed.value;
    // 20 m by 3 m and its round ends.
    const ground = 60 + Math.PI * 1.5 ** 2;
    expect(Math.abs(area({}) - ground)).toBeLessThan(0.1);
    expect(area({ built: false })).toBe(0);
    expect(area({ kind: "easement" })).toBe(0);
    // A pad of 1 m that lies on it adds nothing.
    expect(area({}, [pad("a", -5, -15.5, 1)])).toBeCloseTo(area({}), 6);
    const ring: Limit["path"] = [
      [0, 0],
      [10, 0],
      [10, 4],
      [0, 4],
    ];
    expect(area({ path: ring, closed: true })).toBeCloseTo(40, 6);
  });

  it("says that a drive without a width is not counted", () => {
    const path: Limit["path"] = [
      [-15, -15],
      [5, -15],
    ];
    const site = (over: Partial<Limit>) => ({
      limits: [{ id: "d", kind: "drive", path, built: true, ...over }],
    });
    expect(codes([], site({}))).toEqual(["land.drive-width"]);
    expect(codes([], site({ width: 3 }))).toEqual([]);
    expect(codes([], site({ built: false }))).toEqual([]);
  });

  it("takes in the foot of a pad's fill", () => {
    // All of 1 m of fill at 2 : 1 on level ground: 4 m a side and 2 m of foot, round at the corners.
    const raised = { ...pad("a", 0, 0, 4), top: 101, fillRun: 2 } as Work;
    const { value } = landOf([raised], {}, 0).land.disturbed;
    expect(value).toBeGreaterThan(16 + 4 * 4 * 2 + Math.PI * 4 - 0.05);
    expect(value).toBeLessThan(16 + 4 * 4 * 2 + Math.PI * 4 + 0.01);
  });

  // US EPA construction general permit: from 1 acre disturbed, borrow and stockpile counted (read).
  it("asks for the permit from the acre, or from the site's own number, and not under", () => {
    const from = (value: number) => ({ rules: [{ id: "disturbed-from", value }] });
    expect(codes([plainTank()], from(6.01))).toEqual([]);
    expect(codes([plainTank()], from(5.99))).toEqual(["land.permit"]);
    expect(publishedRule("disturbed-from").value).toBeCloseTo(43_560 * 0.3048 ** 2, 9);
  });
});

describe("the erosion barrier", () => {
  it("keeps its height below the bare ground, a metre beyond it on either side", () => {
    const { land } = landOf([plainTank()]);
    expect(land.barriers).toHaveLength(1);
    const [line = []] = land.barriers;
    // The hole's south side is at y = −1.5; the line 1.524 m (5 ft) below it.
    for (const [, y, z] of line) {
      expect(y).toBeCloseTo(-1.5 - 1.524, 6);
      expect(z).toBeCloseTo(100 - 0.1 * (1.5 + 1.524), 6);
    }
    const xs = line.map(([x]) => x);
    expect(Math.min(...xs)).toBeLessThanOrEqual(-1.999);
    expect(Math.max(...xs)).toBeGreaterThanOrEqual(1.999);
    expect(land.barrier.value).toBeGreaterThan(4);
    expect(land.barrier.value).toBeLessThan(4.8);
  });

  it("is one where the water of one area comes to the next, and none on level ground", () => {
    const above = plainTank({ id: "a", name: "a", at: [0, 10] });
    expect(landOf([above, plainTank()]).land.barriers).toHaveLength(1);
    const beside = plainTank({ id: "a", name: "a", at: [10, 0] });
    expect(landOf([beside, plainTank()]).land.barriers).toHaveLength(2);
    expect(landOf([plainTank()], {}, 0).land.barrier.value).toBe(0);
  });
});

describe("water from bare ground", () => {
  it("reaches a creek below it, and not one above", () => {
    const [found] = landOf([plainTank()], { limits: [creek(-15)] }).findings;
    expect(found?.code).toBe("land.drains");
    expect(found?.text).toContain("Creek (6.0 m²)");
    expect(codes([plainTank()], { limits: [creek(15)] })).toEqual([]);
    expect(codes([plainTank()], { limits: [creek(-15, "lot-line")] })).toEqual([]);
  });

  it("counts as reaching it from 10 ft, the site's setting", () => {
    // The survey ends at y = −20, and the water leaves it there.
    const at = (beyond: number) => codes([plainTank()], { limits: [creek(-20 - beyond)] });
    expect(at(3.04)).toEqual(["land.drains"]);
    expect(at(3.06)).toEqual([]);
  });
});

describe("work where floods come (44 CFR 60.3, read)", () => {
  it("is found where the hole lies within half the path's width, and not beside it", () => {
    const path = (x: number): Limit => ({
      ...{ id: "f", kind: "flood-path", name: "Flood path", width: 2 },
      path: [
        [x, -30],
        [x, 30],
      ],
    });
    // The hole's east side is at x = 1.
    const at = (x: number) => codes([plainTank()], { limits: [path(x)] });
    expect(at(1.99)).toContain("land.flood");
    expect(at(2.01)).not.toContain("land.flood");
    const area: Limit = {
      ...path(0),
      closed: true,
      path: [
        [0.9, 0],
        [5, 0],
        [5, 5],
      ],
    };
    expect(codes([plainTank()], { limits: [area] })).toContain("land.flood");
  });
});
