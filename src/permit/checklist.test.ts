import { describe, expect, it } from "vitest";
import rows from "../../shared/catalogue/permit-items.json" with { type: "json" };
import type { FlowResult } from "../flow/index.js";
import type { Limit, Scheme, Site } from "../site/index.js";
import { plainSite, plainTank, plainTrench } from "../site/site.fixture.js";
import { checklist, type ChecklistItem } from "./checklist.js";
import type { PermitGround } from "./found.js";

/** A site on which every item is shown, so far as a site can show it. */
function whole(): PermitGround {
  const square = (half: number): [number, number][] => [
    [-half, -half],
    [half, -half],
    [half, half],
    [-half, half],
  ];
  const limits: Limit[] = [
    { id: "lot", kind: "lot-line", closed: true, path: square(20) },
    { id: "house", kind: "building", closed: true, path: square(2) },
    { id: "drive", kind: "drive", path: square(3) },
    { id: "well", kind: "well", at: [15, 15] },
    { id: "brook", kind: "watercourse", path: square(18) },
    { id: "flood", kind: "flood-path", path: square(17) },
    { id: "bog", kind: "wetland", path: square(1) },
    { id: "way", kind: "easement", path: square(1) },
    { id: "cable", kind: "buried-cable", path: square(1) },
    { id: "oak", kind: "tree", at: [9, 9] },
    { id: "second", kind: "reserve-field", closed: true, path: square(4) },
  ];
  const base = plainSite({ works: [plainTank(), plainTrench()], layers: [0.2, 1] });
  const scheme: Scheme = {
    ...base.schemes[0]!,
    flow: { field: ["f"], pressure: [pressure] } as unknown as NonNullable<Scheme["flow"]>,
  };
  const site: Site = {
    ...base,
    limits,
    schemes: [scheme],
    project: {
      ...{ owner: "A. Person", parcel: "12-3", preparer: "A. Person", date: "2026-05-01" },
      benchmark: { point: base.survey.points[0]!.id, note: "nail in a root" },
    },
  };
  const tank = site.schemes[0]!.works[0]!;
  const at = tank.kind === "tank" ? tank.at : ([0, 0] as [number, number]);
  const probes = [{ id: "t1", x: at[0], y: at[1], thickness: [0.2, 1] }];
  return {
    site: { ...site, ground: { ...site.ground, probes } },
    scheme,
    works: [{ id: "t", cut: { clay: 4 } }] as unknown as PermitGround["works"],
    flow: flowWith({ alarm: 0.9 }),
    setbacks: [{ work: "t" }] as unknown as PermitGround["setbacks"],
  };
}

const pressure = { id: "p", name: "Pump", tank: "t", main: [], branches: [], pumps: [] };

function flowWith(plan: { alarm: number | null } | null): FlowResult {
  const dose = plan === null ? null : { plan };
  return {
    pipes: [{}],
    pressure: [{ dose }],
    sizing: { daily: {} },
  } as unknown as FlowResult;
}

function item(ground: PermitGround, id: string): ChecklistItem {
  const found = checklist(ground)
    .groups.flatMap(({ items }) => items)
    .find((one) => one.id === id);
  if (found === undefined) throw new Error(`no item ${id}`);
  return found;
}

const without = (ground: PermitGround, ...kinds: string[]): PermitGround => ({
  ...ground,
  site: {
    ...ground.site,
    limits: (ground.site.limits ?? []).filter(({ kind }) => !kinds.includes(kind)),
  },
});

const projectWithout = (ground: PermitGround, key: string): PermitGround => ({
  ...ground,
  site: { ...ground.site, project: { ...ground.site.project, [key]: undefined } },
});

/** Each item, and a site on which just that is not shown. */
const TAKEN: Readonly<Record<string, (ground: PermitGround) => PermitGround>> = {
  owner: (ground) => projectWithout(ground, "owner"),
  parcel: (ground) => projectWithout(ground, "parcel"),
  preparer: (ground) => projectWithout(ground, "preparer"),
  date: (ground) => projectWithout(ground, "date"),
  benchmark: (ground) => projectWithout(ground, "benchmark"),
  "lot-lines": (ground) => without(ground, "lot-line"),
  buildings: (ground) => without(ground, "building"),
  access: (ground) => without(ground, "drive"),
  wells: (ground) => without(ground, "well"),
  water: (ground) => without(ground, "watercourse"),
  flood: (ground) => without(ground, "flood-path"),
  wetlands: (ground) => without(ground, "wetland"),
  easements: (ground) => without(ground, "easement"),
  utilities: (ground) => without(ground, "buried-cable"),
  trees: (ground) => without(ground, "tree"),
  reserve: (ground) => without(ground, "reserve-field"),
  elevations: (ground) => ({ ...ground, flow: { ...ground.flow, pipes: [] } }),
  "cuts-fills": (ground) => ({ ...ground, works: [] }),
  pits: (ground) => withProbes(ground, []),
  "pit-at-tank": (ground) => withProbes(ground, [{ id: "t1", x: 90, y: 90, thickness: [0.2, 1] }]),
  bedrooms: (ground) => ({
    ...ground,
    flow: { ...ground.flow, sizing: {} as FlowResult["sizing"] },
  }),
  tank: (ground) => ({ ...ground, scheme: { ...ground.scheme, works: [] } }),
  pipes: (ground) => ({ ...ground, flow: { ...ground.flow, pipes: [] } }),
  field: (ground) => ({
    ...ground,
    scheme: { ...ground.scheme, flow: { ...ground.scheme.flow, field: [] } },
  }),
  setbacks: (ground) => ({ ...ground, setbacks: [] }),
  pump: (ground) => ({ ...ground, flow: { ...ground.flow, pressure: [] } }),
  hydraulics: (ground) => ({ ...ground, flow: { ...ground.flow, pressure: [], pipes: [] } }),
  dose: (ground) => ({ ...ground, flow: flowWith(null) }),
  alarm: (ground) => ({ ...ground, flow: flowWith({ alarm: null }) }),
};

function withProbes(ground: PermitGround, probes: Site["ground"]["probes"]): PermitGround {
  return { ...ground, site: { ...ground.site, ground: { ...ground.site.ground, probes } } };
}

describe("the permit's list", () => {
  it.each(Object.keys(TAKEN))("%s: present when shown, missing when not", (id) => {
    const ground = whole();
    expect(item(ground, id).state).toBe("present");
    const gone = item(TAKEN[id]!(ground), id);
    expect(gone.state).toBe("missing");
    expect(gone.because.length).toBeGreaterThan(10);
  });

  it("has a test for every item, but for what only the drawn sheet can show", () => {
    const tested = [...Object.keys(TAKEN), "scale", "north", "vicinity", "contours"];
    expect(rows.items.map(({ id }) => id).sort()).toEqual(tested.sort());
  });

  it("has no hydraulic sums without a design flow, whatever is laid and pumped", () => {
    const ground = whole();
    const unasked = { ...ground.flow, sizing: {} as FlowResult["sizing"] };
    for (const flow of [unasked, { ...unasked, pressure: [] }]) {
      const found = item({ ...ground, flow }, "hydraulics");
      expect(found.state).toBe("missing");
      expect(found.because).toContain("design flow");
    }
    expect(item({ ...ground, flow: { ...ground.flow, pressure: [] } }, "hydraulics").state).toBe(
      "present",
    );
  });

  it("has the scale and its bar, which every drawn sheet states", () => {
    expect(item(whole(), "scale")).toMatchObject({ state: "present", found: "present" });
  });

  it("asks nothing of a pump where nothing is pumped", () => {
    const ground = whole();
    const scheme = { ...ground.scheme, flow: { field: ["f"] } };
    for (const id of ["pump", "dose", "alarm"]) {
      expect(item({ ...ground, scheme }, id).state).toBe("not-applicable");
    }
  });

  it("counts a probe just within the distance as at the tank, and one just beyond as not", () => {
    const ground = whole();
    const tank = ground.scheme.works[0]!;
    if (tank.kind !== "tank") throw new Error("expected a tank");
    const half = Math.max(tank.body.length, tank.body.width) / 2;
    const straight = {
      ...tank,
      bearing: 0,
      body: { ...tank.body, length: 2 * half, width: 2 * half },
    };
    const scheme = { ...ground.scheme, works: [straight] };
    const at = (away: number) =>
      withProbes({ ...ground, scheme }, [
        { id: "t1", x: tank.at[0] + half + away, y: tank.at[1], thickness: [0.2, 1] },
      ]);
    expect(item(at(3.047), "pit-at-tank").state).toBe("present");
    expect(item(at(3.049), "pit-at-tank").state).toBe("missing");
  });

  it("takes a person's answer for what is missing, with its reason, and counts it", () => {
    const ground = without(whole(), "wetland");
    const site: Site = {
      ...ground.site,
      checklist: [{ item: "wetlands", state: "not-applicable", note: "none on the county's map" }],
    };
    const answered = item({ ...ground, site }, "wetlands");
    expect(answered).toMatchObject({
      state: "not-applicable",
      because: "none on the county's map",
      found: "missing",
    });
    expect(checklist({ ...ground, site }).asked).toBe(checklist(ground).asked - 1);
  });

  it("does not let an answer overrule what the site shows", () => {
    const ground = whole();
    const site: Site = {
      ...ground.site,
      checklist: [{ item: "wells", state: "not-applicable", note: "no well" }],
    };
    expect(item({ ...ground, site }, "wells").state).toBe("present");
  });

  it("takes what is shown off the list where a person says that the office does not ask for it", () => {
    const answer = { item: "trees", though: true, note: "asked by another county only" } as const;
    const withAnswer = (ground: PermitGround, state: "not-applicable" | "by-hand") => ({
      ...ground,
      site: { ...ground.site, checklist: [{ ...answer, state }] },
    });
    const ground = whole();
    const there = withAnswer(ground, "not-applicable");
    expect(item(there, "trees")).toMatchObject({
      ...{ state: "not-applicable", because: "asked by another county only", found: "present" },
    });
    expect(checklist(there).asked).toBe(checklist(ground).asked - 1);
    // Nothing that is there is shown elsewhere instead, and the answer outlives the last tree.
    expect(item(withAnswer(ground, "by-hand"), "trees").state).toBe("present");
    const gone = withAnswer(without(ground, "tree"), "not-applicable");
    expect(item(gone, "trees").state).toBe("not-applicable");
  });
});
