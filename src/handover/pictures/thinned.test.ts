import { expect, it } from "vitest";
import { exampleJob } from "../job.fixture.js";
import { MOST_POINTS, thinned } from "./thinned.js";
import { viewPage } from "./viewPage.js";

const SIDE = 90;

/** A hill of so many spot heights a side, with one line of two of them. */
const large = exampleJob("quarry-lane", (site) => ({
  ...site,
  survey: {
    points: Array.from({ length: SIDE * SIDE }, (_, i) => {
      const [x, y] = [(i % SIDE) * 0.5, Math.floor(i / SIDE) * 0.5];
      return { id: `p${i}`, x, y, z: 200 + 0.1 * y + 0.5 * Math.sin(x / 5) };
    }),
    breaklines: [["p4100", "p4101"]],
  },
}));

it("leaves a small survey as it is, and thins a large one evenly, edge and lines kept", () => {
  const small = exampleJob("quarry-lane").site;
  expect(thinned(small)).toBe(small);
  const { points } = thinned(large.site).survey;
  expect(points.length).toBeLessThan(MOST_POINTS + 4 * SIDE);
  expect(points.length).toBeGreaterThan(MOST_POINTS / 2);
  const ids = new Set(points.map(({ id }) => id));
  for (const id of ["p4100", "p4101", "p0", `p${SIDE - 1}`, `p${SIDE * SIDE - 1}`]) {
    expect(ids.has(id)).toBe(true);
  }
  for (let x = 2; x < 42; x += 5) {
    for (let y = 2; y < 42; y += 5) {
      const near = points.some((p) => Math.hypot(p.x - x, p.y - y) < 1.5);
      expect(near).toBe(true);
    }
  }
});

it("is the same for every stage, and a picture says how it is drawn", () => {
  expect(thinned(large.site).survey).toBe(thinned(large.site).survey);
  const count = thinned(large.site).survey.points.length.toLocaleString("en-US");
  const text = JSON.stringify(viewPage(large, "found").marks);
  expect(text).toContain(`The ground is drawn from ${count} of 8,100 spot heights`);
  expect(JSON.stringify(viewPage(exampleJob("quarry-lane"), "found").marks)).not.toContain(
    "spot heights",
  );
});
