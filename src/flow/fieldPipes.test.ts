import { describe, expect, it } from "vitest";
import { checkPlain, plainHouseDrain, plainInletTank } from "./flow.fixture.js";

/** A 30 m pipe from the outlet of the tank (97.25 at x = 31.5). */
const line = (end: number, start = 97.25) =>
  plainHouseDrain({ start, end, from: 31.5, length: 30, inside: 0.1, outside: 0.11 });
const daily = { by: "daily", flow: 1.7e-5 } as const;
const check = (run: ReturnType<typeof line>, field: string[]) =>
  checkPlain([run], [plainInletTank()], "metric", { field, design: daily });
const codes = (result: ReturnType<typeof check>): string[] =>
  result.findings.map(({ code }) => code).filter((code) => /^(pipe|drain|field)\./.test(code));

describe("a pipe in a trench of the field", () => {
  it("is asked neither least fall nor speed, level or nearly", () => {
    for (const end of [97.25, 97.2, 96.5]) {
      const result = check(line(end), ["t1"]);
      expect(codes(result)).toEqual([]);
      expect(result.flow.pipes[0]).toMatchObject({
        field: true,
        verdict: "runs",
        leastFall: null,
        mostFall: null,
        carries: null,
      });
    }
  });

  it("is a sewer as soon as its trench is no field", () => {
    expect(codes(check(line(97.2), ["other"]))).toContain("pipe.fall-too-small");
    expect(codes(check(line(97.25), []))).toContain("pipe.uphill");
    expect(codes(check(line(97.2), []))).toContain("drain.slow");
  });

  it("is cautioned when it rises, just beyond the tolerance of half a millimetre", () => {
    expect(codes(check(line(97.2504), ["t1"]))).toEqual([]);
    const rises = check(line(97.2506), ["t1"]);
    expect(codes(rises)).toEqual(["field.rises"]);
    expect(rises.findings.find(({ code }) => code === "field.rises")).toMatchObject({
      level: "caution",
      source: "common practice, no source: laid level to 4 in per 100 ft",
    });
    const [pipe] = check(line(97.35), ["t1"]).flow.pipes;
    expect(pipe?.verdict).toBe("uphill");
    expect(pipe?.mends[0]?.kind).toBe("lower-end");
  });

  it("is cautioned for a stretch that rises on a way that falls", () => {
    const run = line(97.1);
    const [first, last] = run.stations;
    if (first === undefined || last === undefined) throw new Error("expected two stations");
    const middle = { station: 15, at: [46.5, 0] as [number, number], ground: 100, invert: 97.0 };
    const text = check({ ...run, stations: [first, middle, last] }, ["t1"]).findings.find(
      ({ code }) => code === "field.rises",
    )?.text;
    expect(text).toContain("rises 100 mm between 15.00 m and 30.00 m from its start");
  });

  it("may end in the ground, but starts at something", () => {
    const far = plainHouseDrain({ start: 97, end: 97, from: 60, length: 30 });
    const result = check(far, ["t1"]);
    expect(codes(result)).toEqual(["pipe.starts-at-nothing"]);
    expect(result.flow.pipes[0]?.verdict).toBe("starts at nothing");
    expect(codes(check(line(97.25), ["t1"]))).toEqual([]);
  });
});
