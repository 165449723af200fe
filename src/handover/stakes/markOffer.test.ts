import { describe, expect, it } from "vitest";
import { exampleJob } from "../job.fixture.js";
import { stakeOut } from "./makeStakes.js";
import { markOffer, usablePair } from "./markOffer.js";
import { crossing, FLATTEST, judgedPair } from "./marks.js";
import type { Mark } from "./marks.js";

const job = exampleJob("alder-flat");
const { site } = job;
const places = stakeOut(job).groups.flatMap(({ stakes }) => stakes.map(({ at }) => at));

describe("marks to choose from", () => {
  it("are few, those that stay in the ground, and hold the pair in use", () => {
    const { offered, used, stakes } = markOffer(job, {});
    expect(stakes).toBe(places.length);
    expect(offered.length).toBeLessThanOrEqual(18);
    expect(site.survey.points.length).toBeGreaterThan(100);
    const names = offered.map(({ name }) => name);
    expect(names.filter((name) => /creek|track|toe of/.test(name))).toEqual([]);
    expect(names.some((name) => name.includes("iron pin"))).toBe(true);
    expect(used?.pair.every((mark) => names.includes(mark.name))).toBe(true);
    expect(new Set(names).size).toBe(names.length);
  });

  it("hold a point that was picked beside them, and none that the site has not", () => {
    const { offered } = markOffer(job, {}, [{ point: "101" }, { point: "nowhere" }]);
    expect(offered.map(({ choice }) => choice)).toContainEqual({ point: "101" });
    expect(offered.map(({ choice }) => choice)).not.toContainEqual({ point: "nowhere" });
  });
});

describe("a pair of marks", () => {
  const mark = (x: number, y: number): Mark => ({ choice: { point: "p" }, name: "p", at: [x, y] });

  it("is judged by the stake whose arcs cross flattest and by the longest tape", () => {
    const judged = judgedPair(
      [mark(0, 0), mark(10, 0)],
      [
        [5, 5],
        [5, 1],
      ],
    );
    // Seen from (5, 1) the marks lie at 180° less twice the arc tangent of 1/5.
    expect(judged.worst).toBeCloseTo((2 * Math.atan(0.2) * 180) / Math.PI, 9);
    expect(judged.flat).toBe(0);
    expect(judged.longest).toBeCloseTo(Math.hypot(5, 5), 9);
    expect(judgedPair([mark(0, 0), mark(1, 0)], [[0.5, 50]]).flat).toBe(1);
  });

  it("that is nearly in line is told with how many stakes, and a better one is offered", () => {
    // Two corners of one wall, some 5 m apart.
    const { used, better } = markOffer(job, { marks: [{ point: "149" }, { point: "150" }] });
    if (used === null || better === null) throw new Error("expected a pair and a better one");
    const angles = places.map((at) => crossing(used.pair[0].at, used.pair[1].at, at));
    expect(used.worst).toBeCloseTo(Math.min(...angles), 9);
    expect(used.flat).toBe(angles.filter((angle) => angle < FLATTEST).length);
    expect(used.flat).toBeGreaterThan(0);
    expect(better.worst).toBeGreaterThan(used.worst);
    expect(better.flat).toBe(0);
    expect(better.pair.map(({ name }) => name)).toEqual(
      stakeOut(job).marks?.map(({ name }) => name),
    );
  });

  it("that is the best has none better", () => {
    expect(markOffer(job, {}).better).toBeNull();
  });

  it("of which the site has not both, or that is one place, is none", () => {
    expect(usablePair(site, [{ point: "166" }, { point: "gone" }])).toBeUndefined();
    expect(usablePair(site, [{ point: "166" }, { point: "166" }])).toBeUndefined();
    expect(usablePair(site, [{ point: "166" }, { point: "167" }])).toHaveLength(2);
  });
});
