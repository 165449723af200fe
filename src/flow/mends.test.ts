import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { PipeRun } from "../dig/index.js";
import type { FlowResult } from "./types.js";
import { checkPlain, plainHouseDrain, plainInletTank } from "./flow.fixture.js";

/** Tank 1 with its inlet at 97.3, where a drain 28.5 m long ends. */
const tank = plainInletTank();

function first(flow: FlowResult) {
  const check = flow.pipes[0];
  if (check === undefined) throw new Error("expected a checked pipe");
  return check;
}

/** The pipe with its ends moved as a mend says, tilted between them. */
function moved(run: PipeRun, move: { start: number; end: number }): PipeRun {
  const at = (station: number) => move.start + ((move.end - move.start) * station) / run.length;
  const stations = run.stations.map((each) => ({
    ...each,
    invert: each.invert + at(each.station),
  }));
  const top = (run.outside + run.inside) / 2;
  const covers = stations.map((each) => each.ground - each.invert - top);
  const drop = run.drop + move.start - move.end;
  return {
    ...run,
    stations,
    drop,
    fall: drop / run.length,
    cover: { least: Math.min(...covers), most: Math.max(...covers) },
  };
}

describe("mends", () => {
  it("lower an uphill drain to its inlet at once, and say nothing of moving the inlet", () => {
    // Ends 0.7 m above the inlet; 1.5 m of fall from there is needed, and there is room for it.
    const { flow, findings } = checkPlain([plainHouseDrain({ start: 97.9, end: 98 })], [tank]);
    expect(first(flow).verdict).toBe("uphill");
    const [mend] = first(flow).mends;
    expect(mend?.kind).toBe("lower-end");
    expect(mend?.by).toBeCloseTo(0.7, 9);
    expect(mend?.text).toBe("lower the far end 0.70 m, to the inlet of Tank 1");
    expect(findings.map((each) => each.code)).toEqual(["pipe.uphill", "pipe.misses-inlet"]);
  });

  it("name the tank with the far end only while the two meet", () => {
    const meets = checkPlain([plainHouseDrain({ start: 97.4, end: 97.3 })], [tank]);
    expect(first(meets.flow).mends.map((mend) => mend.text)).toContain(
      "lower Tank 1 and the far end with it 0.20 m",
    );
    expect(first(meets.flow).mends.map((mend) => mend.kind)).not.toContain("lower-end");
  });

  it("do not move a tank that another gravity pipe leaves from", () => {
    const drain = plainHouseDrain({ start: 97.4, end: 97.3 });
    const outlet = plainHouseDrain({ start: 97.25, end: 96.9, id: "p2", trench: "t2", from: 31.5 });
    const { flow } = checkPlain([drain, outlet], [tank]);
    expect(flow.joints).toHaveLength(2);
    expect(first(flow).mends.map((mend) => mend.kind)).toEqual(["raise-start"]);
  });

  it("say so when no single change works, and give both ends", () => {
    // Too little cover at the near end, yet lowering it alone leaves no fall to the inlet it misses.
    const run = plainHouseDrain({ start: 98.4, end: 98.3, ground: 98.6 });
    const { flow, findings } = checkPlain([run], [tank]);
    expect(first(flow).mends.map((mend) => mend.kind)).toEqual(["both-ends"]);
    expect(findings[0]?.text).toContain(
      "No single change mends this: lower the near end 0.19 m and lower the far end 1.00 m, to the inlet of Tank 1.",
    );
  });

  it("say so when no change of the inverts works: the inlet lies too near to the ground", () => {
    const run = plainHouseDrain({ start: 97.35, end: 97.3, ground: 97.6 });
    const { flow, findings } = checkPlain([run], [tank, plainInletTank({ id: "k2", at: [-1, 0] })]);
    expect(first(flow).mends).toEqual([]);
    expect(findings[0]?.text).toContain("No change of its inverts alone mends this");
  });

  it("lay a shallow pipe deeper even where its fall, too great, stays as it is", () => {
    // By cover on steep ground: a stretch at 10% that no lowering makes flatter.
    const run = plainHouseDrain({ start: 99.9, end: 97.5, ground: 100 });
    const stations = [
      { station: 0, at: [0, 0] as [number, number], ground: 100, invert: 99.8 },
      { station: 10, at: [10, 0] as [number, number], ground: 99, invert: 98.8 },
      { station: 28.5, at: [28.5, 0] as [number, number], ground: 98.5, invert: 98.3 },
    ];
    const cover = { least: 0.1166, most: 0.1166 };
    const { flow } = checkPlain([{ ...run, stations, cover, drop: 1.5, fall: 1.5 / 28.5 }]);
    expect(first(flow).verdict).toBe("shallow");
    const [mend] = first(flow).mends;
    expect(mend?.kind).toBe("lay-deeper");
  });

  it("never break another check, whatever the pipe, the ground and the tank", () => {
    const level = fc.double({ min: 95, max: 101, noNaN: true });
    fc.assert(
      fc.property(level, level, level, fc.boolean(), (start, end, ground, hasTank) => {
        const run = plainHouseDrain({ start, end, ground });
        const works = hasTank ? [tank] : [];
        for (const mend of first(checkPlain([run], works).flow).mends) {
          if (mend.move === undefined) continue;
          const tanks = works.map((one) => ({ ...one, base: one.base + (mend.tank?.up ?? 0) }));
          const { findings } = checkPlain([moved(run, mend.move)], tanks);
          // How deep a drain may lie is no matter of its grade, and no mend looks at it.
          const codes = findings.map((each) => each.code);
          expect(codes.filter((code) => code !== "drain.deep")).toEqual([]);
        }
      }),
      { numRuns: 500 },
    );
  });

  it("find a change wherever there is room: a drain in deep ground never goes without", () => {
    const level = fc.double({ min: 95, max: 99, noNaN: true });
    fc.assert(
      fc.property(level, level, (start, end) => {
        const run = plainHouseDrain({ start, end, ground: 102 });
        const { flow, findings } = checkPlain([run], [tank]);
        const wrong = findings.filter((each) => each.code !== "drain.deep");
        expect(first(flow).mends.length > 0).toBe(wrong.length > 0);
      }),
    );
  });
});
