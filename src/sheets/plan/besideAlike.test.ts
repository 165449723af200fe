import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { readSite } from "../../site/index.js";
import type { TextMark } from "../paper.js";
import { sheetsOf } from "../sheetsOf.js";
import { jobOf, singles } from "./plan.fixture.js";

const quarrySheets = () => {
  const read = readSite(readFileSync("shared/sites/quarry-lane.site.json", "utf8"));
  if (!read.ok) throw new Error("Quarry Lane: got problems, expected a site");
  return sheetsOf(jobOf(read.value, "letter"));
};

it("marks both ends of a section or none, and names each trench on its own side", () => {
  const sheets = quarrySheets();
  const textsOn = (id: string): TextMark[] =>
    sheets
      .filter((sheet) => sheet.id === id)
      .flatMap(({ marks }) => singles(marks))
      .filter((mark) => mark.kind === "text");
  const letters = textsOn("works-plan").map(({ text }) => text);
  const begun = letters.filter((text) => /^[A-H]$/.test(text));
  expect(begun).toContain("C");
  const ended = letters.filter((text) => /^[A-H]′$/.test(text)).map(([letter]) => letter);
  expect(ended.sort()).toEqual(begun.sort());
  // On paper y is down: the lower trench lies below the upper one, and so do their names.
  const named = (name: string): number =>
    textsOn("excavation-plan").find(({ text, face }) => text === name && face === "strong")
      ?.at[1] ?? NaN;
  expect(named("Lower soakaway")).toBeGreaterThan(named("Upper soakaway"));
});
