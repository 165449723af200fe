import { describe, expect, test } from "vitest";
import { LIMIT_KINDS, type Limit, type PlanPoint } from "../../site/index.js";
import { plainSite, plainTank } from "../../site/site.fixture.js";
import { kindName } from "./drawLimits.js";
import { excavationPlan, existingGround, layoutPlan } from "./index.js";
import { limitSample, limitStyle } from "./limitStyles.js";
import { jobOf, sheetsFrom } from "./plan.fixture.js";
import { EXISTING_GROUND } from "./existingGround.js";

/** One limit of each kind, side by side from west to east, each in a strip 2 m wide. */
function oneOfEach(): Limit[] {
  return [...LIMIT_KINDS.map(({ id, shape }) => ({ id, shape })), UNKNOWN].map(
    ({ id, shape }, i): Limit => {
      const x = -19 + 1.9 * i;
      const line: PlanPoint[] = [
        [x, -6],
        [x, 4],
      ];
      const ring: PlanPoint[] = [...line, [x + 1, 4], [x + 1, -6]];
      if (shape === "place") return { id, kind: id, at: [x, 0] };
      return { id, kind: id, path: shape === "area" ? ring : line, closed: shape === "area" };
    },
  );
}
const UNKNOWN = { id: "old-hedge", shape: "line" } as const;

describe("the legend of limits", () => {
  const site = { ...plainSite({ works: [plainTank()] }), limits: oneOfEach() };
  const job = jobOf(site, "a3");
  const kinds = oneOfEach().map((limit) => kindName(limit));

  test("has a row for every kind that is drawn", () => {
    const whole = { [EXISTING_GROUND]: { middle: [0, 0] as const, scale: 200 } };
    const [sheet] = sheetsFrom(existingGround, job, whole);
    const names = sheet?.legend.map(({ name }) => name) ?? [];
    for (const kind of kinds) expect(names).toContain(kind);
    const layers = sheet?.marks.flatMap((mark) => (mark.kind === "group" ? [mark.layer] : []));
    for (const kind of kinds) expect(layers).toContain(kind);
  });

  test("has none for what lies outside the window", () => {
    const west = { [EXISTING_GROUND]: { middle: [-17.5, 0] as const, scale: 20 } };
    const [sheet] = sheetsFrom(existingGround, job, west);
    const names = sheet?.legend.map(({ name }) => name) ?? [];
    const layers = sheet?.marks.flatMap((mark) => (mark.kind === "group" ? [mark.layer] : []));
    expect(names).toContain("Lot line");
    expect(names).not.toContain("Reserve area for a second field");
    for (const kind of kinds) expect(names.includes(kind)).toBe(layers?.includes(kind));
  });

  test("tells every two kinds apart without colour", () => {
    const grey = (kind: Limit): string =>
      JSON.stringify(
        limitSample(limitStyle(kind), kind.at ? "place" : kind.closed === true ? "area" : "line"),
      ).replace(/"#[0-9a-f]{6}"/g, '"ink"');
    const samples = oneOfEach().map(grey);
    expect(new Set(samples).size).toBe(samples.length);
  });
});

describe("sites with little on them", () => {
  test("an almost empty one has its ground, and no plan of works", () => {
    const job = jobOf(plainSite({ height: (x) => 100 + 0.1 * x }), "a4");
    const [sheet] = sheetsFrom(existingGround, job);
    const names = sheet?.legend.map(({ name }) => name);
    expect(names).toContain("Survey point and its elevation");
    expect(sheetsFrom(layoutPlan, job)).toEqual([]);
    expect(sheetsFrom(excavationPlan, job)).toEqual([]);
  });

  test("a tank alone has a layout and a hole; without a lot it says that no corners tie it", () => {
    const job = jobOf(plainSite({ works: [plainTank()] }), "letter");
    const [layout] = sheetsFrom(layoutPlan, job);
    expect(layout?.legend.map(({ name }) => name)).toContain("Tank");
    expect(JSON.stringify(layout?.marks)).toContain("No lot corners");
    const [dig] = sheetsFrom(excavationPlan, job);
    expect(dig?.legend.map(({ name }) => name)).toContain("Order of digging");
  });
});
