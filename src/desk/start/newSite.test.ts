import { describe, expect, it } from "vitest";
import { words } from "../../words/index.js";
import { EMPTY_DRAFT, type Draft } from "./draft.js";
import { readDraft } from "./newSite.js";

const POINTS = ["1,0,0,100", "2,20,0,101", "3,0,20,102", "4,20,20,103"].join("\n");

const told: Draft = {
  ...{ ...EMPTY_DRAFT, text: POINTS, unit: "m", unitKnown: true, units: "metric" },
  axesKnown: true,
};
const probed: Draft = { ...told, under: "probe", topsoil: "0.2", soil: "0.9" };

describe("what a draft of a site comes to", () => {
  it("makes no site until somebody says what the numbers are in", () => {
    const read = readDraft({ ...told, unitKnown: false });
    expect(read.site).toBeNull();
    expect(read.state).toBe(words.startPage.sayUnits);
    expect(read.drawn).not.toBeNull();
    expect(readDraft(told).site?.survey.points).toHaveLength(4);
  });

  it("makes no site until a header or somebody says which column is east and which north", () => {
    const read = readDraft({ ...told, axesKnown: false });
    expect(read.site).toBeNull();
    expect(read.state).toBe(words.startPage.sayAxes);
    expect(readDraft(told).site).not.toBeNull();
    const headed = `name,east,north,elevation\n${POINTS}`;
    expect(readDraft({ ...told, axesKnown: false, text: headed }).site).not.toBeNull();
    // Another column chosen as the note says nothing of the axes.
    const roles = ["ignore", "north", "east", "elevation"] as const;
    expect(readDraft({ ...told, axesKnown: false, roles }).site).toBeNull();
  });

  it("makes no site with rock until somebody says how it digs", () => {
    const read = readDraft(probed);
    expect(read.site).toBeNull();
    expect(read.state).toBe(words.startPage.sayHowRockDigs);
    const said = readDraft({ ...probed, rockMaterial: "weathered-rock" });
    expect(said.site?.ground.layers.at(-1)?.material).toBe("weathered-rock");
  });

  it("puts the probe where it was dug, or in the middle of the points", () => {
    const rock = { ...probed, rockMaterial: "weathered-rock" };
    expect(readDraft(rock).site?.ground.probes[0]).toMatchObject({ x: 10, y: 10 });
    const placed = readDraft({ ...rock, probeEast: "3.5", probeNorth: "7" });
    expect(placed.site?.ground.probes[0]).toMatchObject({ x: 3.5, y: 7 });
    expect(readDraft({ ...rock, probeEast: "over there" }).site).toBeNull();
  });
});
