import { describe, expect, it } from "vitest";
import {
  commit,
  mark,
  MOST_STEPS,
  pass,
  record,
  redo,
  redoName,
  restore,
  startHistory,
  stepsOf,
  stepTo,
  undo,
  undoName,
} from "./history.js";
import type { Site } from "./schema.js";

const named = (name: string): Site => ({
  format: "bankyard-site",
  version: 1,
  name,
  units: "us",
  currency: "USD",
  survey: { points: [] },
  ground: { layers: [], probes: [] },
  schemes: [],
});

describe("history", () => {
  it("takes edits back and brings them forward, by name", () => {
    const [a, b, c] = [named("a"), named("b"), named("c")];
    let history = record(record(startHistory(a), b, "to b"), c, "to c");
    expect(undoName(history)).toBe("to c");
    history = undo(undo(history));
    expect(history.present).toBe(a);
    expect(undoName(history)).toBeNull();
    expect(redoName(history)).toBe("to b");
    expect(undo(history)).toBe(history);
    history = redo(redo(history));
    expect(history.present).toBe(c);
    expect(redo(history)).toBe(history);
  });

  it("forgets what was undone once something else is done", () => {
    const history = record(
      undo(record(startHistory(named("a")), named("b"), "b")),
      named("c"),
      "c",
    );
    expect(history.future).toEqual([]);
    expect(undo(history).present.name).toBe("a");
  });

  it("makes one step of a drag", () => {
    let history = mark(startHistory(named("a")), "move");
    for (let step = 0; step < 50; step += 1) history = pass(history, named(`on the way ${step}`));
    history = commit(history);
    expect(history.past.length).toBe(1);
    expect(undo(history).present.name).toBe("a");
  });

  it("goes back to the mark on cancel, and counts a drag that changed nothing as no step", () => {
    const start = startHistory(named("a"));
    const cancelled = restore(pass(mark(start, "move"), named("b")));
    expect(cancelled.present).toBe(start.present);
    expect(cancelled.past).toEqual([]);
    expect(commit(mark(start, "move")).past).toEqual([]);
    expect(record(start, start.present, "nothing").past).toEqual([]);
  });

  it("keeps what can be redone when a drag is cancelled", () => {
    const undone = undo(record(startHistory(named("a")), named("b"), "b"));
    const history = restore(pass(mark(undone, "move"), named("c")));
    expect(redo(history).present.name).toBe("b");
  });

  it("undo during a drag goes back to where the drag began", () => {
    const before = record(startHistory(named("a")), named("b"), "b");
    const history = undo(pass(mark(before, "move"), named("c")));
    expect(history.present.name).toBe("b");
    expect(history.past.length).toBe(1);
  });

  it("keeps the last 200 steps", () => {
    let history = startHistory(named("0"));
    for (let count = 1; count <= MOST_STEPS + 5; count += 1) {
      history = record(history, named(String(count)), "edit");
    }
    expect(history.past.length).toBe(MOST_STEPS);
    expect(history.past[0]?.site.name).toBe("5");
  });

  it("refuses a passing update outside a drag", () => {
    expect(() => pass(startHistory(named("a")), named("b"))).toThrow(/mark/);
  });

  it("goes straight to any step, and from any to any other as undo and redo would", () => {
    const sites = ["a", "b", "c", "d"].map(named);
    const history = sites
      .slice(1)
      .reduce((now, site) => record(now, site, `to ${site.name}`), startHistory(sites[0]!));
    expect(stepsOf(history).map((step) => step.name)).toEqual([null, "to b", "to c", "to d"]);
    for (const from of sites.keys()) {
      for (const to of sites.keys()) {
        const gone = stepTo(stepTo(history, from), to);
        expect(gone.present).toBe(sites[to]);
        expect(gone.past.length).toBe(to);
        expect(stepsOf(gone)).toEqual(stepsOf(history));
      }
    }
    expect(stepTo(history, 3)).toBe(history);
    for (const index of [-1, 4, 0.5, Number.NaN]) expect(stepTo(history, index)).toBe(history);
  });

  it("gives up a drag under way when it goes to another step", () => {
    const dragging = pass(
      mark(record(startHistory(named("a")), named("b"), "to b"), "move"),
      named("halfway"),
    );
    const gone = stepTo(dragging, 0);
    expect(gone.present.name).toBe("a");
    expect(stepsOf(gone).map(({ site }) => site.name)).toEqual(["a", "b"]);
  });
});
