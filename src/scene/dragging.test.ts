import { describe, expect, it } from "vitest";
import {
  IDLE,
  stepDrag,
  type DragCall,
  type DragEvent,
  type DragState,
  type Press,
  raiseMove,
} from "./dragging.js";

const press: Press = {
  selection: { kind: "work", id: "tank-1" },
  grip: { part: "body" },
  grabbed: [10.03, 20.04],
  place: [10, 20.02],
  screen: { left: 100, top: 100 },
  movable: true,
  threshold: 4,
};

const move = (at: [number, number] | null, left: number, step = 0.1): DragEvent => ({
  type: "move",
  at,
  screen: { left, top: 100 },
  step,
  turnStep: 5,
});

/** Runs events from idle and gathers every call. */
function run(...events: DragEvent[]): { state: DragState; calls: DragCall[] } {
  let state: DragState = IDLE;
  const calls: DragCall[] = [];
  for (const event of events) {
    const next = stepDrag(state, event);
    state = next.state;
    calls.push(...next.calls);
  }
  return { state, calls };
}

describe("stepDrag", () => {
  it("selects on a press that does not move past the threshold", () => {
    const { calls, state } = run({ type: "press", press }, move([11, 20], 103), {
      type: "release",
    });
    expect(calls).toEqual([{ call: "select", selection: press.selection }]);
    expect(state).toEqual(IDLE);
  });

  it("begins once, moves from the snapshot, and ends", () => {
    const { calls } = run(
      { type: "press", press },
      move([11.03, 20.04], 120),
      move([12.03, 20.04], 140),
      { type: "release" },
    );
    expect(calls.map((c) => c.call)).toEqual(["begin", "move", "move", "end"]);
    const last = calls[2];
    if (last?.call !== "move") throw new Error("expected a move");
    // The place, and not the offset, lies on the step: 10 + 2 → 12; 20.02 → 20.0.
    expect(last.move.by[0]).toBeCloseTo(2, 9);
    expect(last.move.by[1]).toBeCloseTo(-0.02, 9);
    expect(calls[3]).toEqual({ call: "end", cancelled: false });
  });

  it("gives the bare offset when the step is 0", () => {
    const { calls } = run({ type: "press", press }, move([11.07, 20.1], 120, 0));
    const moved = calls[1];
    if (moved?.call !== "move") throw new Error("expected a move");
    expect(moved.move.by[0]).toBeCloseTo(1.04, 9);
    expect(moved.move.by[1]).toBeCloseTo(0.06, 9);
  });

  it("ends as cancelled on Escape, and ignores what comes after", () => {
    const { calls, state } = run(
      { type: "press", press },
      move([12, 20], 140),
      { type: "cancel" },
      move([15, 20], 200),
      { type: "release" },
    );
    expect(calls.map((c) => c.call)).toEqual(["begin", "move", "end"]);
    expect(calls[2]).toEqual({ call: "end", cancelled: true });
    expect(state).toEqual(IDLE);
  });

  it("tells nothing when a press that never moved is cancelled", () => {
    expect(run({ type: "press", press }, { type: "cancel" }).calls).toEqual([]);
  });

  it("holds the last place while the pointer is off the ground", () => {
    const { calls } = run({ type: "press", press }, move([12, 20], 140), move(null, 400));
    expect(calls.filter((c) => c.call === "move")).toHaveLength(1);
  });

  it("leaves the pointer to the orbit when the thing may not be dragged", () => {
    const fixed = { ...press, movable: false };
    expect(
      run({ type: "press", press: fixed }, move([12, 20], 140), { type: "release" }).calls,
    ).toEqual([]);
    expect(run({ type: "press", press: fixed }, { type: "release" }).calls).toHaveLength(1);
  });

  it("closes an open drag before a second press", () => {
    const { calls } = run({ type: "press", press }, move([12, 20], 140), { type: "press", press });
    expect(calls.at(-1)).toEqual({ call: "end", cancelled: true });
  });

  it("turns by the angle that the pointer went round the centre, to 5°", () => {
    const turning: Press = {
      ...press,
      grip: { part: "turn", centre: [0, 0], bearing: 350 },
      grabbed: [0, 5],
    };
    const { calls } = run({ type: "press", press: turning }, move([5, 5.1], 140));
    const moved = calls[1];
    if (moved?.call !== "move") throw new Error("expected a move");
    // North to a little under north-east is 44.4°: 350 + 44.4 = 394.4, to the nearest 5 is 395 = 35.
    expect(moved.move.turnTo).toBe(35);
  });

  it("names the corner that is dragged", () => {
    const corner: Press = { ...press, grip: { part: "corner", index: 2 } };
    const { calls } = run({ type: "press", press: corner }, move([12, 20], 140));
    expect(calls[1]).toMatchObject({ call: "move", move: { corner: 2 } });
  });
});

describe("raising", () => {
  const press = {
    selection: { kind: "work" as const, id: "tank" },
    grip: { part: "raise" as const, height: 98.03, perMetre: 20 },
    grabbed: [0, 0] as [number, number],
    place: [0, 0] as [number, number],
    screen: { left: 100, top: 300 },
    movable: true,
    threshold: 4,
  };

  it("goes by the screen's vertical alone, and snaps the elevation, not the rise", () => {
    const up = raiseMove(press, { left: 400, top: 290 }, 0.05);
    expect(98.03 + (up.raise ?? NaN)).toBeCloseTo(98.55, 9);
    expect(raiseMove(press, { left: 0, top: 310 }).raise).toBeCloseTo(-0.5, 9);
    expect(up.by).toEqual([0, 0]);
  });

  it("does nothing where a metre up is no way on the screen", () => {
    const flat = { ...press, grip: { ...press.grip, perMetre: 0 } };
    expect(raiseMove(flat, { left: 0, top: 0 }, 0.05).raise).toBe(0);
  });

  it("is a drag of its own that needs no ground under the pointer, and can be given up", () => {
    const pressed = stepDrag({ phase: "idle" }, { type: "press", press }).state;
    const screen = { left: 100, top: 280 };
    const moved = stepDrag(pressed, { type: "move", at: null, screen, step: 0, turnStep: 0 });
    expect(moved.calls).toMatchObject([
      { call: "begin", part: "raise" },
      { call: "move", move: { raise: 1 } },
    ]);
    expect(stepDrag(moved.state, { type: "cancel" }).calls).toEqual([
      { call: "end", cancelled: true },
    ]);
  });
});
