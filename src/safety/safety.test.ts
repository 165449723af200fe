import { describe, expect, it } from "vitest";
import type { DigResult, WorkQuantities } from "../dig/index.js";
import type { Material, Site, Tank, Trench, Work } from "../site/index.js";
import { cautions, deliveryCautions } from "./cautions.js";
import { checkSafety } from "./checkSafety.js";

const FOOT = 0.3048;

function material(id: string, kind: Material["kind"], wallRun: number): Material {
  return {
    id,
    name: id,
    kind,
    density: 1800,
    loose: 1.25,
    compacted: 0.9,
    wallRun,
    reusable: 1,
    source: "test",
  };
}

const MATERIALS = [
  material("Test topsoil", "topsoil", 1.5),
  material("Test clay", "soil", 1),
  material("Test sand", "soil", 1.5),
  material("Test rock", "rock", 0),
];

function tank(over: Partial<Tank> = {}): Tank {
  return {
    kind: "tank",
    id: "k",
    name: "Tank 1",
    at: [0, 0],
    bearing: 90,
    body: { length: 3, width: 2, height: 1.6, emptyMass: 5000 },
    base: 96,
    overdig: 0.3,
    bedding: { depth: 0.15, material: "gravel" },
    walls: { by: "run", run: 1 },
    backfill: "native",
    ...over,
  };
}

function hole(over: Partial<WorkQuantities> = {}): WorkQuantities {
  return {
    id: "k",
    name: "Tank 1",
    kind: "tank",
    cut: {},
    fill: {},
    displaced: 0,
    floor: { lowest: 95, highest: 95 },
    deepest: 0,
    tallestFace: 0,
    daylight: 0,
    materialsMet: ["Test topsoil", "Test clay"],
    ...over,
  };
}

function check(work: Work, dug: Partial<WorkQuantities>, over: Partial<Site> = {}) {
  const scheme = { id: "s", name: "S", works: [work] };
  const site: Site = {
    format: "bankyard-site",
    version: 1,
    name: "Test",
    units: "us",
    currency: "USD",
    survey: { points: [] },
    ground: { layers: [], probes: [] },
    materials: MATERIALS,
    schemes: [scheme],
    ...over,
  };
  const dig = { works: [hole({ id: work.id, ...dug })], pipes: [] } as unknown as DigResult;
  return checkSafety(site, scheme, dig).findings;
}

const codes = (findings: { code: string }[]) => findings.map((f) => f.code);

describe("walls by the tallest face", () => {
  it("begins each rule at its own depth and not below", () => {
    const at = (feet: number) =>
      codes(check(tank({ walls: { by: "layers" } }), { tallestFace: feet * FOOT }));
    expect(at(3.9)).toEqual(["lifting.weight"]);
    expect(at(4)).toEqual(["walls.way-out", "lifting.weight"]);
    expect(at(4.9)).toEqual(["walls.way-out", "lifting.weight"]);
    expect(at(5)).toEqual(["walls.protect", "walls.way-out", "lifting.weight"]);
    expect(at(20)).toEqual(["walls.protect", "walls.way-out", "lifting.weight"]);
    expect(at(20.1)[0]).toBe("walls.engineer");
  });

  it("keeps the ladder a caution of its own until the walls are one", () => {
    const wayOut = (feet: number) =>
      check(tank({ walls: { by: "layers" } }), { tallestFace: feet * FOOT }).find(
        ({ code }) => code === "walls.way-out",
      )?.level;
    expect(wayOut(4.9)).toBe("caution");
    expect(wayOut(5)).toBe("note");
  });

  it("uses the uphill face, and the deepest place when that is more", () => {
    expect(codes(check(tank(), { deepest: 1.2, tallestFace: 1.8 }))).toContain("walls.protect");
    expect(codes(check(tank(), { deepest: 1.8, tallestFace: 1.2 }))).toContain("walls.protect");
    expect(codes(check(tank(), { deepest: 1.2, tallestFace: 1.2 }))).not.toContain("walls.protect");
  });

  it("stops over 20 ft", () => {
    const [first] = check(tank(), { tallestFace: 6.2 });
    expect(first?.level).toBe("stop");
    expect(first?.text).toContain("registered professional engineer");
  });

  it("speaks in the site's units", () => {
    const us = check(tank(), { tallestFace: 2 })[0]?.text;
    const metric = check(tank(), { tallestFace: 2 }, { units: "metric" })[0]?.text;
    expect(us).toContain("6′ 6¾″ high, and from 5′ 0″");
    expect(us).toContain("the steepest in the rule is 1½ : 1");
    expect(metric).toContain("2.00 m high, and from 1.52 m");
  });

  it("speaks of other states only where the published depth holds", () => {
    const protect = (rules: Site["rules"]) => check(tank(), { tallestFace: 2 }, { rules })[0];
    expect(protect([])?.text).toContain("(some states: 4′ 0″)");
    const local = protect([{ id: "protect-from", value: 1.2192, source: "county code" }]);
    expect(local?.text).toContain("from 4′ 0″ nobody goes in");
    expect(local?.source).toContain("county code");
  });
});

describe("walls against what they stand in", () => {
  const steep = (work: Work, dug: Partial<WorkQuantities>) =>
    check(work, dug).filter((f) => f.code === "walls.too-steep");

  it("cautions on vertical walls in clay, and names the run that is wanted", () => {
    const [finding] = steep(tank({ walls: { by: "run", run: 0 } }), { tallestFace: 2 });
    expect(finding?.level).toBe("caution");
    expect(finding?.text).toContain("drawn vertical");
    expect(finding?.text).toContain("test topsoil 1½ : 1 and test clay 1 : 1");
    expect(finding?.text).toContain("back to 1½ : 1");
  });

  it("only notes it when topsoil alone asks for more, or the hole is under 5 ft", () => {
    expect(steep(tank(), { tallestFace: 2 })[0]?.level).toBe("note");
    const shallow = steep(tank({ walls: { by: "run", run: 0 } }), { tallestFace: 1.3 });
    expect(shallow[0]?.level).toBe("note");
  });

  it("has nothing to say when the walls are flat enough, by layers, or in rock alone", () => {
    expect(steep(tank({ walls: { by: "run", run: 1.5 } }), { tallestFace: 2 })).toEqual([]);
    expect(steep(tank({ walls: { by: "layers" } }), { tallestFace: 2 })).toEqual([]);
    const rock = { tallestFace: 2, materialsMet: ["Test rock"] };
    expect(steep(tank({ walls: { by: "run", run: 0 } }), rock)).toEqual([]);
  });

  it("judges each side by its own slope, and names the steep ones", () => {
    const sides = (list: number[]): Tank => tank({ walls: { by: "run", run: 1.5, sides: list } });
    const [finding] = steep(sides([1.5, 0.5, 1.5, 1.49]), { tallestFace: 2 });
    expect(finding?.level).toBe("caution");
    expect(finding?.text).toContain("too steep: right ½ : 1 and left 1.49 : 1");
    expect(steep(sides([1.5, 1.5, 1.5, 1.5]), { tallestFace: 2 })).toEqual([]);
    const protect = (list: number[]) => check(sides(list), { tallestFace: 2 })[0]?.text;
    expect(protect([2, 1.5, 1.5, 1.5])).toContain("front 2 : 1, right 1½ : 1");
    // Of walls that are too steep one finding tells, not two.
    expect(protect([1.5, 0, 1.5, 1.5])).not.toContain("drawn");
  });

  it("judges a trench's ends where a slope is given for them", () => {
    const drain = (ends: Trench["ends"]): Trench => ({
      kind: "trench",
      id: "t",
      name: "Drain",
      path: [
        [0, 0],
        [9, 0],
      ],
      width: 0.5,
      walls: { by: "run", run: 1.5 },
      bedding: { depth: 0.1, material: "gravel" },
      zone: { above: 0.1, material: "gravel" },
      backfill: "native",
      pipes: [],
      ...(ends === undefined ? {} : { ends }),
    });
    expect(steep(drain(undefined), { tallestFace: 2 })).toEqual([]);
    expect(steep(drain({ start: 1.5, end: 1.5 }), { tallestFace: 2 })).toEqual([]);
    const [finding] = steep(drain({ start: 1.5, end: 0.25 }), { tallestFace: 2 });
    expect(finding?.text).toContain("too steep: end ¼ : 1");
  });

  it("takes earlier backfill for untyped soil", () => {
    const [finding] = steep(tank(), { tallestFace: 2, materialsMet: ["native", "Test rock"] });
    expect(finding?.text).toContain("earlier backfill 1½ : 1");
  });

  it("allows no benches in type C soil", () => {
    const benched = tank({ walls: { by: "benches", rise: 1.2, tread: 1.8 } });
    const sand = check(benched, { tallestFace: 2, materialsMet: ["Test sand"] });
    expect(codes(sand)).toContain("walls.no-benches");
    const clay = check(benched, { tallestFace: 2, materialsMet: ["Test clay"] });
    expect(codes(clay)).not.toContain("walls.no-benches");
  });
});

describe("lifting", () => {
  it("asks for the weight when none is entered", () => {
    const bare = tank({ body: { length: 3, width: 2, height: 1.6 } });
    const finding = check(bare, { tallestFace: 1 })[0];
    expect([finding?.code, finding?.level]).toEqual(["lifting.no-weight", "caution"]);
  });

  it("prints the weight and 1.5 times the depth", () => {
    const text = check(tank(), { tallestFace: 1 }, { units: "metric" })[0]?.text;
    expect(text).toContain("5,000 kg");
    expect(text).toContain("1.50 m, back from the edge");
  });
});

describe("limits and stepped pads", () => {
  it("measure to the nearest level, not to the first only", () => {
    const square = (x: number): [number, number][] => [
      [x, 0],
      [x + 4, 0],
      [x + 4, 4],
      [x, 4],
    ];
    const pad: Work = {
      kind: "pad",
      id: "p",
      name: "Pad",
      outline: square(0),
      top: 99,
      walls: { by: "run", run: 1.5 },
      fillRun: 2,
      fill: "native",
      levels: [{ outline: square(4), top: 98 }],
    };
    const well = (setback: number) => ({
      limits: [{ id: "w", kind: "well", name: "Well", at: [10, 2] as [number, number], setback }],
    });
    expect(codes(check(pad, {}, well(2.1)))).toContain("limit.too-near");
    expect(codes(check(pad, {}, well(1.9)))).not.toContain("limit.too-near");
  });
});

describe("limits", () => {
  const trench: Trench = {
    kind: "trench",
    id: "t",
    name: "Drain",
    path: [
      [0, 0],
      [10, 0],
    ],
    width: 0.6,
    walls: { by: "run", run: 0 },
    bedding: { depth: 0.1, material: "gravel" },
    zone: { above: 0.15, material: "gravel" },
    backfill: "native",
    pipes: [],
  };
  const well = { id: "w", kind: "well", name: "Well", setback: 15.24 };

  it("measures from the tank's body, turned as it is", () => {
    // Long side along x: the body ends at x = 1.5, so the well at x = 16 is 14.5 m away.
    const [, finding] = check(tank(), {}, { limits: [{ ...well, at: [16, 0] }] });
    expect(finding?.code).toBe("limit.too-near");
    expect(finding?.text).toContain("Tank 1 is 47.5 ft from Well; the setback set here is 50.0 ft");
    expect(finding?.text).toContain("Move it 2.5 ft farther off");
    const clear = check(tank({ bearing: 0 }), {}, { limits: [{ ...well, at: [16.3, 0] }] });
    expect(codes(clear)).toEqual(["lifting.weight"]);
  });

  it("takes a distance equal to the setback for kept", () => {
    const limits = [{ ...well, at: [16.74, 0] as [number, number] }];
    expect(codes(check(tank(), {}, { limits }))).toEqual(["lifting.weight"]);
  });

  it("measures a trench's path to a lot line, and says when they cross", () => {
    const line = (x: number, setback?: number) => ({
      id: "l",
      kind: "lot line",
      path: [
        [x, -20],
        [x, 20],
      ] as [number, number][],
      ...(setback === undefined ? {} : { setback }),
    });
    expect(check(trench, {}, { limits: [line(12, 3)] })[0]?.text).toContain(
      "Drain is 6.5 ft from lot line",
    );
    expect(check(trench, {}, { limits: [line(5, 3)] })[0]?.text).toContain(
      "Drain crosses lot line",
    );
    expect(codes(check(trench, {}, { limits: [line(5)] }))).toEqual(["limit.crossed"]);
    expect(check(trench, {}, { limits: [line(12)] })).toEqual([]);
  });
});

describe("standing cautions", () => {
  it("each end with a source in brackets and make no promise", () => {
    for (const caution of [...cautions(), ...deliveryCautions()]) {
      expect(caution).toMatch(/\. \([^()]*(\([^()]*\)[^()]*)*\)$/);
      expect(caution).not.toMatch(/\b(is|are) (safe|legal|allowed|permitted)\b/i);
    }
  });

  it.each([
    ["utility locate", /811/],
    ["private lines", /private lines/],
    ["cave-in", /Subpart P/],
    ["spoil", /651\(j\)\(2\)/],
    ["way out", /651\(c\)\(2\)/],
    ["tank entry", /Never enter .* never lean/],
    ["lids", /lids/i],
    ["power lines", /1926\.1408/],
    ["crane", /crane's operator/],
    ["electricity", /licensed electrician .* alarm/],
    ["flotation", /empty tank .* floats/],
    ["water", /water in it/],
    ["local codes", /local codes/],
  ])("has one on %s", (_, words) => {
    expect(cautions().filter((caution) => words.test(caution)).length).toBeGreaterThan(0);
  });
});

it("never says that a thing is safe or legal", () => {
  const all = check(tank({ walls: { by: "run", run: 0 } }), { tallestFace: 7 });
  for (const { text, source } of all) {
    expect(text).not.toMatch(/\b(safe|legal)\b/i);
    expect(source).not.toBe("");
  }
});
