import { describe, expect, it } from "vitest";
import { copyName, fileName, freshKey, uniqueFileNames } from "./names.js";

describe("names of sites", () => {
  it("makes keys that differ", () => {
    const keys = new Set(Array.from({ length: 200 }, freshKey));
    expect(keys.size).toBe(200);
    for (const key of keys) expect(key).toMatch(/^[0-9a-f]{32}$/);
  });

  it("counts copies, and a copy of a copy among them", () => {
    expect(copyName("Upper Field", ["Upper Field"])).toBe("Upper Field, copy");
    expect(copyName("Upper Field", ["upper field, COPY"])).toBe("Upper Field, copy 2");
    const taken = ["Upper Field", "Upper Field, copy", "Upper Field, copy 2"];
    expect(copyName("Upper Field, copy 2", taken)).toBe("Upper Field, copy 3");
  });

  it("makes a file name of any site's name", () => {
    expect(fileName("Upper Field / East")).toBe("upper-field-east.site.json");
    expect(fileName("Älvåsen 3")).toBe("älvåsen-3.site.json");
    expect(fileName("…")).toBe("site.site.json");
    expect(fileName("a".repeat(300)).length).toBeLessThan(80);
    expect(fileName("../../etc")).toBe("etc.site.json");
  });

  it("gives no two sites one file name, in their order", () => {
    const names = ["Field", "field!", "Field 2", "Field"];
    const files = uniqueFileNames(names);
    expect(new Set(files).size).toBe(4);
    expect(files.slice(0, 2)).toEqual(["field.site.json", "field-2.site.json"]);
  });
});
