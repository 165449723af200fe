import { describe, expect, it } from "vitest";
import { materialsOf, type Bed } from "../site/index.js";
import { plainSite } from "../site/site.fixture.js";
import { bedCourses } from "./bedCourses.js";

const materials = materialsOf(plainSite({}));

function bed(filling: Bed["filling"], height = 1): Bed {
  const size = { length: 6, width: 4, height, wall: 0.2, base: 100 };
  return { kind: "bed", id: "bed", name: "Bed", at: [0, 0], bearing: 0, ...size, filling };
}

const SAND = { material: "drain-sand", depth: 0.6 };
const GRAVEL = { material: "pea-gravel", depth: 0.2 };
const SOIL = { material: "topsoil", depth: 0.1 };

describe("the courses of a raised bed", () => {
  it("lie on each other from the base up, the soil once the bed is covered", () => {
    const open = bedCourses(bed([SAND, GRAVEL, SOIL]), materials, false);
    expect(open.map(({ material, top }) => [material, top])).toEqual([
      ["drain-sand", 100.6],
      ["pea-gravel", 100.8],
    ]);
    const covered = bedCourses(bed([SAND, GRAVEL, SOIL]), materials, true);
    expect(covered.at(-1)).toMatchObject({ material: "topsoil", bottom: 100.8 });
    expect(covered.at(-1)?.top).toBeCloseTo(100.9, 9);
  });

  it("reach no higher than the walls", () => {
    const courses = bedCourses(bed([SAND, GRAVEL, SOIL], 0.7), materials, true);
    expect(courses).toHaveLength(2);
    expect(courses.at(-1)?.top).toBeCloseTo(100.7, 9);
  });

  it("are all there before covering where there is soil alone", () => {
    expect(bedCourses(bed([SOIL]), materials, false)).toHaveLength(1);
  });
});
