import { describe, expect, it } from "vitest";
import { ROOT } from "../../src/cli/prepare.mjs";
import { findCycle, importGraph } from "./import-graph.js";

describe("the cycle finder", () => {
  it("finds a cycle that is not reached first", () => {
    const graph = new Map([
      ["a", ["b", "package"]],
      ["b", ["c", "d"]],
      ["c", []],
      ["d", ["e"]],
      ["e", ["b"]],
    ]);
    expect(findCycle(graph)).toEqual(["b", "d", "e", "b"]);
  });

  it("finds a file that imports itself", () => {
    expect(findCycle(new Map([["a", ["a"]]]))).toEqual(["a", "a"]);
  });

  it("does not take two ways to one file for a cycle", () => {
    const graph = new Map([
      ["a", ["b", "c"]],
      ["b", ["d"]],
      ["c", ["d"]],
      ["d", []],
    ]);
    expect(findCycle(graph)).toBeNull();
  });
});

describe("the files of src", () => {
  const graph = importGraph(ROOT, "src");

  it("are read with their imports, type imports included", () => {
    expect(graph.get("src/site/index.ts")).toContain("src/site/schema.ts");
    expect(graph.get("src/dig/types.ts")).toContain("src/site/index.ts");
  });

  it("import each other without a cycle", () => {
    expect(findCycle(graph)).toBeNull();
  });

  it.each(["delaunator", "flatbush"])("import %s in one adapter at most", (library) => {
    const importers = [...graph].filter(([, imports]) => imports.includes(library));
    const adapters = importers.map(([file]) => file).filter((file) => !/\.test\./.test(file));
    expect(adapters.length, adapters.join(", ")).toBeLessThanOrEqual(1);
  });
});
