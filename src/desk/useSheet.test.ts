import { describe, expect, it } from "vitest";
import { nextStop } from "./useSheet.js";

describe("a phone's sheet", () => {
  it("goes up and down one stop at a time and stays at its ends", () => {
    expect(nextStop("down", "up")).toBe("half");
    expect(nextStop("half", "up")).toBe("up");
    expect(nextStop("up", "up")).toBe("up");
    expect(nextStop("up", "down")).toBe("half");
    expect(nextStop("half", "down")).toBe("down");
    expect(nextStop("down", "down")).toBe("down");
  });
});
