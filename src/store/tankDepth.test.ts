import { describe, expect, it } from "vitest";
import {
  changeWork,
  mark,
  moveWork,
  pass,
  raiseWork,
  record,
  startHistory,
} from "../site/index.js";
import { plainSite, plainTank } from "../site/site.fixture.js";
import { tankDepth, withDepthKept } from "./tankDepth.js";

// Falls 0.1 per m to the east; the tank's top is at 99.5, its middle at the origin.
const site = plainSite({ height: (x) => 100 - 0.1 * x, works: [plainTank()] });
const moved = (by: number) => moveWork(site, "plan", "tank", [by, 0]);
const depth = (history: ReturnType<typeof startHistory>) => tankDepth(history, "plan", "tank");

describe("a tank's depth where it was moved to", () => {
  it("is its cover alone while it stands where its level was set", () => {
    expect(depth(startHistory(site))).toEqual({ cover: 0.5, moved: null });
  });

  it("tells how the ground changed since, over several moves and within a drag", () => {
    const once = record(startHistory(site), moved(3), "move");
    const twice = record(once, moved(8), "move");
    expect(depth(twice)?.cover).toBeCloseTo(-0.3, 9);
    expect(depth(twice)?.moved?.from).toEqual([0, 0]);
    expect(depth(twice)?.moved?.rise).toBeCloseTo(-0.8, 9);
    const dragged = pass(mark(startHistory(site), "drag"), moved(3));
    expect(depth(dragged)?.moved?.rise).toBeCloseTo(-0.3, 9);
  });

  it("is silent for less than 5 mm, and once the level is set anew", () => {
    expect(depth(record(startHistory(site), moved(0.04), "move"))?.moved).toBeNull();
    expect(depth(record(startHistory(site), moved(0.06), "move"))?.moved).not.toBeNull();
    const once = record(startHistory(site), moved(8), "move");
    const set = record(once, raiseWork(once.present, "plan", "tank", 0.1), "raise");
    expect(depth(set)?.moved).toBeNull();
  });

  it("is kept by moving the underside likewise", () => {
    const once = record(startHistory(site), moved(8), "move");
    const change = depth(once)?.moved;
    if (!change) throw new Error("expected a change of the ground");
    const kept = record(once, withDepthKept(once.present, "plan", "tank", change), "keep");
    expect(depth(kept)?.cover).toBeCloseTo(0.5, 9);
    expect(depth(kept)?.moved).toBeNull();
    expect(changeWork(kept.present, "plan", "tank", (work) => work)).toBe(kept.present);
  });
});
