import { describe, expect, it } from "vitest";
import { beginsByItself, rememberSeen } from "./touring.js";
import type { Memory } from "./touring.js";

function memory(): Memory {
  const kept = new Map<string, string>();
  return {
    getItem: (key) => kept.get(key) ?? null,
    setItem: (key, value) => void kept.set(key, value),
  };
}

describe("the tour", () => {
  it("begins by itself once on a device", () => {
    const device = memory();
    expect(beginsByItself("", false, device)).toBe(true);
    expect(rememberSeen(device)).toBe(true);
    expect(beginsByItself("", false, device)).toBe(false);
    expect(beginsByItself("?tour", false, device)).toBe(true);
  });

  it("stays away where a machine drives the page or nothing is remembered, unless asked for", () => {
    expect(beginsByItself("", true, memory())).toBe(false);
    expect(beginsByItself("?tour", true, memory())).toBe(true);
    expect(beginsByItself("", false, null)).toBe(false);
    expect(beginsByItself("?x=1&tour", false, null)).toBe(true);
  });

  it("says when it could not be remembered", () => {
    expect(rememberSeen(null)).toBe(false);
    const full: Memory = {
      getItem: () => null,
      setItem: () => {
        throw new Error("full");
      },
    };
    expect(rememberSeen(full)).toBe(false);
  });
});
