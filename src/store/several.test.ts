import { beforeEach, describe, expect, it } from "vitest";
import { estimate, joinedEnds } from "../estimate/index.js";
import { hasMark, readSite, setMark } from "../site/index.js";
import type { Work } from "../site/index.js";
import type { Picked } from "./deskState.js";
import { examples } from "./examples.js";
import { useDesk } from "./siteStore.js";

const read = readSite(await examples[0]!.read());
const desk = useDesk.getState;
const history = () => {
  const now = desk().history;
  if (now === null) throw new Error("expected an open site, got none");
  return now;
};
const works = (): readonly Work[] =>
  history().present.schemes.find((scheme) => scheme.id === desk().schemeId)?.works ?? [];
const stepNames = () => history().past.map((step) => step.name);
const first = (kind: Work["kind"]): Picked => {
  const work = works().find((one) => one.kind === kind);
  if (work === undefined) throw new Error(`expected a ${kind} in the first example, got none`);
  return { kind: "work", id: work.id };
};

describe("several picked on the desk", () => {
  beforeEach(async () => {
    if (!read.ok) throw new Error("expected the first example to open");
    useDesk.setState({ history: null, selected: null, also: [], several: false });
    await desk().startSite(read.value);
  });

  it("are gathered by taps that add, and let go by a plain one", () => {
    const [tank, trench] = [first("tank"), first("trench")];
    desk().pick(tank, false);
    desk().pick(trench, true);
    expect([desk().selected, desk().also]).toEqual([trench, [tank]]);
    desk().pick(null, true);
    expect(desk().also).toEqual([tank]);
    desk().pick(tank, false);
    expect([desk().selected, desk().also]).toEqual([tank, []]);
    desk().setSeveral(true);
    desk().pick(trench, false);
    expect(desk().also).toEqual([tank]);
    desk().setSeveral(false);
    expect([desk().selected, desk().also]).toEqual([trench, [tank]]);
    desk().pick(null, false);
    expect([desk().selected, desk().also]).toEqual([null, []]);
  });

  it("move in a drag as one step, and stay picked", () => {
    const [tank, trench] = [first("tank"), first("trench")];
    const before = history().present;
    desk().pickThese([tank, trench], false);
    desk().dragBegin(trench);
    desk().dragMove({ selection: trench, by: [0.5, 0] });
    desk().dragMove({ selection: trench, by: [1, 0] });
    desk().dragEnd(false);
    expect(stepNames()).toEqual(["move 2 works"]);
    expect([desk().selected, desk().also]).toEqual([trench, [tank]]);
    const was = before.schemes[0]?.works.find((work) => work.id === tank.id);
    const now = works().find((work) => work.id === tank.id);
    if (was?.kind !== "tank" || now?.kind !== "tank") throw new Error("expected the tank");
    expect(now.at[0] - was.at[0]).toBeCloseTo(1, 9);
    desk().undo();
    expect(history().present).toBe(before);
  });

  it("rise in a drag, and a drag given up leaves no step", () => {
    const tank = first("tank");
    const before = history().present;
    desk().pick(tank, false);
    desk().dragBegin(tank, "raise");
    desk().dragMove({ selection: tank, by: [0, 0], raise: 0.2 });
    expect(history().present).not.toBe(before);
    desk().dragEnd(true);
    expect(history().present).toBe(before);
    desk().raise(-0.2);
    const name = works().find((work) => work.id === tank.id)?.name ?? "no tank";
    expect(stepNames()).toEqual([`lower ${name}`]);
  });

  it("are removed, copied and moved by keys in one step each", () => {
    const count = works().length;
    desk().pickThese([first("tank"), first("bed")], false);
    desk().nudge([0.1, 0]);
    desk().moveBy([1, 1, 0.1]);
    desk().duplicateSelected();
    expect(works()).toHaveLength(count + 2);
    expect(new Set(works().map((work) => work.name)).size).toBe(count + 2);
    expect(desk().also).toHaveLength(1);
    desk().removeSelected();
    expect(works()).toHaveLength(count);
    expect(desk().selected).toBeNull();
    expect(stepNames()).toEqual([
      "nudge 2 works",
      "move 2 works",
      "copy 2 works",
      "remove 2 works",
    ]);
  });

  it("are all works of the scheme that are shown", () => {
    desk().mark("hidden", true, [first("tank")]);
    desk().pickAll();
    expect(1 + desk().also.length).toBe(works().length - 1);
  });

  it("keep a locked one where it is, whoever asks", () => {
    const [tank, bed] = [first("tank"), first("bed")];
    desk().mark("locked", true, [tank]);
    const before = history().present;
    desk().pick(tank, false);
    desk().dragBegin(tank);
    desk().dragMove({ selection: tank, by: [1, 0] });
    desk().dragEnd(false);
    desk().nudge([1, 0]);
    desk().raise(1);
    desk().removeSelected();
    desk().edit("depth", (site) => ({
      ...site,
      schemes: site.schemes.map((scheme) => ({
        ...scheme,
        works: scheme.works.map((work) => (work.kind === "tank" ? { ...work, base: 0 } : work)),
      })),
    }));
    expect(history().present).toBe(before);
    expect(desk().notice).toMatch(/^Locked: .*Unlock/);
    desk().pickThese([tank, bed], false);
    desk().removeSelected();
    expect(works().map((work) => work.id)).toContain(tank.id);
    expect(works().map((work) => work.id)).not.toContain(bed.id);
    expect(desk().selected).toEqual(tank);
  });

  it("are locked and hidden together, in steps that say so", () => {
    const two = [first("tank"), first("bed")];
    desk().pickThese(two, false);
    desk().mark("locked", true);
    desk().mark("hidden", true);
    desk().showAll();
    expect(stepNames()).toEqual(["lock 2 works", "hide 2 works", "show all"]);
    const site = history().present;
    expect(two.map((one) => hasMark(site, desk().schemeId, one, "locked"))).toEqual([true, true]);
    expect(two.map((one) => hasMark(site, desk().schemeId, one, "hidden"))).toEqual([false, false]);
  });

  it("are copied to another scheme at their places", () => {
    const site = history().present;
    const other = site.schemes.find((scheme) => scheme.id !== desk().schemeId);
    if (other === undefined) throw new Error("expected two schemes in the first example");
    desk().pickThese([first("tank"), first("bed")], false);
    desk().copyToScheme(other.id);
    const after = history().present.schemes.find((scheme) => scheme.id === other.id);
    expect(after?.works).toHaveLength(other.works.length + 2);
    expect(stepNames()).toEqual([`copy 2 works to ${other.name}`]);
  });
});

describe("marks and figures", () => {
  it("leave every figure as it was", () => {
    if (!read.ok) throw new Error("expected the first example to open");
    const site = read.value;
    const { id, works: all } = site.schemes[0]!;
    const things = all.map((work) => ({ kind: "work" as const, id: work.id }));
    const hidden = setMark(site, id, things, "hidden", true);
    const [was, now] = [
      estimate(site, id),
      estimate(setMark(hidden, id, things, "locked", true), id),
    ];
    expect(now.cost.total).toEqual(was.cost.total);
    expect(now.works.map((work) => work.cut)).toEqual(was.works.map((work) => work.cut));
    expect(joinedEnds(hidden.schemes[0]!, hidden.schemes[0]!.works[0]!)).toEqual(
      joinedEnds(site.schemes[0]!, all[0]!),
    );
  });
});
