import { describe, expect, it } from "vitest";
import { pointsFromTable, readPointTable } from "./index.js";
import type { ColumnRole, PointsRead, SurveyUnit, TablePreview } from "./index.js";

function preview(text: string, options = {}): TablePreview {
  const read = readPointTable(text, options);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

function roles(table: TablePreview): ColumnRole[] {
  return table.columns.map((guess) => guess.role);
}

function points(text: string, unit: SurveyUnit = "m", options = {}): PointsRead {
  const table = preview(text, options);
  return pointsFromTable(table, roles(table), unit);
}

const PLACES = [
  { id: "1", x: 10, y: 20.5, z: 100.25 },
  { id: "2", x: 15.5, y: 22, z: 101 },
  { id: "3", x: 12, y: 30, z: 99.5 },
];

describe("the same three points, however they are written", () => {
  it.each([
    ["comma and header", "id,x,y,z\n1,10,20.5,100.25\n2,15.5,22,101\n3,12,30,99.5"],
    [
      "header with units",
      "Pt. No.;Easting (m);Northing (m);Elev (m)\n1;10;20.5;100.25\n2;15.5;22;101\n3;12;30;99.5",
    ],
    ["northing first", "P\tN\tE\tZ\n1\t20.5\t10\t100.25\n2\t22\t15.5\t101\n3\t30\t12\t99.5"],
    ["number N E Z without header", "1,20.5,10,100.25\n2,22,15.5,101\n3,30,12,99.5"],
    ["x y z without header", "10 20.5 100.25\n15.5 22 101\n12 30 99.5"],
    ["runs of spaces", "  10   20.5  100.25\n 15.5     22     101\n12\t30   99.5\n"],
    ["decimal comma, semicolons", "id;x;y;z\n1;10,0;20,5;100,25\n2;15,5;22,0;101,0\n3;12;30;99,5"],
    ["decimal comma, tabs", "10\t20,5\t100,25\n15,5\t22\t101\n12\t30\t99,5"],
    ["decimal comma, spaces", "10,0 20,5 100,25\n15,5 22,0 101,0\n12,0 30,0 99,5"],
    [
      "byte-order mark, CRLF, comments, blanks",
      "\uFEFF# our lot\r\nid,x,y,z\r\n\r\n1,10,20.5,100.25\r\n# gate\r\n2,15.5,22,101\r\n3,12,30,99.5\r\n\r\n",
    ],
    ["old Mac line ends", "id,x,y,z\r1,10,20.5,100.25\r2,15.5,22,101\r3,12,30,99.5"],
    [
      "quoted",
      '"id","x","y","z"\n"1","10","20.5","100.25"\n"2","15.5","22","101"\n"3","12","30","99.5"',
    ],
    ["a header in a comment", "# id, n, e, z\n1,20.5,10,100.25\n2,22,15.5,101\n3,30,12,99.5"],
    [
      "a header in another language, by position",
      "numero;pohjoinen;itä;korkeus\n1;20.5;10;100.25\n2;22;15.5;101\n3;30;12;99.5",
    ],
  ])("%s", (_name, text) => {
    const read = points(text);
    expect(read.points).toEqual(PLACES);
    expect(read.bad).toEqual([]);
    expect(read.problems).toEqual([]);
  });

  it("keeps notes of several words, and a quoted comma", () => {
    expect(points("1 20.5 10 100.25 edge of road\n2 22 15.5 101\n3 30 12 99.5 top").points).toEqual(
      [{ ...PLACES[0], note: "edge of road" }, PLACES[1], { ...PLACES[2], note: "top" }],
    );
    const quoted = points('1,20.5,10,100.25,"bank, top"\n2,22,15.5,101,\n3,30,12,99.5,ditch');
    expect(quoted.points.map((point) => point.note)).toEqual(["bank, top", undefined, "ditch"]);
  });

  it("takes an inch mark in a note as a mark", () => {
    const read = points(
      'id,x,y,z,note\n1,10,20.5,100.25,"6 in\n2,15.5,22,101,4" pipe\n3,12,30,99.5,',
    );
    expect(read.points.map((point) => point.note)).toEqual(['"6 in', '4" pipe', undefined]);
  });

  it("reads thousands commas in quotes or between tabs", () => {
    expect(points('1,"1,020.5",10,100.25\n2,22,15.5,101\n3,30,12,99.5').points[0]?.y).toBe(1020.5);
    expect(points("1\t1,020.5\t10\t100.25\n2\t22\t15.5\t101\n3\t30\t12\t99.5").points[0]?.y).toBe(
      1020.5,
    );
  });

  it("keeps names that are not numbers", () => {
    expect(
      points("A1,20.5,10,100.25\nA2,22,15.5,101\nB,30,12,99.5").points.map((p) => p.id),
    ).toEqual(["A1", "A2", "B"]);
  });
});

describe("what is asked", () => {
  it("asks nothing when the header names all", () => {
    expect(preview("id,x,y,z\n1,10,20,30\n2,11,22,33\n3,15,20,31").ask).toEqual([]);
  });

  it("asks which coordinate is first when only the order says it", () => {
    const table = preview("1,20.5,10,100.25\n2,22,15.5,101\n3,30,12,99.5");
    expect(table.ask.map((question) => [question.code, question.columns])).toEqual([
      ["axis-order", [1, 2]],
    ]);
    expect(table.columns.map((guess) => guess.sure)).toEqual([
      "likely",
      "guess",
      "guess",
      "likely",
    ]);
  });

  it("asks about a comma before three digits", () => {
    const table = preview(
      "10,250\t20,500\t100,250\n15,500\t22,000\t101,000\n12,000\t30,000\t99,500",
    );
    expect(table.ask.map((question) => question.code)).toContain("decimal-comma");
    expect(table.decimal).toBe(",");
    const settled = preview(
      "10,250\t20,500\t100,250\n15,500\t22,000\t101,000\n12,000\t30,000\t99,500",
      {
        decimal: ".",
      },
    );
    expect(pointsFromTable(settled, roles(settled), "m").points[0]?.x).toBe(10250);
  });

  it("tells a UTM easting from a northing by size", () => {
    const table = preview(
      "512345.1 4412345.2 1701.2\n512355.1 4412349.2 1702.2\n512325.1 4412340.2 1699",
    );
    expect(roles(table)).toEqual(["east", "north", "elevation"]);
    const turned = preview(
      "4412345.2 512345.1 1701.2\n4412349.2 512355.1 1702.2\n4412340.2 512325.1 1699",
    );
    expect(roles(turned)).toEqual(["north", "east", "elevation"]);
  });

  it("says the unit that the header names", () => {
    expect(preview("id,N (ft),E (ft),Elev (ft)\n1,1,2,3\n2,4,5,7\n3,4,9,7").unit).toBe("ft");
    expect(preview("id,N_usft,E_usft,Z_usft\n1,1,2,3\n2,4,5,7\n3,4,9,7").unit).toBe("us-survey-ft");
    expect(preview("id,N,E,Z\n1,1,2,3\n2,4,5,7\n3,4,9,7").unit).toBeUndefined();
  });
});

describe("tables that cannot be read", () => {
  it.each([
    ["", "empty"],
    ["\n \n# only a remark\n", "empty"],
    ["12\n13\n14", "one-column"],
    ["a,b\n1,2\n3,4", "too-few-columns"],
    ["one two three four\nfive six seven eight", "too-few-columns"],
  ])("%j is %s", (text, code) => {
    const read = readPointTable(text);
    expect(read.ok ? "read" : read.problems[0]?.code).toBe(code);
  });

  it("needs each coordinate once", () => {
    const table = preview("1,2,3\n4,5,7\n4,9,7");
    const read = pointsFromTable(table, ["east", "east", "elevation"], "m");
    expect(read.problems[0]).toMatchObject({ code: "roles", stops: true });
    expect(read.problems[0]?.text).toBe("east and north must each be one column");
  });
});

describe("bad rows are named, not dropped in silence", () => {
  it("gives line, text and reason", () => {
    const text =
      "id,x,y,z\n1,10,20,30\n\n2,abc,22,33\n3,11,,31\n4,15,29,NaN\n5,12,25\n6,14,21,32\n7,19,29,1e999\n8,30,28,29";
    const read = points(text);
    expect(read.points.map((point) => point.id)).toEqual(["1", "6", "8"]);
    expect(read.bad).toEqual([
      { row: 4, text: "2 | abc | 22 | 33", reason: "the easting “abc” is not a plain number" },
      { row: 5, text: "3 | 11 |  | 31", reason: "the northing is missing" },
      { row: 6, text: "4 | 15 | 29 | NaN", reason: "the elevation “NaN” is not a plain number" },
      { row: 7, text: "5 | 12 | 25", reason: "the elevation is missing" },
      {
        row: 9,
        text: "7 | 19 | 29 | 1e999",
        reason: "the elevation “1e999” is not a plain number",
      },
    ]);
  });

  it("names rows with another delimiter", () => {
    const read = points("1,10,20,30\n2,11,22,33\n3;15;20;31\n4,12,28,30\n5 1 2 3");
    expect(read.points).toHaveLength(3);
    expect(read.bad.map((bad) => bad.row)).toEqual([3, 5]);
  });

  it("keeps line numbers after a quoted line end", () => {
    const read = points(
      'id,x,y,z,note\n1,10,20,30,"two\nlines"\n2,x,22,33,\n3,15,20,31,\n4,12,28,30,',
    );
    expect(read.bad.map((bad) => bad.row)).toEqual([4]);
    expect(read.points[0]?.note).toBe("two lines");
  });

  it("reports repeated names and places and keeps every point", () => {
    const read = points("id,x,y,z\n1,10,20,30\n1,11,22,33\n2,10,20,30.5\n3,15,20,31");
    expect(read.points.map((point) => point.id)).toEqual(["1", "1 (2)", "2", "3"]);
    expect(read.duplicates).toEqual([
      { kind: "id", id: "1", lines: [2, 3], apart: 3 },
      { kind: "place", id: "1", lines: [2, 4], apart: 0.5 },
    ]);
  });

  it("never gives one name to two points", () => {
    const ids = points("id,x,y,z\n1,1,20,30\n1,2,22,33\n1 (2),3,21,30\n1,4,29,31").points.map(
      (p) => p.id,
    );
    expect(new Set(ids).size).toBe(4);
  });
});

describe("points that make no ground", () => {
  const codes = (text: string) =>
    points(text).problems.map((problem) => [problem.code, problem.stops]);
  it("fewer than three", () => {
    expect(codes("x,y,z\n1,2,3\n4,5,6\nbad,5,6")).toEqual([["too-few-points", true]]);
  });
  it("all in a line, also far from the origin, and all in one place", () => {
    expect(codes("x,y,z\n1,2,3\n2,4,6\n3,6,1\n10,20,5")).toEqual([["one-line", true]]);
    expect(codes("x,y,z\n500001,4000002,3\n500002,4000004,6\n500003,4000006,1")).toEqual([
      ["one-line", true],
    ]);
    expect(codes("x,y,z\n5,5,3\n5,5,4\n5,5,5")).toEqual([["one-line", true]]);
  });
  it("degrees, named or not", () => {
    const body = "-121.50012,38.50123,50\n-121.50034,38.50145,51\n-121.50067,38.50111,52";
    expect(codes(`lon,lat,elev\n${body}`)).toEqual([["degrees", true]]);
    expect(codes(body)).toEqual([["degrees", true]]);
  });
  it("a point a thousand times further off, and a zero elevation", () => {
    const site = "x,y,z\n0,0,735\n50,0,736\n50,60,739\n0,60,738\n25,30,737\n";
    expect(codes(site)).toEqual([]);
    const far = points(`${site}50000,60,738`).problems;
    expect(far).toMatchObject([{ code: "far-point", stops: false, lines: [7] }]);
    expect(far[0]?.text).toMatch(/^point 6 is \d+ times as far from the middle as most$/);
    expect(points(`${site}20,20,0`).problems).toMatchObject([
      { code: "odd-elevation", lines: [7] },
    ]);
    // In the numbers of the table, whatever its unit.
    expect(points(`${site}20,20,0`, "ft").problems[0]?.text).toContain("point 6 is 737.0 above or");
  });
  it("a survey of a few inches", () => {
    expect(codes("x,y,z\n0,0,1\n0.5,0,1\n0.5,0.5,1")).toEqual([["tiny", false]]);
  });
});

describe("units and origin", () => {
  it("turns feet and US survey feet into metres", () => {
    expect(points("x,y,z\n100,200,300\n150,220,310\n120,300,290", "ft").points[0]).toEqual({
      id: "1",
      x: 100 * 0.3048,
      y: 200 * 0.3048,
      z: 300 * 0.3048,
    });
    // 3937 US survey feet are 1200 m exactly.
    const survey = points("x,y,z\n3937,0,0\n3950,20,1\n3937,40,2", "us-survey-ft").points[0];
    expect(survey?.x).toBeCloseTo(1200, 12);
  });

  it("suggests a round local origin for large coordinates and only for those", () => {
    const read = points(
      "x,y,z\n512345.1,4412345.2,1701\n512395.1,4412349.2,1702\n512325.1,4412390.2,1699",
    );
    expect(read.offset).toMatchObject({ x: 512000, y: 4412000, inUnit: { x: 512000, y: 4412000 } });
    expect(read.offset?.points[0]?.x).toBeCloseTo(345.1, 8);
    expect(read.points[0]?.x).toBe(512345.1);
    const feet = points(
      "x,y,z\n6512345,2112345,900\n6512395,2112349,902\n6512325,2112390,901",
      "us-survey-ft",
    );
    expect(feet.offset?.inUnit).toEqual({ x: 6512000, y: 2112000 });
    expect(feet.offset?.points[0]?.x).toBeCloseTo((345 * 1200) / 3937, 6);
    expect(points("x,y,z\n1,2,3\n40,5,7\n4,90,7").offset).toBeUndefined();
  });
});

describe("speed", () => {
  it("reads 20,000 rows in under 0.8 s of processor time, cold", () => {
    const lines = ["id,easting,northing,elevation,note"];
    for (let row = 0; row < 20_000; row += 1) {
      const along = row % 200;
      const up = Math.floor(row / 200);
      lines.push(
        `${row + 1},${(along * 1.01).toFixed(3)},${(up * 1.03).toFixed(3)},${(700 + up * 0.1).toFixed(3)},gr`,
      );
    }
    const text = lines.join("\r\n");
    const start = process.cpuUsage();
    const read = points(text);
    const took = process.cpuUsage(start).user / 1000;
    expect(read.points).toHaveLength(20_000);
    expect(read.problems).toEqual([]);
    // Processor time, since other work shares the cores; the bound allows for a cold start.
    expect(took).toBeLessThan(800);
  });
});
