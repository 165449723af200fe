import { describe, expect, it } from "vitest";
import { PERMIT_ITEMS } from "../../estimate/index.js";
import { LIMIT_KINDS } from "../../site/index.js";
import { LIMIT_ITEMS, whereEntered } from "./whereEntered.js";

describe("where an item of the permit's list is entered", () => {
  it.each(PERMIT_ITEMS.filter((id) => id !== "north"))("knows it for %s", (id) => {
    expect(whereEntered({}, id)).not.toBeNull();
  });

  it("knows no place for the north arrow, which is always drawn", () => {
    expect(whereEntered({}, "north")).toBeNull();
  });

  it("goes to the limit that is drawn, and to the list of kinds where none is", () => {
    const creek = { id: "creek", kind: "watercourse", path: [] };
    expect(whereEntered({ limits: [creek] }, "water")?.picked).toEqual({
      kind: "limit",
      id: "creek",
    });
    expect(whereEntered({ limits: [creek] }, "water")?.kind).toBeNull();
    expect(whereEntered({ limits: [creek] }, "wetlands")).toMatchObject({
      ...{ picked: null, kind: "wetland" },
    });
    expect(whereEntered({}, "reserve")?.kind).toBe("reserve-field");
    expect(whereEntered({}, "setbacks")?.kind).toBeNull();
  });

  it("names kinds of limits that there are", () => {
    const known = LIMIT_KINDS.map(({ id }) => id as string);
    expect(known).toEqual(expect.arrayContaining(Object.values(LIMIT_ITEMS).flat()));
  });
});
