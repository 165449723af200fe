import { describe, expect, it } from "vitest";
import { isPageAddress } from "./pageAddress.js";

const SCOPE = "https://example.test/tools/bankyard/";

describe("the address of the page", () => {
  it.each(["", "index.html", "?x=1", "#y", "open?file=a.json"])("is %j in its folder", (rest) => {
    expect(isPageAddress(SCOPE + rest, SCOPE)).toBe(true);
  });

  it.each(["pictures/desk-light.png", "own.site.json", "deeper/", "deeper/index.html"])(
    "is not %j",
    (rest) => {
      expect(isPageAddress(SCOPE + rest, SCOPE)).toBe(false);
    },
  );

  it("is not in another folder", () => {
    expect(isPageAddress("https://example.test/tools/", SCOPE)).toBe(false);
  });
});
