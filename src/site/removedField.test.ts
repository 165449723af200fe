import { expect, it } from "vitest";
import { removeWork } from "./edits.js";
import { changeFlow } from "./flowEdits.js";
import { plainPad, plainSite, plainTank } from "./site.fixture.js";

it("a work that is removed is no longer among those that take the water", () => {
  const site = plainSite({ works: [plainPad({ id: "pad" }), plainTank()] });
  const field = changeFlow(site, "plan", { field: ["pad", "tank"], leastCover: 0.4 });
  const once = removeWork(field, "plan", "pad");
  expect(once.schemes[0]?.flow).toEqual({ field: ["tank"], leastCover: 0.4 });
  expect(removeWork(once, "plan", "tank").schemes[0]?.flow).toEqual({ leastCover: 0.4 });
});
