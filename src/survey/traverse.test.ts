import { describe, expect, it } from "vitest";
import { FOOT } from "../units/index.js";
import { readCourses, type Course } from "./courses.js";
import { balanced, legOf, lotCorners, ringArea, runTraverse, sidesOf } from "./traverse.js";

/** One course as read, its length back in feet. */
function one(text: string, unit: "ft" | "m" | "us-survey-ft" = "ft") {
  const { courses, problems } = readCourses(text, unit);
  expect(problems).toEqual([]);
  expect(courses).toHaveLength(1);
  return courses[0]!;
}

describe("courses as people write them", () => {
  it.each([
    ["N 45°30' E 120.5 ft", 45.5, 120.5 * FOOT],
    ["N45-30-15E, 36.7 m", 45 + 30 / 60 + 15 / 3600, 36.7],
    ["thence N. 45° 30′ 15″ E. a distance of 36.7 meters to an iron pin", 45.504166667, 36.7],
    ["S 38 46 10 E 213.50", 180 - (38 + 46 / 60 + 10 / 3600), 213.5 * FOOT],
    ["3  S 60°39'24\" W\t264.49", 180 + 60 + 39 / 60 + 24 / 3600, 264.49 * FOOT],
    ["AB: N 22.5 W 1,314.02'", 337.5, 1314.02 * FOOT],
    ["az 126°55'17\" 647.25", 126 + 55 / 60 + 17 / 3600, 647.25 * FOOT],
    ["126-55-17, 647.25", 126 + 55 / 60 + 17 / 3600, 647.25 * FOOT],
    ["1, 45.5, 120", 45.5, 120 * FOOT],
    ["due south 10 rods", 180, 165 * FOOT],
    ["East 2 chains", 90, 132 * FOOT],
    ["N 10°15.5' E 50 m", 10 + 15.5 / 60, 50],
    ["n 1 e 100 us survey feet", 1, (100 * 1200) / 3937],
  ])("%s", (text, azimuth, metres) => {
    const course = one(text);
    expect(course.bearing).toBeCloseTo(azimuth, 6);
    expect(course.length).toBeCloseTo(metres, 6);
  });

  it("takes the unit that is given for bare distances", () => {
    expect(one("N 1 E 10", "m").length).toBe(10);
    expect(one("N 1 E 10", "us-survey-ft").length).toBeCloseTo((10 * 1200) / 3937, 9);
  });

  it("parts one line at thence and at semicolons", () => {
    const { courses } = readCourses(
      "Beginning at a stone; thence N 10 E 5 m; thence S 80 E 6 m, thence south 7 m.",
      "ft",
    );
    expect(courses.map(({ length }) => length)).toEqual([5, 6, 7]);
  });

  it.each([
    ["N 95 E 10", "cannot be"],
    ["N 45-75 E 10", "cannot be"],
    ["N 45 E", "no distance"],
    ["N 45 E 0 ft", "no distance"],
    ["along a curve with radius 50 ft", "is a curve"],
    ["to the oak 40 ft", "no bearing"],
    ["400, 10", "cannot be"],
  ])("%s is told, with its line", (text, what) => {
    const { courses, problems } = readCourses(`N 1 E 10\n\n${text}`, "ft");
    expect(courses).toHaveLength(1);
    expect(problems).toMatchObject([{ line: 3, text }]);
    expect(problems[0]!.what).toContain(what);
    expect(problems[0]!.mend).not.toBe("");
  });
});

// A closed traverse of four sides in feet, set as an exercise on balancing by the compass rule, with
// its answers (justaaa.com, civil engineering, question 19749, second): departures, latitudes,
// misclosure 4.5e-2 ft, 1 in 22,500, unbalanced coordinates from E 10,000.00 N 5,000.00.
const FOUR_SIDES = `AB N 22°36'40" W 314.02
BC S 60°39'24" W 264.49
CD S 38°46'10" E 213.50
DA N 88°22'58" E 217.69`;

describe("a published closed traverse", () => {
  const { courses } = readCourses(FOUR_SIDES, "ft");
  const run = runTraverse(courses, [10_000 * FOOT, 5_000 * FOOT]);

  it("has the published departures and latitudes", () => {
    const legs = courses.map((course) => legOf(course).map((m) => Number((m / FOOT).toFixed(3))));
    expect(legs).toEqual([
      [-120.733, 289.883],
      [-230.556, -129.611],
      [133.691, -166.46],
      [217.603, 6.144],
    ]);
  });

  it("misses by the published distance and ratio", () => {
    expect(run.error.distance / FOOT).toBeCloseTo(0.045, 3);
    expect(run.oneIn).not.toBeNull();
    // Published to three figures.
    expect(Math.abs((run.oneIn ?? 0) - 22_500)).toBeLessThan(150);
  });

  it("comes by the published places", () => {
    // As run, before balancing, E and N in feet.
    const published = [
      [9879.266402, 5289.883268],
      [9648.69926, 5160.277916],
      [9782.389598, 4993.82517],
    ] as const;
    published.forEach(([east, north], i) => {
      const [x, y] = run.places[i + 1]!;
      // They differ from the sums of the published sides by up to 0.014 ft; why is not said.
      expect(Math.abs(x / FOOT - east)).toBeLessThan(0.02);
      expect(Math.abs(y / FOOT - north)).toBeLessThan(0.02);
    });
  });

  it("closes by the compass rule, with nothing lost", () => {
    const closed = balanced(courses, run);
    expect(closed.places.at(-1)![0]).toBeCloseTo(closed.places[0]![0], 9);
    expect(closed.places.at(-1)![1]).toBeCloseTo(closed.places[0]![1], 9);
    expect(lotCorners(closed)).toHaveLength(4);
  });
});

describe("the compass rule on a published traverse between known places", () => {
  // J. Mahun, Open Access Surveying Library, Traverse Computations, chapter H, example with Figure
  // H-14 (read): QR, RS, ST; sums 1426.13, +113.355, +336.070; wanted +113.301, +336.141.
  const { courses } = readCourses(
    `S 56°23'38" E 398.75\nS 75°17'42" W 422.89\nN 43°05'47" E 604.49`,
    "ft",
  );
  const run = runTraverse(courses, [0, 0], [336.141 * FOOT, 113.301 * FOOT]);

  it("sums to the published figures", () => {
    expect(run.length / FOOT).toBeCloseTo(1426.13, 6);
    expect(run.places.at(-1)![1] / FOOT).toBeCloseTo(113.355, 2);
    expect(run.places.at(-1)![0] / FOOT).toBeCloseTo(336.07, 2);
  });

  it("gives the published balanced legs", () => {
    const { places } = balanced(courses, run);
    const published = [
      [332.124, -220.715],
      [-409.017, -107.363],
      [413.034, 441.379],
    ] as const;
    published.forEach(([east, north], i) => {
      const [a, b] = [places[i]!, places[i + 1]!];
      expect(Math.abs((b[0] - a[0]) / FOOT - east)).toBeLessThan(0.0011);
      expect(Math.abs((b[1] - a[1]) / FOOT - north)).toBeLessThan(0.0011);
    });
  });
});

describe("figures by hand", () => {
  const square: Course[] = [0, 90, 180, 270].map((bearing) => ({ line: 1, bearing, length: 30 }));

  it("a square of 30 m closes and holds 900 m², from any start", () => {
    const run = runTraverse(square, [1000, -500]);
    expect(run.oneIn).toBeNull();
    expect(ringArea(lotCorners(run))).toBeCloseTo(900, 6);
  });

  it("the compass rule by hand: last side 0.12 m short of 120 m gives each corner a quarter", () => {
    const off = square.map((course, i) => (i === 3 ? { ...course, length: 29.88 } : course));
    const run = runTraverse(off, [0, 0]);
    expect(run.error.east).toBeCloseTo(0.12, 9);
    expect(run.oneIn).toBeCloseTo(119.88 / 0.12, 6);
    const { places } = balanced(off, run);
    expect(places[1]![0]).toBeCloseTo((-0.12 * 30) / 119.88, 9);
    expect(places[3]![0]).toBeCloseTo(30 - (0.12 * 90) / 119.88, 9);
  });

  it("the sides of a traverse as run are its courses, and of a balanced one they close", () => {
    const off = square.map((course, i) => (i === 3 ? { ...course, length: 29.88 } : course));
    const run = runTraverse(off, [5, 7]);
    sidesOf(run).forEach(({ bearing, length }, i) => {
      expect(bearing).toBeCloseTo(off[i]!.bearing, 9);
      expect(length).toBeCloseTo(off[i]!.length, 9);
    });
    const adjusted = sidesOf(balanced(off, run)).map((side, line) => ({ line, ...side }));
    // The first side ran due north; its end is now a little to the west: just under 360°.
    expect(adjusted[0]!.bearing).toBeGreaterThan(359.9);
    expect(adjusted[3]!.length).toBeCloseTo(29.88 + (0.12 * 29.88) / 119.88, 9);
    expect(runTraverse(adjusted, [5, 7]).error.distance).toBeLessThan(1e-9);
  });

  it("keeps every place of what does not close", () => {
    expect(lotCorners(runTraverse(square.slice(0, 3), [0, 0]))).toHaveLength(4);
  });
});
