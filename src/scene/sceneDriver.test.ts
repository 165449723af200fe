import { describe, expect, it } from "vitest";
import { cornersOf, type Corners, type Site } from "../site/index.js";
import { plainPad, plainSite, plainTank, plainTrench } from "../site/site.fixture.js";
import type { Grip } from "./dragging.js";
import { legsAt } from "./drawnFigures.js";
import type { Selection } from "./props.js";
import { SceneDriver, type DrivenScene } from "./sceneDriver.fixture.js";
import type { SnapTarget } from "./snap.js";

const pad: Selection = { kind: "work", id: "pad" };
const trench: Selection = { kind: "work", id: "trench" };
const tank: Selection = { kind: "work", id: "tank" };
const site: Site = plainSite({ works: [plainPad(), plainTrench(), plainTank()] });
const shed: SnapTarget = {
  name: "Shed",
  shape: "outline",
  places: [
    [6, 6],
    [9, 6],
    [9, 8],
    [6, 8],
  ],
};

/** A driver with one corner, side or the whole of a work pressed. */
function pressed(selection: Selection, grip: Grip, scene: DrivenScene = {}): SceneDriver {
  const corners = cornersOf(site, "plan", selection) ?? undefined;
  const places = corners?.places ?? [[0, 0]];
  const next = grip.part === "side" ? places[(grip.side + 1) % places.length]! : places[0]!;
  const place: [number, number] =
    grip.part === "corner"
      ? [...places[grip.index]!]
      : grip.part === "side"
        ? [(places[grip.side]![0] + next[0]) / 2, (places[grip.side]![1] + next[1]) / 2]
        : [...places[0]!];
  return new SceneDriver(scene).press(selection, grip, place, corners && { corners });
}

function cornersNow(selection: Selection): Corners {
  const corners = cornersOf(site, "plan", selection);
  if (corners === null) throw new Error(`got no corners of ${selection.id}, expected some`);
  return corners;
}

const names = (driver: SceneDriver): string[] => driver.calls.map(({ call }) => call);
/** The latest move that was told. */
function moved(driver: SceneDriver) {
  const last = driver.calls.findLast((one) => one.call === "move");
  if (last?.call !== "move") throw new Error(`got ${names(driver).join()}, expected a move`);
  return last;
}

describe("a corner", () => {
  it("is chosen by a press that goes nowhere", () => {
    const driver = pressed(pad, { part: "corner", index: 2 }).release();
    expect(driver.calls).toEqual([{ call: "corner", selection: pad, index: 2 }]);
  });

  it("moves from where it was pressed, held by the right angle, and is chosen at the end", () => {
    const driver = pressed(pad, { part: "corner", index: 2 }).move([4, 3]).move([3.02, 4.03]);
    expect(moved(driver).move).toEqual({
      selection: pad,
      corner: 2,
      by: [expect.closeTo(0, 9), expect.closeTo(2.05, 9)],
    });
    expect(moved(driver).held?.holds).toEqual([{ by: "square" }]);
    driver.release();
    expect(names(driver)).toEqual(["begin", "move", "move", "end", "corner"]);
    expect(driver.calls.at(0)).toMatchObject({ part: "corner" });
    expect(driver.calls.at(-2)).toEqual({ call: "end", cancelled: false });
  });

  it("goes back when the drag is cancelled by Escape, and nothing more is told", () => {
    const driver = pressed(pad, { part: "corner", index: 0 }).move([-6, -5]).key("Escape");
    expect(driver.calls.at(-1)).toEqual({ call: "end", cancelled: true });
    driver.move([4, 4]).release();
    expect(names(driver)).toEqual(["begin", "move", "end"]);
    expect(driver.drag.phase).toBe("idle");
  });

  it("tells nothing when Escape comes before the drag began", () => {
    expect(pressed(pad, { part: "corner", index: 0 }).key("Escape").release().calls).toEqual([]);
  });

  it("goes on a corner of another thing, and free of it with Alt or with snapping off", () => {
    const scene = { targets: [shed] };
    const grip: Grip = { part: "corner", index: 2 };
    const held = moved(pressed(pad, grip, scene).move([6.04, 5.97]));
    expect(held.move.by).toEqual([3, 4]);
    expect(held.held?.holds[0]).toMatchObject({ by: "corner", of: "Shed" });
    for (const free of [
      pressed(pad, grip, scene).move([6.04, 5.97], true),
      pressed(pad, grip, { ...scene, snapping: false }).move([6.04, 5.97]),
    ]) {
      expect(moved(free).move.by.map((m) => +m.toFixed(9))).toEqual([3.04, 3.97]);
      expect(moved(free).held).toBeNull();
    }
  });

  it("shows the lengths of the two sides that meet at it, or the one of a path's end", () => {
    const corners = cornersNow(pad);
    const sides = legsAt(
      corners,
      moved(pressed(pad, { part: "corner", index: 0 }).move([-3, -5])).move,
    );
    expect(sides.map(({ length }) => +length.toFixed(6))).toEqual([
      7,
      +Math.hypot(6, 3).toFixed(6),
    ]);
    const path = cornersNow(trench);
    const end = legsAt(
      path,
      moved(pressed(trench, { part: "corner", index: 1 }).move([6, 0])).move,
    );
    expect(end.map(({ length }) => length)).toEqual([11]);
  });
});

describe("a new corner", () => {
  it("is made by a press on a side's handle, in one step of the history", () => {
    const driver = pressed(pad, { part: "side", side: 3 }).release();
    expect(names(driver)).toEqual(["begin", "move", "end", "corner"]);
    expect(moved(driver).move).toEqual({
      selection: pad,
      by: [0, 0],
      onSide: { side: 3, at: [-3, 0] },
    });
    expect(driver.calls.at(-1)).toEqual({ call: "corner", selection: pad, index: 4 });
  });

  it("is dragged out of a side, and gone when that is cancelled", () => {
    const driver = pressed(trench, { part: "side", side: 0 }).move([0.02, 3.01]);
    expect(moved(driver).move.onSide).toEqual({ side: 0, at: [0, 0] });
    const by = moved(driver).move.by.map((m) => +m.toFixed(9));
    expect(by).toEqual([0, 3]);
    driver.key("Escape");
    expect(names(driver)).toEqual(["begin", "move", "end"]);
    expect(driver.calls.at(-1)).toEqual({ call: "end", cancelled: true });
  });

  it("shows the lengths of its two sides", () => {
    const driver = pressed(trench, { part: "side", side: 0 }).move([0, 5]);
    const sides = legsAt(cornersNow(trench), moved(driver).move);
    expect(sides.map(({ length }) => +length.toFixed(6))).toEqual([7.071068, 7.071068]);
  });
});

describe("a whole work", () => {
  it("brings its nearest corner on another's, measured from the snapshot of the press", () => {
    const driver = pressed(pad, { part: "body" }, { targets: [shed] });
    // Its north-east corner (3, 2) comes near (6, 6), however it got there.
    driver.move([40, 40]).move([0.06, 2.03]);
    expect(moved(driver).move).toEqual({ selection: pad, by: [3, 4] });
    expect(names(driver.release())).toEqual(["begin", "move", "move", "end"]);
  });

  it("is selected, not moved, by a press that goes nowhere; a press off the ground moves nothing", () => {
    expect(names(pressed(tank, { part: "body" }).release())).toEqual(["select"]);
    expect(names(pressed(tank, { part: "body" }).move(null).release())).toEqual(["begin", "end"]);
  });

  it("turns by steps that no corner holds", () => {
    const grip: Grip = { part: "turn", centre: [0, 0], bearing: 0 };
    const driver = new SceneDriver({ targets: [shed] })
      .press(tank, grip, [0, 6])
      .move([6.02, 6.01]);
    expect(moved(driver).move.turnTo).toBe(45);
    expect(moved(driver).held).toBeNull();
  });
});
