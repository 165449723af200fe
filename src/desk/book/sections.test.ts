import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { SECTIONS } from "./sections.js";

const SRC = join(import.meta.dirname, "..", "..");

/** All that stands in the files of a folder, without line breaks. */
function textOf(folder: string): string {
  return readdirSync(join(SRC, folder), { recursive: true, encoding: "utf8" })
    .filter((name) => /\.tsx?$/.test(name) && !name.includes(".test."))
    .map((name) => readFileSync(join(SRC, folder, name), "utf8").replace(/\s+/g, " "))
    .join("\n");
}

describe("the parts of the leaves", () => {
  const words = textOf("words");
  it.each([...SECTIONS])("has the heading $heading in $leaf", ({ leaf, heading }) => {
    const shown = textOf(`desk/${leaf}`);
    // Written in the leaf under a heading, or as a text of its own.
    const isHeading = ["<h2> ", ">", '"'].some((before) => shown.includes(before + heading));
    expect(isHeading || words.includes(`"${heading}`)).toBe(true);
  });
});
