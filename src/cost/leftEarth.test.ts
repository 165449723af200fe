import { describe, expect, it } from "vitest";
import { digOf, schemeOf, workOf } from "../dig/dig.fixture.js";
import { catalogueMaterials } from "../site/index.js";
import { leftEarthFindings } from "./leftEarth.js";

const MATERIALS = catalogueMaterials();

const said = (
  works: Parameters<typeof workOf>[0][],
  earth: Parameters<typeof digOf>[1],
): { code: string; text: string }[] =>
  leftEarthFindings(schemeOf(), digOf(works.map(workOf), earth), MATERIALS, "metric");

describe("earth that comes in while own earth is left over", () => {
  it("is told with what is left of each material and its share that is fit", () => {
    const [note, ...rest] = said([{ id: "hole", cut: { clay: 20, topsoil: 4 } }], {
      ...{ importCompacted: 5, left: { clay: 6, topsoil: 4 } },
    });
    expect(rest).toEqual([]);
    expect(note?.code).toBe("earth.fill-beside-left");
    expect(note?.text).toContain("5.0 m³ of fill");
    expect(note?.text).toContain("10.0 m³ of the job's own earth");
    expect(note?.text).toContain("clay 6.0 m³ (70% taken as fit), topsoil 4.0 m³ (none taken");
  });

  it("is not told where nothing comes in, or next to nothing is left", () => {
    const hole = { id: "hole", cut: { clay: 20 } };
    expect(said([hole], { importCompacted: 0, left: { clay: 6 } })).toEqual([]);
    expect(said([hole], { importCompacted: 5, left: { clay: 0.3 } })).toEqual([]);
  });

  it("is told of topsoil that is bought where topsoil is left, and of no graded aggregate", () => {
    const works = [
      { id: "hole", cut: { topsoil: 9, sand: 3 } },
      { id: "bed", fill: { topsoil: 4, "drain-sand": 8 } },
    ];
    const notes = said(works, { left: { topsoil: 9, sand: 3 } });
    expect(notes.map(({ code }) => code)).toEqual(["earth.own-would-do"]);
    expect(notes[0]?.text).toContain("4.0 m³ of topsoil");
    expect(notes[0]?.text).toContain("9.0 m³ of the job's own topsoil");
  });

  it("is told of fill asked for by name by what is fit alone", () => {
    const works = [
      { id: "hole", cut: { clay: 20 } },
      { id: "pad", fill: { "imported-fill": 9 } },
    ];
    // Of 20 m³ of clay 6 are not fit (30%): of 15 left, 9 would do.
    expect(said(works, { left: { clay: 15 } })[0]?.text).toContain("9.0 m³ of the job's own earth");
    expect(said(works, { left: { clay: 6 } })).toEqual([]);
  });
});
