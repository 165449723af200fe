import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import { columnAt } from "../../estimate/index.js";
import { limitCorners, lotLinesOf, without } from "../../site/index.js";
import type { Site, Trench } from "../../site/index.js";
import { toPlane } from "../../survey/index.js";
import { FOOT } from "../../units/index.js";
import { exampleJob, withScheme } from "../job.fixture.js";
import { makeStakes, stakeOut } from "./makeStakes.js";
import { crossing, FLATTEST, markPair } from "./marks.js";
import { stakedCorners } from "./outline.js";
import { stakeRows } from "./stakeTable.js";
import { alongPath, stationNear, stationsOf } from "./path.js";
import type { Stake } from "./stake.js";

const place = { longitude: -121.5, latitude: 44.25 };
const onEarth = (site: Site): Site => ({ ...site, place });
const alder = exampleJob("alder-flat", onEarth);
const out = stakeOut(alder);
const all = out.groups.flatMap(({ stakes }) => stakes);
const named = (name: string): Stake => {
  const stake = all.find((each) => each.name === name);
  if (stake === undefined) throw new Error(`no stake ${name}`);
  return stake;
};
const trench = alder.site.schemes[0]?.works.find((work): work is Trench => work.kind === "trench");

it("the list names every corner of the lot, found and not set", () => {
  const places = lotLinesOf(alder.site).flatMap((line) => limitCorners(line)?.places ?? []);
  const notes = stakeRows(out)
    .filter((row) => row.length === 1)
    .flat()
    .map(String);
  const corners = notes.filter((note) => note.startsWith("Corner of the lot, found and not set"));
  expect(corners).toHaveLength(places.length);
  const [x] = places[0]!;
  expect(corners[0]).toContain(`corner 1: east ${(x / FOOT).toFixed(2)} ft`);
});

describe("corners worth a stake", () => {
  const square: [number, number][] = [
    [0, 0],
    [5, 0.02],
    [10, 0],
    [10, 10],
    [0, 10],
  ];

  it("leave out what lies on the line between its neighbours", () => {
    const corners = stakedCorners(square);
    expect(corners).toHaveLength(4);
    expect(corners).not.toContainEqual([5, 0.02]);
    expect(stakedCorners(square, 0.01)).toHaveLength(5);
  });

  it("drop slivers", () => {
    expect(
      stakedCorners([
        [0, 0],
        [3, 0],
        [3, 0.01],
      ]),
    ).toEqual([]);
  });
});

describe("stations along a trench", () => {
  it("are both ends, bends, cleanouts and the interval, in order", () => {
    if (trench === undefined) throw new Error("expected a trench");
    const stations = stationsOf(trench, 3);
    expect(stations.map(({ kind }) => kind)).toEqual([
      "start",
      "cleanout",
      "bend",
      "interval",
      "end",
    ]);
    expect(stations[0]?.at).toBe(0);
    expect(stations.at(-1)?.at).toBeCloseTo(7.27734, 5);
    expect(() => stationsOf(trench, 0)).toThrow(/expected more than 0/);
  });

  it("know the place and what is square to the path there", () => {
    const path: [number, number][] = [
      [0, 0],
      [10, 0],
      [10, 10],
    ];
    const { at, across } = alongPath(path, 4);
    expect(at).toEqual([4, 0]);
    expect(across[0]).toBeCloseTo(0, 12);
    expect(across[1]).toBe(1);
    const bend = alongPath(path, 10);
    expect(bend.at).toEqual([10, 0]);
    expect(bend.across[0]).toBeCloseTo(-Math.SQRT1_2, 12);
    expect(bend.across[1]).toBeCloseTo(Math.SQRT1_2, 12);
    expect(stationNear(path, [11, 3])).toBe(13);
  });
});

describe("what is set out", () => {
  it("has names that are short and no two alike", () => {
    expect(new Set(all.map(({ name }) => name)).size).toBe(all.length);
    expect(Math.max(...all.map(({ name }) => name.length))).toBeLessThanOrEqual(8);
  });

  it("gives a tank's floor corners the floor of its hole, as a column of the dig reads it", () => {
    const corner = named("T1-F1");
    const middle = columnAt(alder.site, alder.schemeId, "dug", [25.6032, 20.1168]);
    expect(corner.grade).toBeCloseTo(middle?.now.elevation ?? NaN, 9);
    // Underside 731.830896 m less 0.1524 m of bedding.
    expect(corner.grade).toBeCloseTo(731.678496, 6);
  });

  it("gives a trench's centre the floor that a column of the dig reads there", () => {
    for (const name of ["L1-2", "L2-4", "L2-7"]) {
      const { at, grade } = named(name);
      const column = columnAt(alder.site, alder.schemeId, "dug", at);
      expect(grade).toBeCloseTo(column?.now.elevation ?? NaN, 6);
    }
  });

  it("puts offset stakes 3 ft from the centre on a US site, and tells those that a dig would take", () => {
    const [centre, left] = [named("L2-8"), named("L2-8L")];
    expect(Math.hypot(left.at[0] - centre.at[0], left.at[1] - centre.at[1])).toBeCloseTo(
      3 * FOOT,
      9,
    );
    expect(left.lost).toBe(false);
    expect(named("L2-1L").lost).toBe(true);
    const wide = stakeOut(alder, { offset: 6 }).groups.flatMap(({ stakes }) => stakes);
    expect(wide.find(({ name }) => name === "L2-1L")?.lost).toBe(false);
  });

  it("asks a pipe's invert between the stations of the estimate", async () => {
    const files = await makeStakes(alder);
    const rows = Papa.parse<string[]>(String(files[1]?.data)).data;
    const start = rows.find((row) => row[1] === "L1-1");
    expect(Number(start?.[5])).toBeCloseTo(733.367088 / FOOT, 2);
    const end = rows.find((row) => row[0] === "House drain, 4 in" && row[3] === "end");
    expect(Number(end?.[5])).toBeCloseTo(733.202496 / FOOT, 2);
    // With a pencil: ground less invert, ground less floor, as they are written.
    const piped = rows.filter((row) => row.length > 5 && Number.isFinite(Number(row[4])));
    expect(piped.length).toBeGreaterThan(20);
    for (const row of piped) {
      const [ground = NaN, invert = NaN, cut, floor = NaN, cutToFloor] = row.slice(4).map(Number);
      expect(cut).toBeCloseTo(ground - invert, 9);
      expect(cutToFloor).toBeCloseTo(ground - floor, 9);
    }
  });

  it("leads back to each stake from two marks by the side, and fixes none badly by its own pair", () => {
    const [a, b] = out.marks ?? [];
    if (a === undefined || b === undefined) throw new Error("expected two marks");
    for (const { at } of all) {
      expect(crossing(a.at, b.at, at)).toBeGreaterThanOrEqual(FLATTEST);
      const [base, x, y] = placed(a.at, b.at, at);
      expect(base).toBeGreaterThan(0);
      expect(Math.hypot(x - at[0], y - at[1])).toBeLessThan(1e-6);
    }
  });

  it("takes the marks that a person picks, warns where arcs cross flat, refuses one place twice", () => {
    const [p, q] = alder.site.survey.points;
    if (p === undefined || q === undefined) throw new Error("expected points");
    const picked = markPair(alder.site, [], [{ point: p.id }, { point: q.id }]);
    expect(picked?.map(({ at }) => at)).toEqual([
      [p.x, p.y],
      [q.x, q.y],
    ]);
    expect(() => markPair(alder.site, [], [{ point: p.id }, { point: p.id }])).toThrow(/one place/);
    expect(() => markPair(alder.site, [], [{ point: "?" }, { point: p.id }])).toThrow(/no mark/);
    // Two marks a metre apart seen from 50 m: far flatter than 20°.
    expect(crossing([0, 0], [1, 0], [0.5, 50])).toBeLessThan(FLATTEST);
    expect(crossing([0, 0], [10, 0], [5, 5])).toBeCloseTo(90, 9);
    expect(crossing([0, 0], [10, 0], [20, 0])).toBe(0);
  });

  it("puts each stake on the earth where the site is placed, to a centimetre; else says it is not", async () => {
    const [stakes, , gpx] = await makeStakes(alder);
    const rows = Papa.parse<string[]>(String(stakes?.data).replace(/^\uFEFF/, "")).data;
    const [heads = []] = rows;
    const [lat, lon] = [heads.indexOf("Latitude, WGS 84"), heads.indexOf("Longitude, WGS 84")];
    const row = rows.find(([name]) => name === "T1-F1") ?? [];
    const [x, y] = toPlane(place, { latitude: Number(row[lat]), longitude: Number(row[lon]) });
    const [wx, wy] = named("T1-F1").at;
    expect(Math.hypot(x - wx, y - wy)).toBeLessThan(0.02);
    expect(gpx?.name).toBe("alder-flat-pumped-stakes.gpx");
    const nowhere = await makeStakes(exampleJob("alder-flat", (site) => without(site, "place")));
    expect(nowhere.map(({ name }) => name.split(".").at(-1))).toEqual(["csv", "csv"]);
    expect(nowhere[0]?.data).toContain("not placed on the earth");
  });

  it("sets out nothing where nothing is drawn", async () => {
    const bare = exampleJob("alder-flat", (site) => withScheme(site, { works: [] }));
    expect(stakeOut(bare).groups).toEqual([]);
    const [csv] = await makeStakes(bare);
    expect(csv?.data).toContain("Estimate only");
  });
});

/** A place again from its distances to two marks and its side: what a person with two tapes does. */
function placed(
  [ax, ay]: readonly [number, number],
  [bx, by]: readonly [number, number],
  [x, y]: readonly [number, number],
): [number, number, number] {
  const base = Math.hypot(bx - ax, by - ay);
  const [fromA, fromB] = [Math.hypot(x - ax, y - ay), Math.hypot(x - bx, y - by)];
  const side = Math.sign((bx - ax) * (y - ay) - (by - ay) * (x - ax));
  const along = (base ** 2 + fromA ** 2 - fromB ** 2) / (2 * base);
  const across = side * Math.sqrt(Math.max(0, fromA ** 2 - along ** 2));
  const [ux, uy] = [(bx - ax) / base, (by - ay) / base];
  return [base, ax + along * ux - across * uy, ay + along * uy + across * ux];
}
