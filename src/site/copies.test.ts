import { describe, expect, it } from "vitest";
import { copyWorksTo, duplicateWorks, freshName } from "./copies.js";
import { setMark } from "./marks.js";
import { checkSite } from "./read.js";
import type { Site, Work } from "./schema.js";
import { plainPad, plainSite, plainStrip, plainTank } from "./site.fixture.js";

const works = (site: Site, id = "plan"): readonly Work[] =>
  site.schemes.find((scheme) => scheme.id === id)?.works ?? [];

describe("a fresh name", () => {
  it("counts on from the original's, past those that are taken", () => {
    expect(freshName("Tank 1", new Set(["Tank 1"]))).toBe("Tank 2");
    expect(freshName("Tank 1", new Set(["Tank 1", "Tank 2"]))).toBe("Tank 3");
    expect(freshName("Sand bed", new Set(["Sand bed"]))).toBe("Sand bed 2");
  });
});

describe("copies beside the originals", () => {
  const strip = plainStrip({
    id: "over",
    name: "Strip 1",
    area: { by: "work", work: "pad", beyond: 1 },
  });
  const site = plainSite({ works: [strip, plainPad(), plainTank({ name: "Tank 1" })] });

  it("stand right after them, moved, with names of their own", () => {
    const { site: next, copies } = duplicateWorks(site, "plan", ["pad", "tank"], [4, 0]);
    expect(works(next).map((work) => work.name)).toEqual([
      "Strip 1",
      "Pad",
      "Pad 2",
      "Tank 1",
      "Tank 2",
    ]);
    expect(copies).toEqual([works(next)[2]?.id, works(next)[4]?.id]);
    expect(works(next)[4]).toMatchObject({ at: [4, 0] });
    expect(checkSite(next).ok).toBe(true);
  });

  it("take a strip along only with the work under it", () => {
    expect(duplicateWorks(site, "plan", ["over"], [4, 0]).site).toBe(site);
    const { site: next, copies } = duplicateWorks(site, "plan", ["over", "pad"], [4, 0]);
    const [, copied] = works(next);
    expect(copies).toHaveLength(2);
    expect(copied).toMatchObject({ kind: "strip", area: { by: "work", work: copies[1] } });
    expect(checkSite(next).ok).toBe(true);
  });

  it("are free and shown although the original is locked and hidden", () => {
    const tank = [{ kind: "work", id: "tank" }] as const;
    const marked = setMark(
      setMark(site, "plan", tank, "locked", true),
      "plan",
      tank,
      "hidden",
      true,
    );
    const copy = works(duplicateWorks(marked, "plan", ["tank"], [4, 0]).site).at(-1);
    expect(copy).toMatchObject({ name: "Tank 2" });
    expect(copy).not.toHaveProperty("locked");
    expect(copy).not.toHaveProperty("hidden");
  });
});

describe("copies in another scheme", () => {
  const plain = plainSite({ works: [plainPad(), plainTank({ name: "Tank 1" })] });
  const other = { id: "other", name: "Other", works: [plainTank({ name: "Tank 1" })] };
  const site: Site = { ...plain, schemes: [...plain.schemes, other] };

  it("come last, in place, and keep a name that is free there", () => {
    const { site: next, copies } = copyWorksTo(site, "plan", ["pad", "tank"], "other");
    expect(works(next, "other").map((work) => work.name)).toEqual(["Tank 1", "Pad", "Tank 2"]);
    expect(copies).toHaveLength(2);
    expect(works(next, "other")[2]).toMatchObject({ at: [0, 0] });
    expect(works(next)).toBe(works(site));
    expect(checkSite(next).ok).toBe(true);
  });

  it("come to nothing without a work or a scheme", () => {
    expect(copyWorksTo(site, "plan", ["none"], "other").site).toBe(site);
    expect(copyWorksTo(site, "plan", ["pad"], "none").site).toBe(site);
  });
});
