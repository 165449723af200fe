import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readBookTable, readFieldBook } from "./index.js";
import type { BookReading, FieldBookOptions, FieldRow } from "./index.js";

const SEED = 20260402;

function worked(rows: readonly FieldRow[], options: FieldBookOptions = {}): BookReading {
  const read = readFieldBook(rows, options);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

function book(text: string, options: FieldBookOptions = {}, unit: "m" | "ft" = "m"): BookReading {
  const table = readBookTable(text, { unit });
  if (!table.ok) throw new Error(JSON.stringify(table.problems));
  expect(table.value.bad).toEqual([]);
  return worked(table.value.rows, options);
}

const elevations = (reading: BookReading) =>
  reading.stations.map(({ station, elevation }) => [station, Number(elevation.toFixed(4))]);

describe("a level book", () => {
  const loop: FieldRow[] = [
    { station: "BM", backsight: 1.5, known: 100 },
    { station: "A", intermediate: 2 },
    { station: "TP1", foresight: 0.5, backsight: 2.5 },
    { station: "B", intermediate: 1 },
    { station: "BM", foresight: 3.51 },
  ];

  it("carries elevations over a turning point", () => {
    const reading = worked(loop);
    expect(elevations(reading)).toEqual([
      ["BM", 100],
      ["A", 99.5],
      ["TP1", 101],
      ["B", 102.5],
      ["BM", 99.99],
    ]);
    expect(reading.stations.map((station) => station.kind)).toEqual([
      ...["bench", "ground", "turning", "ground", "ground"],
    ]);
    expect(reading.stations[2]?.hi).toBeCloseTo(103.5, 12);
    expect(reading.stations[2]?.readFrom).toBeCloseTo(101.5, 12);
  });

  it("checks the page and finds the misclosure", () => {
    const { check, closure } = worked(loop, { runLength: 1000 });
    expect(check).toMatchObject({ backsights: 4, foresights: 4.01, ok: true });
    expect(check.rise).toBeCloseTo(-0.01, 10);
    expect(closure?.misclose).toBeCloseTo(-0.01, 12);
    expect(closure).toMatchObject({ allowed: 0.012, ok: true, length: 1000 });
    expect(worked(loop, { runLength: 1000, closurePerRootKm: 0.004 }).closure?.ok).toBe(false);
    expect(worked(loop).closure).not.toHaveProperty("ok");
  });

  it("takes the run's length from places when all that carry it have one", () => {
    const placed = loop.map((row) => {
      if (row.station === "BM" && row.backsight !== undefined) return { ...row, x: 0, y: 0 };
      return row.station === "TP1" ? { ...row, x: 30, y: 40 } : row;
    });
    expect(worked(placed).closure?.length).toBeCloseTo(100, 10);
  });

  it("closes on another bench of known elevation", () => {
    const rows = [...loop.slice(0, -1), { station: "BM2", foresight: 1.5, known: 102.01 }];
    expect(worked(rows).closure?.misclose).toBeCloseTo(-0.01, 10);
  });

  it("has no closure when the run ends on unknown ground", () => {
    expect(worked(loop.slice(0, 4))).not.toHaveProperty("closure");
  });

  it("takes a turning point whose backsight stands on a line of its own", () => {
    const reading = worked([
      { station: "BM", backsight: 1.5, known: 100 },
      { station: "TP1", foresight: 0.5 },
      { station: "TP1", backsight: 2.5 },
      { station: "B", foresight: 1 },
    ]);
    expect(reading.stations.at(-1)?.elevation).toBeCloseTo(102.5, 12);
    expect(reading.check).toMatchObject({ backsights: 4, foresights: 1.5, ok: true });
  });

  it("begins a new run from another bench, and still checks", () => {
    const reading = worked([
      { station: "BM", backsight: 1.5, known: 100 },
      { station: "A", foresight: 0.5 },
      { station: "BM2", backsight: 1, known: 200 },
      { station: "C", foresight: 3 },
    ]);
    expect(reading.stations.at(-1)?.elevation).toBe(198);
    expect(reading.check).toMatchObject({ rise: -1, ok: true });
  });

  it("uses the known elevation when a bench is sighted back on again", () => {
    const reading = worked([
      ...loop,
      { station: "BM", backsight: 1 },
      { station: "D", foresight: 2 },
    ]);
    expect(reading.stations.at(-1)?.elevation).toBe(99);
    expect(reading.check.ok).toBe(true);
  });

  it("reports a backsight that nothing hangs on", () => {
    const reading = worked([
      { station: "BM", backsight: 1.5, known: 100 },
      { station: "TP1", foresight: 0.5, backsight: 2.5, line: 3 },
    ]);
    expect(reading.problems).toMatchObject([{ code: "no-foresight", stops: false }]);
    expect(reading.check).toMatchObject({ backsights: 1.5, foresights: 0.5, rise: 1, ok: true });
  });

  it.each([
    [[], "empty"],
    [[{ station: "A", backsight: 1 }], "no-bench"],
    [[{ station: "A", foresight: 1 }], "no-backsight"],
    [
      [
        { station: "A", backsight: 1, known: 5 },
        { station: "B", backsight: 2 },
      ],
      "unknown-station",
    ],
    [[{ station: "A", backsight: NaN, known: 5 }], "bad-setting"],
  ] as [FieldRow[], string][])("refuses %j as %s", (rows, code) => {
    const read = readFieldBook(rows);
    expect(read.ok ? "read" : read.problems[0]?.code).toBe(code);
  });

  it("places stations by distance and bearing from the level", () => {
    const reading = worked(
      [
        { station: "BM", backsight: 1, known: 100, x: 0, y: 0, distance: 10, bearing: 180 },
        { station: "A", intermediate: 2, distance: 5, bearing: 90 },
        {
          ...{ station: "TP", foresight: 1.5, distance: 20, bearing: 0, backsight: 1 },
          ...{ backDistance: 8, backBearing: 270 },
        },
        { station: "C", intermediate: 1, distance: 2, bearing: 0 },
        { station: "D", intermediate: 1.2 },
      ],
      {},
    );
    const at = Object.fromEntries(reading.points.map(({ id, x, y }) => [id, [x, y]]));
    expect(at["A"]?.[0]).toBeCloseTo(5, 12);
    expect(at["A"]?.[1]).toBeCloseTo(10, 12);
    expect(at["TP"]?.[1]).toBeCloseTo(30, 12);
    expect(at["C"]?.[0]).toBeCloseTo(8, 12);
    expect(at["C"]?.[1]).toBeCloseTo(32, 12);
    expect(reading.unplaced).toEqual(["D"]);
  });

  it(`finds any ground again (seed ${SEED})`, () => {
    const heights = fc.array(fc.double({ min: -50, max: 50, noNaN: true }), {
      minLength: 3,
      maxLength: 12,
    });
    fc.assert(
      fc.property(heights, fc.double({ min: 0.1, max: 3, noNaN: true }), (ground, above) => {
        const rows = ground.map((height, at): FieldRow => {
          const from = ground[at - 1];
          const station = `S${at}`;
          // The level stands `above` the earlier of each two stations.
          const back = at === ground.length - 1 ? {} : { backsight: above };
          return from === undefined
            ? { station, ...back, known: height }
            : { station, ...back, foresight: from + above - height };
        });
        const reading = worked(rows);
        reading.stations.forEach(({ elevation }, at) => {
          expect(elevation).toBeCloseTo(ground[at]!, 9);
        });
        expect(reading.check.ok).toBe(true);
      }),
      { seed: SEED },
    );
  });
});

describe("a pasted book", () => {
  it("reads a book with header, heights and remarks", () => {
    const reading = book(
      "Sta\tBS\tHI\tFS\tElev\tRemarks\nBM\t1.5\t101.5\t\t100\tbolt\nA\t\t\t2.0\t99.5\t\nTP1\t2.5\t103.5\t0.5\t101\t\nBM\t\t\t3.51\t99.99\t",
    );
    expect(elevations(reading)).toEqual([
      ["BM", 100],
      ["A", 99.5],
      ["TP1", 101],
      ["BM", 99.99],
    ]);
    expect(reading.problems).toEqual([]);
    expect(reading.closure?.misclose).toBeCloseTo(-0.01, 10);
    expect(reading.stations[0]?.note).toBe("bolt");
  });

  it("says where the person's own sum differs", () => {
    const reading = book("Sta,BS,FS,Elev\nBM,1.5,,100\nA,,2.0,99.4\nB,,1.0,100.5");
    expect(reading.problems).toMatchObject([{ stops: false, lines: [3] }]);
    expect(reading.problems[0]?.text).toContain("works out at 99.500 m (326.44 ft)");
  });

  it("takes the last elevation as known when none stand between", () => {
    const reading = book("Sta,BS,FS,Elev\nBM,1.5,,100\nTP,1.0,2.0,\nBM2,,0.5,100.01");
    expect(reading.closure?.known).toBe(100.01);
    expect(reading.closure?.misclose).toBeCloseTo(-0.01, 10);
  });

  it("reads feet and inches on the rod", () => {
    const reading = book(`Point;BS;FS\nBM;4' 6";\nA;;5' 0 1/2"`, { bench: 100 * 0.3048 }, "ft");
    expect(reading.stations[1]?.elevation).toBeCloseTo((100 + 4.5 - 5 - 0.5 / 12) * 0.3048, 10);
  });

  it("reads a decimal comma and dashes between spaces", () => {
    expect(book("BM 1,5 -\nA - 2,0", { bench: 10 }).stations[1]?.elevation).toBeCloseTo(9.5, 12);
  });

  it("asks when there is no header", () => {
    const table = readBookTable("BM,1.5,,\nA,,2.0,\nTP,1,,0.5\nC,,,1", { unit: "m" });
    expect(table.ok && table.value.ask).toBe(true);
    expect(table.ok && table.value.roles).toEqual([
      "station",
      "backsight",
      "intermediate",
      "foresight",
    ]);
  });

  it("names bad lines", () => {
    const table = readBookTable("Sta,BS,FS\nBM,1.5,\nA,,two\n,,1\nC,,\nD,,1.1", { unit: "m" });
    expect(table.ok && table.value.bad).toEqual([
      { row: 3, text: "A |  | two", reason: "the foresight “two” is not a reading" },
      { row: 4, text: " |  | 1", reason: "the station has no name" },
      { row: 5, text: "C |  | ", reason: "the line has no sight" },
    ]);
  });

  it.each([
    ["", "empty"],
    ["BM\nA\nB", "one-column"],
    ["Sta,BS\nBM,1", "roles"],
    ["BM 1.5\nA 2 3 4", "unclear-columns"],
  ])("refuses %j as %s", (text, code) => {
    const table = readBookTable(text, { unit: "m" });
    expect(table.ok ? "read" : table.problems[0]?.code).toBe(code);
  });
});
