import { describe, expect, it } from "vitest";
import type { Finding, Work } from "../site/index.js";
import { worstOfWork } from "./findingMarks.js";

const finding = (where: string, level: Finding["level"]): Finding => ({
  ...{ code: "a.b", where, level },
  text: "",
  source: "",
});

const trench = { id: "trench", kind: "trench", pipes: [{ id: "drain" }] } as unknown as Work;
const pile = { id: "pile", kind: "pile" } as unknown as Work;

describe("the mark on a work's label", () => {
  it("shows the worst of the work and its pipes, and nothing for a note", () => {
    expect(worstOfWork(trench, [finding("trench", "caution"), finding("drain", "stop")])).toBe(
      "stop",
    );
    expect(worstOfWork(trench, [finding("drain", "caution"), finding("pile", "stop")])).toBe(
      "caution",
    );
    const taken = { ...finding("pile", "caution"), accepted: { reason: "asked" } };
    expect(worstOfWork(pile, [taken])).toBeNull();
    expect(worstOfWork(pile, [finding("pile", "note"), finding("site", "stop")])).toBeNull();
  });
});
