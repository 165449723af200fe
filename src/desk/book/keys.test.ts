import { describe, expect, it } from "vitest";
import { isPress, keyTable, printPress, shortKey } from "./keys.js";

const table = keyTable({ small: "10 cm", far: "1 m" });

const event = (key: string, ...held: ("ctrl" | "meta" | "alt" | "shift")[]) => ({
  key,
  ctrlKey: held.includes("ctrl"),
  metaKey: held.includes("meta"),
  altKey: held.includes("alt"),
  shiftKey: held.includes("shift"),
});

/** Rows that listen on the page and take this event. */
const taking = (one: ReturnType<typeof event>): string[] =>
  table
    .filter(({ run, presses }) => run && presses.some((press) => isPress(press, one)))
    .map(({ id }) => id);

describe("the table of keys", () => {
  it("gives every key that the page listens for to one row only", () => {
    for (const { run, presses } of table) {
      if (run === undefined) continue;
      for (const { key, mod, shift } of presses) {
        const held = [...(mod ? ["ctrl" as const] : []), ...(shift ? ["shift" as const] : [])];
        expect(taking(event(key, ...held))).toHaveLength(1);
      }
    }
    expect(new Set(table.map(({ id }) => id)).size).toBe(table.length);
  });

  it("tells what is held apart", () => {
    expect(taking(event("z", "ctrl"))).toEqual(["undo"]);
    expect(taking(event("Z", "meta", "shift"))).toEqual(["redo"]);
    expect(taking(event("z"))).toEqual([]);
    expect(taking(event("z", "ctrl", "alt"))).toEqual([]);
    expect(taking(event("ArrowUp"))).toEqual(["nudge"]);
    expect(taking(event("ArrowUp", "shift"))).toEqual(["nudge-far"]);
    expect(taking(event("ArrowUp", "ctrl"))).toEqual([]);
    // "?" needs Shift on many keyboards and on others not.
    expect(taking(event("?", "shift"))).toEqual(["keys"]);
    expect(taking(event("?"))).toEqual(["keys"]);
    expect(taking(event("Escape", "shift"))).toEqual(["let-go"]);
    expect(taking(event("Delete", "ctrl"))).toEqual([]);
  });

  it("prints for the machine", () => {
    expect(printPress({ key: "z", mod: true, shift: true }, false)).toEqual(["Ctrl", "Shift", "Z"]);
    expect(printPress({ key: "z", mod: true, shift: true }, true)).toEqual(["⌘", "⇧", "Z"]);
    expect(shortKey("undo", false)).toBe("Ctrl+Z");
    expect(shortKey("undo", true)).toBe("⌘Z");
    expect(shortKey("nothing", true)).toBeNull();
  });
});
