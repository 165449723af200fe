/** Sites that once showed a fault, each kept as small as it got: they must show none. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readSite } from "../../src/site/index.js";
import { lookAt } from "../fixtures/faults.js";

const FOLDER = new URL("../fixtures/repro/", import.meta.url);
const files = readdirSync(FOLDER).filter((name) => name.endsWith(".site.json"));

describe("sites that once went wrong", () => {
  it.each(files)("%s", (name) => {
    const read = readSite(readFileSync(new URL(name, FOLDER), "utf8"));
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const looked = lookAt(read.value, { places: 60, stages: true });
    expect(looked).toMatchObject({ faults: [] });
  });
});
