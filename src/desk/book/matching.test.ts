import { describe, expect, it } from "vitest";
import { matching, scoreOf, wordsOf } from "./matching.js";

const names = (query: string, ...titles: (string | [string, string])[]): string[] =>
  matching(
    query,
    titles.map((one) =>
      typeof one === "string" ? { title: one } : { title: one[0], more: one[1] },
    ),
    10,
  ).map(({ title }) => title);

describe("what is typed and what is found", () => {
  it("makes plain words of a text", () => {
    expect(wordsOf("  Fosse toutes-eaux, 1½″ (n° 2)")).toEqual([
      ...["fosse", "toutes", "eaux", "1", "1/2", "n", "2"],
    ]);
    expect(wordsOf("Øvre Łąka Straße")).toEqual(["ovre", "laka", "strasse"]);
    expect(wordsOf("—")).toEqual([]);
  });

  it("forgives word order, case and accents", () => {
    for (const query of ["house drain", "drain house", "DRAIN hou", "dra ho"]) {
      expect(names(query, "House drain", "Lift line")).toEqual(["House drain"]);
    }
    expect(names("crete", "Crête d'ardoise")).toEqual(["Crête d'ardoise"]);
    expect(names("crête", "CRETE")).toEqual(["CRETE"]);
    expect(names("cre\u0302te", "cr\u00eate")).toEqual(["cr\u00eate"]);
  });

  it("wants every typed word, in the name or in what else is said", () => {
    expect(names("tank floats", ["Tank 1", "floats out of the ground"], "Tank 1 walls")).toEqual([
      "Tank 1",
    ]);
    expect(names("tank zebra", "Tank 1")).toEqual([]);
    expect(names("", "Tank 1")).toEqual([]);
    expect(names("  —  ", "Tank 1")).toEqual([]);
  });

  it("puts whole names before beginnings, and these before the middle of a word", () => {
    expect(names("tank", "Septictank", "Tanker", "Tank 1", "Tank")).toEqual([
      ...["Tank", "Tank 1", "Tanker", "Septictank"],
    ]);
  });

  it("puts names before what else is said", () => {
    expect(names("fall", ["Drain", "its fall"], "Fall")).toEqual(["Fall", "Drain"]);
  });

  it("does not find one letter in the middle of everything", () => {
    expect(scoreOf(["n"], { title: "Tank" })).toBe(0);
    expect(scoreOf(["t"], { title: "Tank" })).toBeGreaterThan(0);
  });

  it("keeps the order of equals, and no more than asked", () => {
    const rows = ["p1", "p2", "p3"].map((id) => ({ title: `point ${id}`, id }));
    expect(matching("point", rows, 2).map(({ id }) => id)).toEqual(["p1", "p2"]);
  });
});
