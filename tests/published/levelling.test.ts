import { describe, expect, it } from "vitest";
import { readFieldBook, THIRD_ORDER } from "../../src/survey/index.js";
import type { FieldRow } from "../../src/survey/index.js";

describe("levelling against published figures", () => {
  /**
   * Student lab sheet on levelling (quoted second-hand): bench mark 40.00 m, backsight 1.26,
   * foresights from one set-up and the elevations that the sheet gives for them, m. Method: US Navy,
   * Engineering Aid Basic, NAVEDTRA 14071, ch. 7: HI = elevation + BS; elevation = HI − FS.
   */
  const sheet = [
    [1.12, 40.14],
    [1.235, 40.025],
    [1.39, 39.87],
    [1.21, 40.05],
    [1.17, 40.09],
    [1.49, 39.77],
  ] as const;

  it.each(["foresight", "intermediate"] as const)(
    "six stations from one set-up, as %s",
    (sight) => {
      const rows: FieldRow[] = [
        { station: "BM", backsight: 1.26, known: 40 },
        ...sheet.map(([reading], at) => ({ station: `P${at + 1}`, [sight]: reading })),
      ];
      const read = readFieldBook(rows);
      if (!read.ok) throw new Error(JSON.stringify(read.problems));
      const found = read.value.stations.slice(1).map((station) => station.elevation);
      sheet.forEach(([, published], at) => {
        expect(found[at]).toBeCloseTo(published, 9);
      });
      expect(read.value.stations[0]?.hi).toBeCloseTo(41.26, 12);
    },
  );

  it("ΣBS − ΣFS = last − first (NAVEDTRA 14071, ch. 7), on the sheet's first and last sight", () => {
    const read = readFieldBook([
      { station: "BM", backsight: 1.26, known: 40 },
      ...sheet.map(([foresight], at) => ({ station: `P${at + 1}`, foresight })),
    ]);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const { backsights, foresights, rise, ok } = read.value.check;
    expect(backsights - foresights).toBeCloseTo(1.26 - 1.49, 12);
    expect(rise).toBeCloseTo(39.77 - 40, 12);
    expect(ok).toBe(true);
  });

  /**
   * Third order, 12 mm × √km: FGCC, Standards and Specifications for Geodetic Control Networks, 1984
   * (second-hand). A loop that misses by 244 mm in 30.5 km fails; its limit is 66 mm.
   */
  it("a loop that misses by 244 mm in 30.5 km fails the third-order limit of 66 mm", () => {
    const loop = (misclose: number) => {
      const read = readFieldBook(
        [
          { station: "BM", backsight: 1.5, known: 100 },
          { station: "TP", foresight: 1, backsight: 2 },
          { station: "BM", foresight: 2.5 - misclose },
        ],
        { runLength: 30_500 },
      );
      if (!read.ok) throw new Error(JSON.stringify(read.problems));
      return read.value.closure;
    };
    expect(THIRD_ORDER).toBe(0.012);
    expect(loop(0.244)?.misclose).toBeCloseTo(0.244, 12);
    expect(Math.round((loop(0.244)?.allowed ?? NaN) * 1000)).toBe(66);
    expect(loop(0.244)?.ok).toBe(false);
    expect(loop(0.066)?.ok).toBe(true);
    expect(loop(-0.067)?.ok).toBe(false);
  });
});
