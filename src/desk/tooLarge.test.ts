import { describe, expect, it } from "vitest";
import { MOST_SITE_BYTES, sizeFault } from "./tooLarge.js";

describe("a file that is too large", () => {
  it("is told with its size and the limit, rounded up so that the two never look alike", () => {
    expect(sizeFault(MOST_SITE_BYTES, MOST_SITE_BYTES)).toBeNull();
    expect(sizeFault(MOST_SITE_BYTES + 1, MOST_SITE_BYTES)).toEqual({
      size: "301 MB",
      most: "300 MB",
    });
  });
});
