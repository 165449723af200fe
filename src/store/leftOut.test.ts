import { afterEach, describe, expect, it, vi } from "vitest";
import type * as HandoverDesk from "./handoverDesk.js";
import { readLeftOut } from "./handoverDesk.js";

afterEach(() => {
  vi.unstubAllGlobals();
  vi.resetModules();
});

/** The desk as a page that is loaded anew has it. */
const reloaded = async (): Promise<typeof HandoverDesk> => {
  vi.resetModules();
  return await import("./handoverDesk.js");
};

describe("what the page and the link are made without", () => {
  it("is the same after a reload", async () => {
    const kept = new Map<string, string>();
    vi.stubGlobal("localStorage", {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, text: string) => void kept.set(key, text),
    });
    const before = await reloaded();
    before.leaveOut("names", true);
    expect((await reloaded()).useHandover.getState().leftOut).toEqual(["names"]);
    before.leaveOut("names", false);
    expect((await reloaded()).useHandover.getState().leftOut).toEqual([]);
  });

  it("holds until the page is left where the browser keeps nothing, and says so", async () => {
    vi.stubGlobal("localStorage", {
      getItem: () => null,
      setItem: () => {
        throw new Error("full");
      },
    });
    const { leaveOut, useHandover } = await reloaded();
    leaveOut("costs", true);
    expect(useHandover.getState()).toMatchObject({ leftOut: ["costs"], isLeftOutKept: false });
  });

  it("passes over what is not a choice of ours", () => {
    for (const text of [null, "{", "7", "null", '["prices"]'])
      expect(readLeftOut(text)).toEqual([]);
  });
});
