import { describe, expect, it } from "vitest";
import { estimate, groundAt } from "../estimate/index.js";
import { findWork } from "../site/index.js";
import type { Site } from "../site/index.js";
import alder from "../../shared/sites/alder-flat.site.json" with { type: "json" };
import { withMoved } from "./moved.js";

const site = alder as unknown as Site;
const SCHEME = "pumped";

function pathOf(now: Site, id: string) {
  const trench = findWork(now, SCHEME, id);
  if (trench?.kind !== "trench") throw new Error(`got no trench "${id}", expected one`);
  return trench.path;
}

describe("moving a work", () => {
  it("takes the ends of the trenches that meet it along, and no other part of them", () => {
    const moved = withMoved(site, SCHEME, { kind: "work", id: "tank-1" }, [1, -0.5]);
    const [drain, was] = [pathOf(moved, "house-drain-trench"), pathOf(site, "house-drain-trench")];
    expect(drain.at(-1)?.[0]).toBeCloseTo((was.at(-1)?.[0] ?? NaN) + 1, 9);
    expect(drain[0]).toEqual(was[0]);
    const [lift, before] = [pathOf(moved, "lift-trench"), pathOf(site, "lift-trench")];
    expect(lift[0]?.[1]).toBeCloseTo((before[0]?.[1] ?? NaN) - 0.5, 9);
    expect(lift.slice(1)).toEqual(before.slice(1));
  });

  it("lets a bed that follows the ground rise with it, and the pump's duty with the bed", () => {
    const bed = findWork(site, SCHEME, "sand-bed");
    if (bed?.kind !== "bed") throw new Error("got no bed, expected one");
    const up: [number, number] = [-6, 4];
    const rise =
      (groundAt(site, [bed.at[0] + up[0], bed.at[1] + up[1]]) ?? NaN) -
      (groundAt(site, bed.at) ?? NaN);
    const moved = withMoved(site, SCHEME, { kind: "work", id: "sand-bed" }, up);
    const after = findWork(moved, SCHEME, "sand-bed");
    expect(after?.kind === "bed" ? after.base - bed.base : NaN).toBeCloseTo(rise, 9);
    const [one, other] = [estimate(site, SCHEME), estimate(moved, SCHEME)].map(
      ({ flow }) => flow.pressure[0],
    );
    expect(Math.abs(rise)).toBeGreaterThan(0.05);
    const lifted = (other?.lift.value ?? NaN) - (one?.lift.value ?? NaN);
    expect(lifted).toBeCloseTo(rise, 9);
    const less = (one?.flow.value ?? NaN) - (other?.flow.value ?? NaN);
    expect(Math.sign(less)).toBe(Math.sign(rise));
  });
});
