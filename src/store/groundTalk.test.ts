import { describe, expect, it } from "vitest";
import type { SurveyPoint } from "../site/index.js";
import { plainSite } from "../site/site.fixture.js";
import { columnsOf, isLarge, pointsOf, withoutPoints } from "./groundTalk.js";
import { jobInWords } from "./jobInWords.js";
import { surveyText, surveyTextMade } from "./surveyText.js";

function pointsFor(count: number): SurveyPoint[] {
  return Array.from({ length: count }, (_, i) => ({
    id: `"${i}"\n`,
    x: i / 3,
    y: -i / 7,
    z: 1e5 + i / 9,
  }));
}

describe("columns of points", () => {
  it("give the same points again, whatever their ids hold", () => {
    expect(pointsOf(structuredClone(columnsOf(pointsFor(5))))).toEqual(pointsFor(5));
    expect(pointsOf(columnsOf([]))).toEqual([]);
  });

  it("leave all else of the site in place", () => {
    const plain = plainSite({});
    const boundary: [number, number][] = [
      [0, 0],
      [9, 0],
      [0, 9],
    ];
    const site = { ...plain, survey: { ...plain.survey, boundary } };
    expect(withoutPoints(site)).toEqual({ ...site, survey: { points: [], boundary } });
    expect(site.survey.points).toHaveLength(25);
  });
});

describe("isLarge", () => {
  it("is true from one point over 5,000", () => {
    const plain = plainSite({});
    const withPoints = (count: number) => ({ ...plain, survey: { points: pointsFor(count) } });
    expect(isLarge(withPoints(5000))).toBe(false);
    expect(isLarge(withPoints(5001))).toBe(true);
  });
});

describe("surveyText", () => {
  it("is the points' JSON, also where slices meet", async () => {
    for (const count of [0, 1, 3999, 4000, 4001, 8001]) {
      const points = pointsFor(count);
      expect(await (await surveyText(points)).text()).toBe(JSON.stringify(points));
    }
  });

  it("is made once for the same points, or taken as made elsewhere", async () => {
    const points = pointsFor(3);
    expect(await surveyText(points)).toBe(await surveyText(points));
    const [other, made] = [pointsFor(3), new Blob(["[]"])];
    surveyTextMade(other, made);
    expect(await surveyText(other)).toBe(made);
  });
});

describe("jobInWords", () => {
  it("says what is done of what, with the points once they are counted", () => {
    const job = { name: "Wide Hill", share: 0.1 };
    expect(jobInWords({ ...job, points: null, step: "reading" })).toBe("Reading Wide Hill");
    expect(jobInWords({ ...job, points: 99856, step: "joining" })).toBe(
      "Joining 99,856 points of Wide Hill into ground",
    );
    expect(jobInWords({ ...job, points: 99856, step: "drawing" })).toBe(
      "Drawing the ground of 99,856 points of Wide Hill",
    );
  });
});
