import { expect, it } from "vitest";
import { onlyKnown } from "./onlyKnown.js";
import type { Site } from "./schema.js";
import { plainPad, plainSite, plainTank, plainTrench } from "./site.fixture.js";

const site = plainSite({ works: [plainPad(), plainTank(), plainTrench()], layers: [0.3, 1] });

/** The value with an unknown field in every record of it, but not in records by id. */
function withMore(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withMore);
  if (typeof value !== "object" || value === null) return value;
  const fields = Object.entries(value).map(([key, field]) => [key, withMore(field)] as const);
  return { ...Object.fromEntries(fields), phone: "555 0100" };
}

it("takes out what the schema does not name, however deep, and nothing else", () => {
  const more = withMore(site) as Site;
  expect(JSON.stringify(more).match(/555 0100/g)?.length).toBeGreaterThan(20);
  expect(onlyKnown(more)).toEqual(site);
});

it("keeps what stands under ids of its own", () => {
  const printed = {
    ...site,
    sheets: {
      windows: { layout: { middle: [1, 2] as [number, number], scale: 240, more: "555" } },
    },
  };
  expect(onlyKnown(printed).sheets).toEqual({
    windows: { layout: { middle: [1, 2], scale: 240 } },
  });
});
