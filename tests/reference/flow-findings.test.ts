/**
 * Each finding of the flow just beyond its threshold and silent just inside: the limit is set a
 * hair to either side of what the example measures. Sources of the limits themselves stand in
 * shared/catalogue/flow-rules.json and are printed with the findings.
 */
import { describe, expect, it } from "vitest";
import alder from "../../shared/sites/alder-flat.site.json" with { type: "json" };
import { estimate } from "../../src/estimate/index.js";
import {
  addWork,
  changeBranch,
  changeFlow,
  changePipe,
  changePressure,
  changeWork,
  removeWork,
  setFlowRule,
  type Site,
} from "../../src/site/index.js";

const site = alder as unknown as Site;
const SCHEME = "pumped";

function codesOf(now: Site): string[] {
  return estimate(now, SCHEME).findings.map((one) => one.code);
}

function systemOf(now: Site) {
  const system = estimate(now, SCHEME).flow.pressure[0];
  if (system === undefined) throw new Error("got no pressure system, expected one");
  return system;
}

const base = systemOf(site);
const uneven = changePressure(
  changeBranch(site, SCHEME, "lift", "west", (branch) => ({ ...branch, share: 2 })),
  SCHEME,
  "lift",
  {},
);
const spread = Math.max(...base.branches.map((branch) => branch.spread));
const volume = base.dose?.volume.value ?? NaN;
const drainage = estimate(site, SCHEME).flow.pipes.find((pipe) => pipe.id === "house-drain");
const weight = estimate(site, SCHEME).flow.flotation[0];

/** Code, the limit that decides, what is measured, and on which side of the limit it fires. */
const THRESHOLDS: readonly [
  code: string,
  rule: string,
  measured: number,
  fires: "above" | "below",
][] = [
  ["main.fast", "main-fast", base.velocity.value, "above"],
  ["main.slow", "main-slow", base.velocity.value, "below"],
  ["laterals.uneven", "evenness", spread, "above"],
  ["dose.small", "dose-least", volume, "below"],
  ["dose.small", "dose-pipes", volume / base.pipeVolume.value, "below"],
  ["dose.large", "dose-most", 1 / (base.dose?.plan.perDay ?? NaN), "above"],
  ["chamber.intake-low", "intake", base.dose?.plan.off ?? NaN, "below"],
  ["drain.deep", "most-cover", drainage?.cover.most ?? NaN, "above"],
  ["drain.slow", "least-velocity", drainage?.carries?.velocity.value ?? NaN, "below"],
  ["drain.fast", "most-velocity", drainage?.carries?.velocity.value ?? NaN, "above"],
  ["chamber.few-doses", "chamber-doses", (base.dose?.plan.holds ?? NaN) / volume, "below"],
  ["tank.little-drop", "tank-drop", 1.3716 - 1.2954, "below"],
  ["tank.floats", "float-factor", weight?.factor ?? NaN, "below"],
  ["tank.floats-bare", "float-factor", weight?.bare ?? NaN, "below"],
];

describe.each(THRESHOLDS)("%s by the limit %s", (code, rule, measured, fires) => {
  // Dose rules take the larger of two, so the other one is put out of the way.
  const others: Readonly<Record<string, readonly [string, number]>> = {
    "dose-least": ["dose-pipes", 0],
    "dose-pipes": ["dose-least", 0],
    "main-fast": ["main-slow", 0],
  };
  const other = others[rule];
  const plain = other === undefined ? site : setFlowRule(site, SCHEME, other[0], other[1]);
  const [inside, beyond] = fires === "above" ? [1.001, 0.999] : [0.999, 1.001];
  it("is silent just inside", () => {
    expect(Number.isFinite(measured)).toBe(true);
    expect(codesOf(setFlowRule(plain, SCHEME, rule, measured * inside))).not.toContain(code);
  });
  it("fires just beyond, with a source", () => {
    const { findings } = estimate(setFlowRule(plain, SCHEME, rule, measured * beyond), SCHEME);
    const found = findings.find((one) => one.code === code);
    expect(found?.text).toMatch(/\w/);
    expect(found?.source).toMatch(/\w/);
  });
});

it("a tank's liquid, from the top of its floor of 0.1 m to its outlet, but not a pump's chamber's", () => {
  const codes = (scheme: string, least: number): string[] =>
    estimate(setFlowRule(site, scheme, "liquid-depth", least), scheme).findings.map(
      ({ code }) => code,
    );
  const depth = 1.2954 - 0.1;
  expect(codes("gravity", depth - 0.001)).not.toContain("tank.shallow-liquid");
  expect(codes("gravity", depth + 0.001)).toContain("tank.shallow-liquid");
  expect(codes("pumped", depth + 0.001)).not.toContain("tank.shallow-liquid");
});

describe("what no limit decides", () => {
  it("a pump too weak, one that cannot lift, and one without a curve", () => {
    const with2 = (head: number): Site =>
      changePressure(site, SCHEME, "lift", {
        pumps: [
          {
            id: "own",
            name: "Own pump",
            curve: [
              { flow: 0, head },
              { flow: 0.003, head: head * 0.5 },
            ],
          },
        ],
        pump: "own",
      });
    expect(codesOf(with2(base.lift.value - 0.01))).toContain("pump.below-shut-off");
    expect(codesOf(with2(base.lift.value + 0.3))).toContain("pump.too-weak");
    expect(codesOf(with2(20))).not.toContain("pump.too-weak");
    const bare = changePressure(site, SCHEME, "lift", {
      pumps: [{ id: "nothing", name: "Nothing" }],
      pump: "nothing",
    });
    expect(codesOf(bare)).toContain("pump.no-curve");
  });

  it("beds whose shares differ are uneven until the valves are set as told", () => {
    expect(codesOf(uneven)).toContain("beds.uneven");
    const set = systemOf(uneven).branches.reduce(
      (now, branch) =>
        changeBranch(now, SCHEME, "lift", branch.id, (one) => ({
          ...one,
          valve: { loss: 0.2, open: branch.valve?.wanted ?? 1 },
        })),
      uneven,
    );
    expect(codesOf(set)).not.toContain("beds.uneven");
    expect(systemOf(set).bedSpread).toBeLessThan(1e-4);
  });

  it("says what is missing and never throws", () => {
    const gone = removeWork(site, SCHEME, "tank-1");
    expect(codesOf(gone)).toContain("pressure.part-missing");
    const lost = changePressure(site, SCHEME, "lift", { main: ["nowhere"] });
    expect(codesOf(lost)).toContain("pressure.part-missing");
    const many = changeBranch(site, SCHEME, "lift", "east", (branch) => ({
      ...branch,
      laterals: {
        ...branch.laterals,
        length: 100,
        count: 50,
        holes: { ...branch.laterals.holes, apart: 0.05 },
      },
    }));
    expect(codesOf(many)).toContain("pressure.part-missing");
  });

  it("a drain that starts above its outlet, and cleanouts too far apart", () => {
    const high = changePipe(site, SCHEME, "house-drain", (pipe) =>
      pipe.grade.by === "inverts"
        ? { ...pipe, grade: { ...pipe.grade, start: 733.38 + 0.02 } }
        : pipe,
    );
    expect(codesOf(high)).toContain("pipe.starts-above");
    expect(codesOf(site)).not.toContain("pipe.starts-above");
    const length = drainage?.length ?? NaN;
    const far = changePipe(site, SCHEME, "house-drain", (pipe) => ({ ...pipe, cleanouts: [0] }));
    expect(codesOf(setFlowRule(far, SCHEME, "cleanout-apart", length * 0.99))).toContain(
      "drain.cleanouts-apart",
    );
    expect(codesOf(setFlowRule(far, SCHEME, "cleanout-apart", length * 1.01))).not.toContain(
      "drain.cleanouts-apart",
    );
  });

  it("a chamber without room, little reserve, no design flow", () => {
    const small = changePressure(site, SCHEME, "lift", {
      chamber: { by: "box", length: 0.5, width: 0.5 },
    });
    expect(codesOf(small)).toContain("chamber.no-room");
    const dose = site.schemes[0]?.flow?.pressure?.[0]?.dose;
    if (dose === undefined) throw new Error("got no dose, expected one");
    const large = changePressure(site, SCHEME, "lift", { dose: { ...dose, reserve: 50 } });
    expect(codesOf(large)).toContain("chamber.little-reserve");
    expect(codesOf(changeFlow(site, SCHEME, { design: undefined }))).toContain(
      "dose.no-design-flow",
    );
  });

  it("draining back all pipe below the laterals, the rise of every branch among it", () => {
    const area = (bore: number): number => (Math.PI / 4) * bore ** 2;
    // Heights by hand: base of the bed + laterals above it, less the middle of the main's end.
    const end = estimate(site, SCHEME).flow.pipes.find(({ id }) => id === "lift-line");
    const middle = (end?.stations.at(-1)?.invert ?? NaN) + 0.04089 / 2;
    const rise = 736.567488 + 0.67056 - middle;
    expect(rise).toBeGreaterThan(1);
    expect(base.branches.map((branch) => branch.rise)).toEqual([
      expect.closeTo(rise, 9),
      expect.closeTo(rise, 9),
    ]);
    const main = (end?.stations ?? []).slice(1).reduce((sum, { station, invert }, i) => {
      const before = end?.stations[i];
      return sum + Math.hypot(station - (before?.station ?? 0), invert - (before?.invert ?? 0));
    }, 0);
    const branches = 1.2192 + 6.7056 + 2 * rise;
    const held = area(0.04089) * (base.riser.length + main) + area(0.040894) * branches;
    expect(base.drainBack.value).toBeCloseTo(held, 9);
    const told = base.drainBack.inputs.map(({ name }) => name).join("; ");
    expect(told).toContain("branches' rise from the main's end to the laterals, long");
  });

  it("a main that stands full in the frost, and one that a check valve holds", () => {
    const cover = estimate(site, SCHEME).flow.pipes.find((pipe) => pipe.id === "lift-line")?.cover;
    const held = changePressure(site, SCHEME, "lift", { checkValve: true });
    const least = cover?.least ?? NaN;
    expect(codesOf(setFlowRule(held, SCHEME, "frost", least + 0.01))).toContain("main.freezes");
    expect(codesOf(setFlowRule(held, SCHEME, "frost", least - 0.01))).not.toContain("main.freezes");
    expect(systemOf(held).drainBack.value).toBe(0);
    expect(codesOf(held)).not.toContain("main.sags");
  });

  it("a bed below the pump's water can siphon", () => {
    const low = changeWork(site, SCHEME, "sand-bed", (work) =>
      work.kind === "bed" ? { ...work, base: base.water.low - 2 } : work,
    );
    const flat = changePipe(low, SCHEME, "lift-line", (pipe) => ({
      ...pipe,
      grade: { by: "inverts", start: base.water.low - 0.5, end: base.water.low - 1 },
    }));
    expect(codesOf(flat)).toContain("main.siphon");
    expect(codesOf(site)).not.toContain("main.siphon");
  });
});

describe("drains", () => {
  const carries = drainage?.carries?.full.value ?? NaN;
  const daily = estimate(site, SCHEME).flow.sizing.daily?.value ?? NaN;
  it("too small for the peak, just beyond what the pipe carries with a free surface", () => {
    // A round pipe carries 1.0757 of its full flow at 0.938 of its bore (handbooks).
    const peak = (share: number): Site =>
      changeFlow(site, SCHEME, { peak: (share * carries) / daily });
    expect(codesOf(peak(1.07))).not.toContain("drain.too-small");
    expect(codesOf(peak(1.08))).toContain("drain.too-small");
  });
  it("a bend sharper than the limit with no cleanout by it", () => {
    const bend = Math.max(...(drainage?.bends ?? []).map((one) => one.angle));
    const bare = changePipe(site, SCHEME, "house-drain", (pipe) => ({ ...pipe, cleanouts: [0] }));
    const codes = (angle: number): string[] =>
      codesOf(setFlowRule(bare, SCHEME, "cleanout-bend", angle));
    expect(codes(bend - 0.1)).toContain("drain.bend-without-cleanout");
    expect(codes(bend + 0.1)).not.toContain("drain.bend-without-cleanout");
  });
  it("pipes that would run through each other where their paths cross", () => {
    const crossed = (deeper: number): Site =>
      addWork(site, SCHEME, {
        kind: "trench",
        id: "across",
        name: "Across",
        path: [
          [19, 20],
          [21.5, 25],
        ],
        width: 0.4,
        walls: { by: "run", run: 0 },
        bedding: { depth: 0.1, material: "pea-gravel" },
        zone: { above: 0.1, material: "pea-gravel" },
        backfill: "native",
        pipes: [
          {
            id: "across-pipe",
            name: "Across",
            service: "conduit",
            inside: 0.05,
            outside: 0.06,
            material: "pvc",
            grade: { by: "inverts", start: 733.3 - deeper, end: 733.3 - deeper },
          },
        ],
      });
    const clear = (deeper: number): number =>
      estimate(crossed(deeper), SCHEME).flow.pipes.find((one) => one.id === "across-pipe")
        ?.crossings[0]?.clear ?? NaN;
    expect(codesOf(crossed(0))).toContain("pipe.crosses");
    expect(clear(0.5) - clear(0.4)).toBeCloseTo(0.1, 9);
    expect(clear(0.5)).toBeGreaterThan(0);
    expect(codesOf(crossed(0.5))).not.toContain("pipe.crosses");
  });
});

describe("the main and its pump", () => {
  it("gathers air at a high place on the way", () => {
    const humped = changePipe(site, SCHEME, "lift-line", (pipe) => ({
      ...pipe,
      grade: { by: "inverts", start: 739, end: 736.4 },
    }));
    expect(codesOf(humped)).toContain("main.air");
    expect(codesOf(site)).not.toContain("main.air");
    // Lift at rest is then to the high place, not to the laterals.
    expect(systemOf(humped).lift.value).toBeCloseTo(739 + 0.04089 / 2 - base.water.low, 6);
  });
  it("runs off a curve that is too short, and loses against what runs in", () => {
    const short = (most: number): Site =>
      changePressure(site, SCHEME, "lift", {
        pumps: [
          {
            id: "own",
            name: "Own",
            curve: [
              { flow: 0, head: 20 },
              { flow: most, head: 18 },
            ],
          },
        ],
        pump: "own",
      });
    expect(codesOf(short(1e-3))).toContain("pump.off-curve");
    expect(codesOf(short(4e-3))).not.toContain("pump.off-curve");
    const flooded = changeFlow(site, SCHEME, { design: { by: "daily", flow: 5e-3 } });
    expect(
      codesOf(
        changePressure(flooded, SCHEME, "lift", { chamber: { by: "box", length: 30, width: 30 } }),
      ),
    ).toContain("pump.outrun");
  });
  it("counts the days between starts twice over when two take turns", () => {
    const turns = changePressure(site, SCHEME, "lift", { alternating: true });
    const [one, two] = [base.dose?.between ?? NaN, systemOf(turns).dose?.between ?? NaN];
    expect(two / one).toBeCloseTo(2, 12);
  });
  it("says that a bed is gone rather than reckon without it", () => {
    const gone = removeWork(site, SCHEME, "sand-bed");
    expect(codesOf(gone)).toContain("pressure.part-missing");
  });
});

describe("sizes", () => {
  const soil = (rate: number): Site => changeFlow(site, SCHEME, { soil: { by: "rate", rate } });
  const sizing = estimate(site, SCHEME).flow.sizing;
  const exact = (sizing.daily?.value ?? NaN) / sizing.field.value;
  it("a field just too small", () => {
    expect(codesOf(soil(exact * 0.999))).toContain("sizing.field-small");
    expect(codesOf(soil(exact * 1.001))).not.toContain("sizing.field-small");
  });
  it("a tank too small for the bedrooms (Queensbury: 1,000 gal to three, 1,250 for four)", () => {
    const rooms = (bedrooms: number): Site =>
      changeFlow(site, SCHEME, { design: { by: "bedrooms", bedrooms } });
    expect(codesOf(rooms(3))).not.toContain("sizing.tank-small");
    expect(codesOf(rooms(4))).toContain("sizing.tank-small");
  });
  it("soil that is unsuitable, and a percolation rate that no row has", () => {
    const by = (
      next: NonNullable<NonNullable<Site["schemes"][number]["flow"]>["soil"]>,
    ): string[] => codesOf(changeFlow(site, SCHEME, { soil: next }));
    expect(by({ by: "class", class: "7" })).toContain("sizing.soil-unsuitable");
    expect(by({ by: "class", class: "6" })).not.toContain("sizing.soil-unsuitable");
    const minute = 60 / 0.0254;
    expect(by({ by: "percolation", rate: 61 * minute })).toContain("sizing.percolation-outside");
    expect(by({ by: "percolation", rate: 60 * minute })).not.toContain(
      "sizing.percolation-outside",
    );
  });
});

it("moves lift and flow with the tank: half a metre lower lifts half a metre more", () => {
  const lower = changeWork(site, SCHEME, "tank-1", (work) =>
    work.kind === "tank" ? { ...work, base: work.base - 0.5 } : work,
  );
  expect(systemOf(lower).lift.value - base.lift.value).toBeCloseTo(0.5, 9);
  expect(systemOf(lower).flow.value).toBeLessThan(base.flow.value);
});

it("weighs an empty tank against the water that the drawing of its hole shows", () => {
  const { flow, holes } = estimate(site, SCHEME);
  const tank = site.schemes
    .find(({ id }) => id === SCHEME)
    ?.works.find((work) => work.id === "tank-1");
  if (tank?.kind !== "tank") throw new Error("got no tank, expected one");
  const over = holes.find(({ work }) => work === tank.id)?.water?.overFloor ?? NaN;
  const weighed = flow.flotation[0]?.uplift.inputs.at(-1)?.value;
  expect(weighed).toBeCloseTo(over - tank.bedding.depth, 9);
  // By hand from the drawing: groundwater 2,405.11 ft, underside 2,401.02 ft.
  expect((weighed ?? NaN) / 0.3048).toBeCloseTo(4.09, 2);
  expect(flow.flotation[0]?.factor).toBeCloseTo(1.15, 2);
});

it("counts what is free over the alarm to the inlet's invert", () => {
  const plan = base.dose?.plan;
  expect(plan?.freeTo).toBe("inlet");
  // About 613 gal by hand, where to the cover it would be 764.
  expect((plan?.reserve ?? NaN) / 0.003785411784).toBeCloseTo(613, -1);
});
