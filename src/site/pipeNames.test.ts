import { describe, expect, it } from "vitest";
import { renameWork } from "./edits.js";
import type { Work } from "./schema.js";
import { plainSite, plainTrench } from "./site.fixture.js";

/** Name of the pipes after the trench "Trench" was renamed. */
function renamed(...names: string[]): string[] {
  const plain = plainTrench();
  if (plain.kind !== "trench") throw new Error("expected a trench");
  const [pipe] = plain.pipes;
  if (pipe === undefined) throw new Error("expected a pipe");
  const pipes = names.map((name, i) => ({ ...pipe, id: `p${i}`, name }));
  const work: Work = { ...plain, pipes };
  const next = renameWork(plainSite({ works: [work] }), "plan", "trench", "House drain");
  const [after] = next.schemes[0]?.works ?? [];
  expect(after?.name).toBe("House drain");
  return after?.kind === "trench" ? after.pipes.map(({ name }) => name) : [];
}

describe("a renamed trench", () => {
  it("gives its name to a pipe that still has the name it came with", () => {
    expect(renamed("Drain")).toEqual(["House drain"]);
    expect(renamed("Field pipe 2")).toEqual(["House drain"]);
    expect(renamed("Trench")).toEqual(["House drain"]);
  });

  it("leaves a name that a person gave, and several pipes", () => {
    expect(renamed("Kitchen waste")).toEqual(["Kitchen waste"]);
    expect(renamed("Drain", "Lift line")).toEqual(["Drain", "Lift line"]);
  });
});
