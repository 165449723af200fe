import { describe, expect, it } from "vitest";
import { startHistory } from "../site/index.js";
import type { Site, Work } from "../site/index.js";
import { plainPad, plainSite, plainStrip, plainTank } from "../site/site.fixture.js";
import type { DeskStore } from "./deskState.js";
import type { DeskTools } from "./deskTools.js";
import { copying } from "./copying.js";

/** Copying and removing on a desk with one work picked; what was told, and the sites recorded. */
function deskWith(works: Work[], picked: string) {
  const state: Partial<DeskStore> = {
    history: startHistory(plainSite({ works })),
    schemeId: "plan",
    selected: { kind: "work", id: picked },
    also: [],
  };
  const told: string[] = [];
  const sites: Site[] = [];
  const tell = (part: Partial<DeskStore>): void => {
    if (part.notice !== undefined) told.push(part.notice);
  };
  const tools: Pick<DeskTools, "get" | "set" | "now" | "recorded"> = {
    get: () => state as DeskStore,
    now: () => state.history ?? null,
    set: tell,
    recorded: (_, site, more = {}) => {
      sites.push(site);
      tell(more);
    },
  };
  return { actions: copying(tools as DeskTools), told, sites };
}

describe("strips over a work", () => {
  const over = plainStrip({ id: "over", name: "Strip 1", area: area("pad") });

  function area(work: string) {
    return { by: "work", work, beyond: 1 } as const;
  }

  it("are named when they go with the work", () => {
    const desk = deskWith([over, plainPad(), plainTank()], "pad");
    desk.actions.removeSelected();
    expect(desk.sites[0]?.schemes[0]?.works.map((work) => work.id)).toEqual(["tank"]);
    expect(desk.told).toEqual(["Removed Pad, and Strip 1 that lay over it. Undo brings all back."]);
  });

  it("leave other works alone, and the usual word is said", () => {
    const desk = deskWith([over, plainPad(), plainTank()], "tank");
    desk.actions.removeSelected();
    expect(desk.sites[0]?.schemes[0]?.works.map((work) => work.id)).toEqual(["over", "pad"]);
    expect(desk.told).toEqual(["Removed Tank. Undo brings it back."]);
  });

  it("are not copied, and the reason is told", () => {
    const desk = deskWith([over, plainPad()], "over");
    desk.actions.duplicateSelected();
    expect(desk.sites).toEqual([]);
    expect(desk.told[0]).toContain("a second one would find nothing to take");
  });
});
