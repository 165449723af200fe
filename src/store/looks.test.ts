import { describe, expect, it } from "vitest";
import { PLAIN_LOOKS, readLooks } from "./looks.js";

describe("readLooks", () => {
  it("gives back what was kept", () => {
    const kept = { ...PLAIN_LOOKS, depths: true, contourStep: 0.5, heights: "off" as const };
    expect(readLooks(JSON.stringify(kept))).toEqual(kept);
  });

  it("is plain on a new device, and where what was kept is not ours", () => {
    for (const text of [null, "{", "7", "null", `{"depths":3,"contourStep":-1,"heights":"up"}`]) {
      expect(readLooks(text)).toEqual(PLAIN_LOOKS);
    }
  });
});
