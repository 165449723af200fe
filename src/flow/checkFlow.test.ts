import { describe, expect, it } from "vitest";
import { trenchOf } from "../dig/dig.fixture.js";
import type { PipeRun } from "../dig/index.js";
import type { Tank } from "../site/index.js";
import { checkPlain, plainHouseDrain, plainInletTank } from "./flow.fixture.js";

const IN = 0.0254;
const check = checkPlain;
const pipe = plainHouseDrain;

function tank(id: string, over: Partial<Tank> = {}): Tank {
  return plainInletTank({ id, ...over });
}

const codes = (result: { findings: { code: string }[] }) => result.findings.map((f) => f.code);

describe("fall", () => {
  it("lets a pipe run at exactly its least fall, and 0.4 mm short of it", () => {
    for (const shy of [0, 0.0004]) {
      const result = check([pipe({ start: 99, end: 99 - 28.5 / 96 + shy })]);
      expect(result.flow.pipes[0]?.verdict).toBe("runs");
      expect(result.findings).toEqual([]);
    }
  });

  it("says by how much a flat pipe misses, and mends it exactly three ways", () => {
    const run = pipe({ start: 99, end: 98.9, length: 20 });
    const { flow, findings } = check([run]);
    const [checked] = flow.pipes;
    expect(checked?.verdict).toBe("too flat");
    const by = Object.fromEntries((checked?.mends ?? []).map((mend) => [mend.kind, mend.by]));
    const least = checked?.leastFall?.value ?? Number.NaN;
    expect(least).toBeCloseTo(1 / 96, 12);
    // Each mend, applied alone, gives the least fall exactly.
    expect((run.drop + (by["lower-end"] ?? 0)) / run.length).toBeCloseTo(least, 12);
    expect((run.drop + (by["raise-start"] ?? 0)) / run.length).toBeCloseTo(least, 12);
    expect(run.drop / (run.length - (by["shorten"] ?? 0))).toBeCloseTo(least, 12);
    expect(findings).toHaveLength(1);
    expect(findings[0]?.level).toBe("caution");
    expect(findings[0]?.text).toBe(
      "House drain falls 0.5%; 78 mm pipe usually needs at least 1.04%. Lower the far end 0.11 m, raise the near end 0.11 m, or shorten the run from 20.00 m to 9.60 m. Check your local code.",
    );
  });

  it("speaks US units, the nominal size and the tank's inlet", () => {
    const { findings } = check([pipe({ start: 97.4, end: 97.3, ground: 99 })], [tank("k")], "us");
    expect(findings[0]?.text).toBe(
      "House drain falls 0.35%; 3-in pipe usually needs at least 1.04%. Raise the near end 7⅞″, lower Tank 1 and the far end with it 7⅞″, or shorten the run from 93.5 ft to 31.4 ft by moving Tank 1 nearer. Check your local code.",
    );
  });

  it("stops a pipe that rises or lies level, offers no shortening, and speaks of a pump", () => {
    for (const end of [99.2, 99]) {
      const { flow, findings } = check([pipe({ start: 99, end })]);
      expect(flow.pipes[0]?.verdict).toBe("uphill");
      expect(flow.pipes[0]?.mends.map((mend) => mend.kind)).toEqual(["lower-end", "raise-start"]);
      expect(flow.pipes[0]?.mends[0]?.by).toBeCloseTo(28.5 / 96 + end - 99, 12);
      expect(findings[0]?.level).toBe("stop");
      expect(findings[0]?.text).toContain("plan a pump");
    }
  });

  it("does not raise a near end that would come out of the ground or lose its cover", () => {
    for (const end of [99.4, 99.2]) {
      const { flow } = check([pipe({ start: 99.5, end, ground: 99.95, length: 50 })]);
      expect(flow.pipes[0]?.mends.map((mend) => mend.kind)).toEqual(["lower-end", "shorten"]);
    }
  });

  it("only notes a pipe that falls more than the usual most", () => {
    const { flow, findings } = check([pipe({ start: 99, end: 97 })]);
    expect(flow.pipes[0]?.verdict).toBe("too steep");
    expect(findings.map((f) => [f.level, f.code, f.source])).toEqual([
      ["note", "pipe.fall-too-great", "common practice, no source"],
    ]);
    expect(flow.pipes[0]?.mends[0]?.by).toBeCloseTo(2 - 28.5 / 24, 12);
  });

  it("asks no fall of pressure pipes and conduits", () => {
    const runs = (["pressure", "conduit"] as const).map((service) =>
      pipe({ start: 98, end: 98.9, service, id: service }),
    );
    const { flow } = check(runs, [tank("k", { at: [0, 0] })]);
    expect(flow.pipes.map((p) => [p.verdict, p.leastFall])).toEqual([
      ["runs", null],
      ["runs", null],
    ]);
  });

  it("takes the scheme's own rows, in any order, before the catalogue's", () => {
    const flow = {
      leastFall: [
        { upToInside: 0.2, fall: 0.005, source: "county" },
        { upToInside: 0.08, fall: 0.02, source: "county, small" },
      ],
    };
    const result = check([pipe({ start: 99, end: 99 - 28.5 * 0.015 })], [], "metric", flow);
    expect(result.flow.pipes[0]?.leastFall).toEqual({ value: 0.02, source: "county, small" });
    expect(codes(result)).toEqual(["pipe.fall-too-small"]);
  });

  it("asks the least fall of every stretch of a pipe that follows the ground", () => {
    const uneven = pipe({ start: 99, end: 98, length: 20 });
    const run: PipeRun = {
      ...uneven,
      stations: [
        { station: 0, at: [0, 0], ground: 100, invert: 99 },
        { station: 8, at: [8, 0], ground: 100, invert: 99 },
        { station: 12, at: [12, 0], ground: 100, invert: 99 },
        { station: 20, at: [20, 0], ground: 100, invert: 98 },
      ],
    };
    const { flow, findings } = check([run]);
    expect(flow.pipes[0]?.flattest).toEqual({ fall: 0, from: 0, to: 12 });
    expect(flow.pipes[0]?.verdict).toBe("too flat");
    expect(findings.map((f) => f.code)).toEqual(["pipe.stretch-too-flat", "pipe.fall-too-great"]);
    // An even grade of 5% would be too steep by 1 − 20/24 m: at 12 m it then lies at 98.5.
    expect(flow.pipes[0]?.mends).toMatchObject([{ kind: "even-grade" }]);
    expect(flow.pipes[0]?.mends[0]?.by).toBeCloseTo(0.5, 3);
    expect(flow.pipes[0]?.mends[0]?.text).toBe(
      "give it one even grade of 4.17% from end to end, and raise the far end 0.17 m",
    );
    expect(findings[0]?.text).toContain("does not fall between 0.00 m and 12.00 m from its start");
  });

  it("takes rounding between close stations for one grade", () => {
    const even = pipe({ start: 99, end: 98.7 });
    const at = (station: number, off = 0) => ({
      station,
      at: [station, 0] as [number, number],
      ground: 100,
      invert: 99 - (0.3 * station) / 28.5 + off,
    });
    const run = { ...even, stations: [at(0), at(9), at(9.000002, 1e-8), at(9.000004), at(28.5)] };
    const { flow, findings } = check([run]);
    expect(findings).toEqual([]);
    expect(flow.pipes[0]?.flattest.fall).toBeCloseTo(0.3 / 28.5, 9);
    expect(flow.pipes[0]?.flattest).toMatchObject({ from: 0, to: 28.5 });
  });

  it("survives a path without length", () => {
    const { flow, findings } = check([pipe({ start: 99, end: 99, length: 0, fall: Number.NaN })]);
    expect(flow.pipes[0]?.fall).toBe(0);
    expect(flow.pipes[0]?.verdict).toBe("uphill");
    expect(findings[0]?.level).toBe("stop");
  });
});

describe("cover", () => {
  it("measures the shortfall and says where", () => {
    const run = pipe({ start: 99.8, end: 99.4 });
    const { flow, findings } = check([run]);
    expect(flow.pipes[0]?.verdict).toBe("shallow");
    expect(flow.pipes[0]?.mends[0]?.by).toBeCloseTo(0.3 - run.cover.least, 12);
    expect(findings[0]?.code).toBe("pipe.cover-too-small");
    expect(findings[0]?.text).toContain("has only 0.12 m of ground over it, 0.00 m from its start");
  });

  it("says so when a pipe stands out of the ground", () => {
    const { findings } = check([pipe({ start: 100.2, end: 99 })]);
    expect(findings.map((f) => f.code)).toContain("pipe.out-of-ground");
  });

  it("wants the electrical depth over a conduit even if less is set for pipes", () => {
    const run = pipe({ start: 99.5, end: 99.5, service: "conduit" });
    const { flow } = check([run], [], "metric", { leastCover: 0.2 });
    expect(flow.pipes[0]?.leastCover.value).toBeCloseTo(18 * IN, 9);
    expect(flow.pipes[0]?.verdict).toBe("shallow");
  });

  // NEC Table 300.5 (recalled): 24 in over cable, 18 in over PVC conduit, 12 in over 120 V ≤ 20 A.
  it.each([
    ["direct", 24],
    ["pvc", 18],
    ["gfci", 12],
  ] as const)("wants over wiring “%s” %i in all along the pipe as dug", (wiring, inches) => {
    const laid = (over: number) => {
      const run = pipe({ start: 99, end: 99, service: "conduit" });
      const top = (run.outside + run.inside) / 2;
      // The ground dips to what is asked, and a little less, half way along only.
      const stations = [0, 14, 28].map((station, i) => ({
        ...{ station, at: [station, 0] as [number, number], invert: 99 },
        ground: 99 + top + (i === 1 ? over : 2),
      }));
      return { ...run, length: 28, stations, cover: { least: over, most: 2 } };
    };
    const { inside, outside, material } = laid(1);
    const grade = { by: "cover" as const, depth: 0.5 };
    const cable = { id: "p1", name: "Cable", service: "conduit" as const, grade, wiring };
    const drawn = { ...trenchOf("t1", 0.3), pipes: [{ ...cable, inside, outside, material }] };
    const verdicts = (over: number) => {
      const { flow, findings } = check([laid(over)], [drawn], "us", { leastCover: 0.1 });
      return [flow.pipes[0]?.verdict, findings.find(({ at }) => at)?.at];
    };
    expect(verdicts(inches * IN + 0.01)).toEqual(["runs", undefined]);
    expect(verdicts(inches * IN - 0.01)).toEqual(["shallow", [14, 0]]);
  });

  it("has nothing against an end that lies in a tank, with no ground over it", () => {
    const run = pipe({ start: 98, end: 97.3 });
    const [first, last] = run.stations;
    if (first === undefined || last === undefined) throw new Error("expected two stations");
    const inTank = { ...run, stations: [first, { ...last, ground: Number.NaN }] };
    expect(codes(check([inTank], [tank("k")]))).toEqual([]);
  });

  it("does not guess beyond the survey", () => {
    const run = pipe({ start: 98, end: 97.5, ground: Number.NaN });
    const result = check([run]);
    expect(codes(result)).toEqual(["pipe.cover-unknown"]);
    expect(result.flow.pipes[0]?.verdict).toBe("runs");
  });
});

it("gives no figure for inverts that are not known, and says why", () => {
  const lost = (over: Partial<PipeRun>) =>
    pipe({ start: Number.NaN, end: Number.NaN, ground: Number.NaN, ...over });
  const runs = [lost({ id: "a" }), lost({ id: "b", service: "pressure" })];
  const result = check(runs, [tank("k", { at: [0, 0] }), tank("k2", { at: [28, 0] })]);
  expect(codes(result)).toEqual(["pipe.cover-unknown", "pipe.cover-unknown"]);
  expect(result.flow.joints).toEqual([]);
  expect(result.flow.lifts).toEqual([]);
});

describe("tanks", () => {
  it("compares the far end with the inlet: 97.35 against 96 + 1.3 is 50 mm above", () => {
    const result = check([pipe({ start: 98, end: 97.35 })], [tank("k")]);
    expect(result.flow.joints).toHaveLength(1);
    expect(result.flow.joints[0]?.off).toBeCloseTo(0.05, 9);
    expect(result.flow.pipes[0]?.verdict).toBe("misses its tank");
    expect(codes(result)).toEqual(["pipe.misses-inlet"]);
    expect(result.findings[0]?.text).toBe(
      "House drain ends 50 mm above the inlet of Tank 1. Lower the far end 50 mm, to the inlet of Tank 1, or raise Tank 1 50 mm, to the pipe.",
    );
  });

  it("lets 10 mm pass and misses a tank that is more than half a metre away", () => {
    expect(codes(check([pipe({ start: 98, end: 97.309 })], [tank("k")]))).toEqual([]);
    const far = check([pipe({ start: 98, end: 97.6, length: 27.9 })], [tank("k")]);
    expect(far.flow.joints).toEqual([]);
  });

  it("compares the near end with the outlet", () => {
    const result = check([pipe({ start: 97.2, end: 96.8 })], [tank("k", { at: [-1.5, 0] })]);
    expect(result.flow.joints).toMatchObject([{ side: "outlet", tank: "k" }]);
    expect(codes(result)).toEqual(["pipe.misses-outlet"]);
    expect(result.findings[0]?.text).toContain("starts 50 mm below the outlet");
  });
});

describe("static lift", () => {
  const main = (over: Partial<PipeRun> = {}) =>
    pipe({ start: 97.2, end: 103, ground: 105, service: "pressure", name: "Force main", ...over });
  const pumpTank = (body: Partial<Tank["body"]> = {}) =>
    tank("k", { at: [-1.2, 0], body: { length: 3, width: 2, height: 1.6, ...body } });

  it("rises from the tank's own low water to the far end", () => {
    const { flow, findings } = check([main()], [pumpTank({ lowWater: 0.4 })]);
    expect(findings).toEqual([]);
    expect(flow.lifts).toHaveLength(1);
    expect(flow.lifts[0]).toMatchObject({ tank: "k", lowWater: 96.4, outlet: 103, highest: 103 });
    expect(flow.lifts[0]?.lift.value).toBeCloseTo(6.6, 12);
  });

  it("takes the highest place when the path goes over a rise", () => {
    const run = main();
    const over: PipeRun = {
      ...run,
      stations: [
        { station: 0, at: [0, 0], ground: 105, invert: 97.2 },
        { station: 10, at: [10, 0], ground: 106, invert: 104.5 },
        { station: 28.5, at: [28.5, 0], ground: 105, invert: 103 },
      ],
    };
    const { flow } = check([over], [pumpTank({ lowWater: 0.4 })]);
    expect(flow.lifts[0]?.highest).toBe(104.5);
    expect(flow.lifts[0]?.lift.value).toBeCloseTo(8.1, 12);
  });

  it("without a low water uses the usual build-up and shows each part of it", () => {
    const { flow } = check([main()], [pumpTank()]);
    expect(flow.lifts[0]?.lowWater).toBeCloseTo(96.55, 12);
    const { inputs, source } = flow.lifts[0]?.lift ?? { inputs: [], source: "" };
    expect(inputs.slice(-3).reduce((sum, each) => sum + each.value, 0)).toBeCloseTo(0.55, 12);
    expect(source).toContain("25 Pa. Code 73.46");
  });

  it("counts a start in the hole beside the tank, and the nearer of two tanks", () => {
    const near = tank("near", { at: [2.25, 0] });
    const far = tank("far", { at: [-2.2, 0] });
    // Bodies are 3 m long along x: 0.75 m and 0.70 m from the path's start.
    expect(check([main()], [near, far]).flow.lifts[0]?.tank).toBe("far");
  });

  it("finds no tank, and says when the path is drawn the wrong way round", () => {
    const nowhere = check([main()], []);
    expect(codes(nowhere)).toEqual(["lift.no-tank"]);
    expect(nowhere.flow.lifts).toEqual([]);
    const wrongWay = check([main()], [tank("k", { at: [29, 0] })]);
    expect(wrongWay.findings[0]?.text).toContain("draw the path from the tank outwards");
  });

  it("notes a pipe that can siphon", () => {
    const low = main({ start: 96.2, end: 95, drop: 1.2 } as Partial<PipeRun>);
    const result = check([low], [pumpTank({ lowWater: 0.4 })]);
    expect(result.flow.lifts[0]?.lift.value).toBeCloseTo(-0.2, 9);
    expect(codes(result)).toEqual(["lift.below-low-water"]);
    // 0.21 m higher, its start lies over the low water.
    const over = main({ start: 96.41, end: 95, drop: 1.41 } as Partial<PipeRun>);
    expect(codes(check([over], [pumpTank({ lowWater: 0.4 })]))).toEqual([]);
  });
});
