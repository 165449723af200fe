import "fake-indexeddb/auto";
import { openDB } from "idb";
import { beforeEach, describe, expect, it } from "vitest";
import { record, renameSite, startHistory, undo } from "../../site/index.js";
import { plainSite, plainTank } from "../../site/site.fixture.js";
import { openBase } from "./base.js";
import type { ShelfBase } from "./base.js";
import {
  addSite,
  copySite,
  keepPicture,
  keepSetting,
  keepSite,
  listHeads,
  listPictures,
  purgeSites,
  readKeptSite,
  readSetting,
  removeSite,
  renameKept,
  restoreSite,
  sameSite,
  ShelfConflict,
} from "./sites.js";
import type { ToKeep } from "./sites.js";

let count = 0;
let name = "";
let base: ShelfBase;

beforeEach(async () => {
  name = `shelf-${count++}`;
  base = await openBase(name);
});

function toKeep(more: Partial<ToKeep> = {}): ToKeep {
  return {
    ...{ id: "one", revision: 0, name: "Field", changed: 1000, schemeId: "s", figures: null },
    ...{ text: '{"name":"Field"}', points: null, history: null },
    ...more,
  };
}

const points = (stamp: string) => ({ stamp, points: new Blob([`[${stamp}]`]) });
const stampsKept = (): Promise<string[]> => base.getAllKeys("points");

describe("keeping a site", () => {
  it("gives it back as it was, with revisions that grow", async () => {
    expect(await keepSite(base, toKeep())).toBe(1);
    expect(await keepSite(base, toKeep({ revision: 1, text: "{}", changed: 2000 }))).toBe(2);
    const kept = await readKeptSite(base, "one");
    expect(kept).toMatchObject({ text: "{}", points: null, history: null });
    expect(kept?.head).toMatchObject({ name: "Field", revision: 2, changed: 2000, schemeId: "s" });
  });

  it("writes nothing on top of what another page has written", async () => {
    await keepSite(base, toKeep());
    await keepSite(base, toKeep({ revision: 1, text: "theirs" }));
    await expect(keepSite(base, toKeep({ revision: 1, text: "ours" }))).rejects.toThrow(
      ShelfConflict,
    );
    await expect(keepSite(base, toKeep({ revision: 0, text: "ours" }))).rejects.toThrow(
      ShelfConflict,
    );
    const kept = await readKeptSite(base, "one");
    expect(kept?.text).toBe("theirs");
    expect(kept?.head.revision).toBe(2);
  });

  it("lets only one of two that write at once through", async () => {
    await keepSite(base, toKeep());
    const both = await Promise.allSettled([
      keepSite(base, toKeep({ revision: 1, text: "a" })),
      keepSite(base, toKeep({ revision: 1, text: "b" })),
    ]);
    expect(both.map(({ status }) => status).sort()).toEqual(["fulfilled", "rejected"]);
  });

  it("does not write a site that was deleted meanwhile", async () => {
    await keepSite(base, toKeep());
    await removeSite(base, "one");
    await expect(keepSite(base, toKeep({ revision: 1 }))).rejects.toThrow(ShelfConflict);
    await purgeSites(base, Infinity);
    await expect(keepSite(base, toKeep({ revision: 1 }))).rejects.toThrow(ShelfConflict);
    expect(await listHeads(base)).toEqual([]);
  });

  it("leaves the time of the last edit when only the scheme that is shown changed", async () => {
    await keepSite(base, toKeep());
    await keepSite(base, toKeep({ revision: 1, changed: null, schemeId: "t" }));
    expect((await readKeptSite(base, "one"))?.head).toMatchObject({ changed: 1000, schemeId: "t" });
  });
});

describe("points that lie apart", () => {
  it("are written once, and let go when no site has them any more", async () => {
    await keepSite(base, toKeep({ points: points("p1") }));
    await keepSite(base, toKeep({ revision: 1, points: points("p1") }));
    expect(await stampsKept()).toEqual(["p1"]);
    const copy = await copySite(base, "one", "Field, copy", (text) => text);
    await keepSite(base, toKeep({ revision: 2, points: points("p2") }));
    expect(await stampsKept()).toEqual(["p1", "p2"]);
    expect((await readKeptSite(base, copy))?.head.stamp).toBe("p1");
    await removeSite(base, copy);
    await purgeSites(base, Infinity);
    expect(await stampsKept()).toEqual(["p2"]);
    await keepSite(base, toKeep({ revision: 3, points: null }));
    expect(await stampsKept()).toEqual([]);
  });

  it("are missed when they are gone", async () => {
    await keepSite(base, toKeep({ points: points("p1") }));
    await base.delete("points", "p1");
    await expect(readKeptSite(base, "one")).rejects.toThrow("points are missing");
  });
});

describe("the list", () => {
  it("has the site changed last first, and its picture", async () => {
    await keepSite(base, toKeep());
    await keepSite(base, toKeep({ id: "two", name: "Bank", changed: 5000 }));
    await keepPicture(base, "two", new Blob(["x"]));
    await keepPicture(base, "nowhere", new Blob(["x"]));
    expect((await listHeads(base)).map(({ id }) => id)).toEqual(["two", "one"]);
    expect([...(await listPictures(base)).keys()]).toEqual(["two"]);
  });

  it("gives back what was deleted until it is purged", async () => {
    await keepSite(base, toKeep());
    await removeSite(base, "one");
    expect(await listHeads(base)).toEqual([]);
    expect(await readKeptSite(base, "one")).toBeNull();
    await purgeSites(base, Date.now() - 60_000);
    await restoreSite(base, "one");
    expect((await readKeptSite(base, "one"))?.text).toBe('{"name":"Field"}');
    await removeSite(base, "one");
    await purgeSites(base, Date.now());
    await expect(restoreSite(base, "one")).rejects.toThrow("gone");
    expect(await base.count("texts")).toBe(0);
  });

  it("knows the very same site again", async () => {
    await addSite(base, { name: "Field", text: "{}", schemeId: "" });
    const [head] = await listHeads(base);
    expect(await sameSite(base, "Field", "{}")).toBe(head?.id);
    expect(await sameSite(base, "Field", "{ }")).toBeNull();
    await removeSite(base, head?.id ?? "");
    expect(await sameSite(base, "Field", "{}")).toBeNull();
  });
});

describe("the last steps of a site", () => {
  const site = plainSite({ works: [plainTank()] });
  const named = renameSite(site, "Bank");
  const history = record(startHistory(site), named, "name of the site");

  it("come back sharing what did not change", async () => {
    await keepSite(base, toKeep({ history }));
    const kept = (await readKeptSite(base, "one"))?.history;
    expect(kept).toEqual(history);
    expect(kept?.past[0]?.site.survey).toBe(kept?.present.survey);
  });

  it("get a step more by renaming on the list, and are no use once the site moved on", async () => {
    await keepSite(base, toKeep({ history }));
    await renameKept(base, "one", "Hill", {
      named: () => '{"name":"Hill"}',
      stepped: (one) => record(one, renameSite(one.present, "Hill"), "name of the site"),
    });
    const kept = await readKeptSite(base, "one");
    expect(kept?.head).toMatchObject({ name: "Hill", revision: 2 });
    const steps = kept?.history ?? startHistory(site);
    expect(steps.present.name).toBe("Hill");
    expect(undo(steps).present.name).toBe("Bank");
    await base.put("histories", { revision: 1, history }, "one");
    expect((await readKeptSite(base, "one"))?.history).toBeNull();
  });
});

describe("what version 1 kept", () => {
  const V1 = { text: '{"name":"Old Field"}', schemeId: "gravity", theme: "dark" };

  async function versionOne(put: Record<string, unknown>): Promise<ShelfBase> {
    const old = await openDB(`${name}-old`, 1, {
      upgrade: (made) => void made.createObjectStore("desk"),
    });
    for (const [key, value] of Object.entries(put)) await old.put("desk", value, key);
    old.close();
    return openBase(`${name}-old`);
  }

  it("becomes the first site of the list, open, with the theme a setting of the device", async () => {
    base = await versionOne({ "open-site": V1 });
    const [head] = await listHeads(base);
    expect(head).toMatchObject({ name: "Old Field", revision: 1, schemeId: "gravity" });
    expect((await readKeptSite(base, head?.id ?? ""))?.text).toBe(V1.text);
    expect(await readSetting(base, "theme")).toBe("dark");
    expect(await readSetting(base, "open")).toEqual({ site: head?.id });
  });

  it("keeps the points of a large survey with it", async () => {
    base = await versionOne({
      "open-site": { ...V1, stamp: "p" },
      "open-site-points": { stamp: "p", points: new Blob(["[1,2]"]) },
    });
    const [head] = await listHeads(base);
    const kept = await readKeptSite(base, head?.id ?? "");
    expect(await stampsKept()).toEqual(["p"]);
    expect(kept?.points).not.toBeNull();
  });

  it("keeps a text that is damaged, and points that are not its own", async () => {
    base = await versionOne({
      "open-site": { ...V1, text: "{oops" },
      "open-site-points": { stamp: "other", points: new Blob(["[]"]) },
    });
    const [head] = await listHeads(base);
    expect(head?.name).toBe("Site without a name");
    expect((await readKeptSite(base, head?.id ?? ""))?.text).toBe("{oops");
    expect(await stampsKept()).toEqual(["other"]);
  });

  it("may be nothing", async () => {
    base = await versionOne({});
    expect(await listHeads(base)).toEqual([]);
    await keepSetting(base, "theme", "light");
    expect(await readSetting(base, "theme")).toBe("light");
  });
});
