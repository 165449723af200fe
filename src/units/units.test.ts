import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  area,
  bearing,
  dailyFlow,
  days,
  density,
  distance,
  earthVolume,
  elevation,
  flow,
  FOOT,
  haulMass,
  head,
  hours,
  land,
  length,
  liquidVolume,
  mass,
  minutes,
  money,
  pipeSlope,
  power,
  pressure,
  size,
  US_SURVEY_FOOT,
  velocity,
  wallSlope,
} from "./index.js";
import type { Measure, PrintOptions, UnitSystem } from "./index.js";

const SEED = 20260401;

/** The value, or the refusal's text so that a failing test shows it. */
function read(measure: Measure, text: string, system: UnitSystem = "us"): number | string {
  const parsed = measure.parse(text, system);
  return parsed.ok ? parsed.value : parsed.text;
}

function refused(measure: Measure, text: string, system: UnitSystem = "us"): boolean {
  return !measure.parse(text, system).ok;
}

describe("lengths as people write them", () => {
  const sixFourAndAHalf = 76.5 * 0.0254;
  it.each([
    `6'4 1/2"`,
    `6' 4-1/2"`,
    `6'-4 1/2"`,
    `6′ 4½″`,
    `6’4½”`,
    `6''`.replace("6''", `76.5''`),
    `6 ft 4 1/2 in`,
    `6 feet 4.5 inches`,
    `6ft 4 1/2`,
    `76 1/2 in`,
    `76½"`,
    `6.375'`,
    `6.375`,
    `1.9431 m`,
    `194.31 cm`,
    `1,943.1 mm`,
    `1 943.1 mm`,
    `  6′ 4 1⁄2″ `,
    `1 m 94.31 cm`,
  ])("%s", (text) => {
    expect(read(length, text)).toBeCloseTo(sixFourAndAHalf, 10);
  });

  it.each([
    [`6'4`, 76 * 0.0254],
    [`6 ft 4`, 76 * 0.0254],
    [`6 ft 4 in`, 76 * 0.0254],
    [`76"`, 76 * 0.0254],
    [`76 in`, 76 * 0.0254],
    [`6.33'`, 6.33 * 0.3048],
    [`1.9 m`, 1.9],
    [`190 cm`, 1.9],
    [`1,900 mm`, 1.9],
    [`1½"`, 1.5 * 0.0254],
    [`.5 ft`, 0.1524],
    [`1/2 in`, 0.0127],
    [`1,250.5 ft`, 1250.5 * 0.3048],
    [`10 yd`, 9.144],
  ])("%s on a US site", (text, metres) => {
    expect(read(length, text)).toBeCloseTo(metres, 10);
  });

  it("reads a decimal comma only where it cannot be thousands", () => {
    expect(read(length, "1,9 m", "metric")).toBe(1.9);
    expect(read(length, "0,900 m", "metric")).toBe(0.9);
    expect(read(length, "1.900,5 mm", "metric")).toBeCloseTo(1.9005, 12);
    expect(read(length, "1,900 mm", "metric")).toBeCloseTo(1.9, 12);
    expect(read(length, "1,900 m", "metric")).toBe(1900);
    expect(read(length, "1,9 m", "us")).toBe(1.9);
    expect(read(length, "0,900 m", "us")).toBe(0.9);
    expect(read(length, "1,900 m", "us")).toBe(1900);
    expect(refused(length, "1,9000 m", "us")).toBe(true);
    expect(refused(length, "1.900,5 mm", "us")).toBe(true);
    expect(refused(length, "1,90,000 m", "metric")).toBe(true);
  });

  it("takes a bare number in the label's unit or in the unit that the field names", () => {
    expect(read(length, "10", "us")).toBeCloseTo(3.048, 12);
    expect(read(length, "10", "metric")).toBe(10);
    expect(read(size, "4", "us")).toBeCloseTo(0.1016, 12);
    expect(read(size, "100", "metric")).toBeCloseTo(0.1, 12);
    expect(length.parse("300", "us", { bareUnit: "mm" })).toEqual({ ok: true, value: 0.3 });
  });

  it.each([
    "",
    "   ",
    "six",
    "6 x",
    "6 ft 4 in deep",
    "6 ft²",
    "6 ft^2",
    "6 gal",
    "ft",
    "'",
    "-",
    "--6",
    "6 -",
    "6..5",
    "1.2.3",
    "1/0",
    "4 3/2 in",
    "6 in 4 ft",
    "6 ft 4 ft",
    "6.5 ft 4 in",
    "6 4",
    "1e5",
    "NaN",
    "Infinity",
    "0x10",
    "6 mft",
    `${"9".repeat(400)} ft`,
    "1 m 2",
    "٣",
  ])("refuses %j with a message, never NaN", (text) => {
    for (const system of ["us", "metric"] as const) {
      const parsed = length.parse(text, system);
      expect(parsed.ok).toBe(false);
      if (!parsed.ok) expect(parsed.text).toMatch(/write a length such as/);
    }
  });

  it("refuses a length below zero and takes an elevation below zero", () => {
    expect(length.parse("-2 ft", "us")).toEqual({
      ok: false,
      text: "A length cannot be below zero.",
    });
    expect(read(elevation, "-12.5 ft")).toBeCloseTo(-3.81, 12);
    expect(read(elevation, "−12' 6\"")).toBeCloseTo(-3.81, 12);
    expect(read(elevation, "-0")).toBe(0);
  });
});

describe("printed lengths", () => {
  it.each([
    [length, 1.9431, {}, "6′ 4½″"],
    [length, 0, {}, "0″"],
    [length, 0.1143, {}, "4½″"],
    [length, 0.3048 * 6, {}, "6′ 0″"],
    [length, 0.3048 * 6 + 0.0127, {}, "6′ 0½″"],
    [length, 0.3048 * 5.9999, {}, "6′ 0″"],
    [length, 1.9431 + 0.0254 / 16, { inchParts: 16 }, "6′ 4 9⁄16″"],
    [length, 1.8288 + 0.0254 / 16, { inchParts: 16 }, "6′ 0 1⁄16″"],
    [length, 1.95, { inchParts: 2 }, "6′ 5″"],
    [length, 1.9431, { digits: 2 }, "6.38 ft"],
    [length, 1.9431, { unit: "in", digits: 1 }, "76.5 in"],
    [length, 1.9431, { bare: true }, "6.38"],
    [elevation, 735, {}, "2,411.42 ft"],
    [elevation, -0.0001, {}, "0.00 ft"],
    [elevation, -3.81, {}, "-12.50 ft"],
    [size, 0.0381, {}, "1½ in"],
    [distance, 19, {}, "62.3 ft"],
  ] as [Measure, number, PrintOptions, string][])("%#: %o", (measure, value, options, text) => {
    expect(measure.print(value, "us", options)).toBe(text);
  });

  it("prints metric decimals", () => {
    expect(length.print(1.9, "metric")).toBe("1.90 m");
    expect(size.print(0.1, "metric")).toBe("100 mm");
    expect(elevation.print(1735.126, "metric")).toBe("1,735.13 m");
  });

  it("throws on a number that is not finite, naming it", () => {
    expect(() => length.print(NaN, "us")).toThrow(/NaN/);
    expect(() => earthVolume.print(Infinity, "metric")).toThrow(/Infinity/);
  });
});

describe("other amounts", () => {
  it.each([
    [liquidVolume, "1,200 gal", "us", 4.5424941408],
    [liquidVolume, "300 L", "us", 0.3],
    [liquidVolume, "300 l", "metric", 0.3],
    [liquidVolume, "1200", "us", 4.5424941408],
    [earthVolume, "1 yd³", "us", 0.764554857984],
    [earthVolume, "1 cu yd", "us", 0.764554857984],
    [earthVolume, "27 cubic feet", "us", 0.764554857984],
    [earthVolume, "10 yards", "us", 7.64554857984],
    [area, "43,560 sq ft", "us", 4046.8564224],
    [area, "0.5 acre", "us", 2023.4282112],
    [area, "100 m2", "us", 100],
    [land, "1 ha", "metric", 10000],
    [flow, "14 gpm", "us", (14 * 3.785411784e-3) / 60],
    [flow, "0.9 L/s", "us", 0.0009],
    [flow, "54 l/min", "metric", 0.0009],
    [dailyFlow, "450 gpd", "us", (450 * 3.785411784e-3) / 86400],
    [mass, "1 lb", "us", 0.45359237],
    [haulMass, "1 ton", "us", 907.18474],
    [haulMass, "1 t", "us", 1000],
    [haulMass, "1 short ton", "metric", 907.18474],
    [head, "10 ft", "us", 3.048],
    [velocity, "2 fps", "us", 0.6096],
    [density, "3,100 lb/yd³", "us", (3100 * 0.45359237) / 0.764554857984],
    [hours, "2 h 30 min", "us", 2.5],
    [hours, "90 min", "us", 1.5],
    [minutes, "90 s", "us", 90],
    [days, "1/2 day", "us", 0.5],
  ] as [Measure, string, UnitSystem, number][])("$0.kind %s", (measure, text, system, si) => {
    expect(read(measure, text, system)).toBeCloseTo(si, 9);
  });

  it("refuses a ton that could be either on a metric site", () => {
    expect(refused(haulMass, "3 tons", "metric")).toBe(true);
    expect(read(haulMass, "3 tonnes", "metric")).toBe(3000);
  });

  it("agrees with the rounded factors of NIST SP 811 Appendix B (2008; recalled)", () => {
    expect(Number(read(pressure, "1 psi"))).toBeCloseTo(6894.757, 3);
    expect(Number(read(pressure, "1 ft"))).toBeCloseTo(2989.067, 3);
    expect(Number(read(power, "1 hp"))).toBeCloseTo(745.6999, 4);
    expect(Number(read(liquidVolume, "1 gal"))).toBeCloseTo(3.785411784e-3, 15);
    expect(FOOT).toBe(0.3048);
    expect(US_SURVEY_FOOT).toBeCloseTo(0.3048006096, 10);
    expect(Number(read(area, "1 acre"))).toBeCloseTo(4046.8564224, 6);
  });

  it("reads a pressure as head of water", () => {
    // 1 psi is 2.31 ft of water: common practice figure, here 2.3067 at 1000 kg/m³.
    expect(head.print(Number(read(head, "1 psi")), "us", { digits: 2 })).toBe("2.31 ft");
  });

  it("prints with the system's unit, or the one asked for", () => {
    expect(earthVolume.print(40, "us")).toBe("52.3 yd³");
    expect(earthVolume.print(40, "us", { unit: "ft³", digits: 0 })).toBe("1,413 ft³");
    expect(liquidVolume.print(4.5424941408, "us")).toBe("1,200 gal");
    expect(liquidVolume.print(4.5424941408, "metric")).toBe("4,542 L");
    expect(earthVolume.print(-3, "metric")).toBe("-3.0 m³");
    expect(mass.print(5670, "us")).toBe("12,500 lb");
    expect(flow.unitLabel("us")).toBe("gpm");
    expect(flow.toSystem(flow.fromSystem(14, "us"), "us")).toBeCloseTo(14, 12);
    expect(earthVolume.toSystem(0.764554857984, "us")).toBeCloseTo(1, 12);
  });

  it("throws when asked for a unit of another kind", () => {
    expect(() => flow.print(1, "us", { unit: "ft" })).toThrow(/no unit "ft" for flow/);
  });
});

describe("slope of a pipe", () => {
  it.each([
    ["2%", 0.02],
    ["2 %", 0.02],
    ["2 percent", 0.02],
    ["2", 0.02],
    ["1:50", 0.02],
    ["1 : 50", 0.02],
    ["1 in 50", 0.02],
    ["1/4 in per ft", 1 / 48],
    [`1/4"/ft`, 1 / 48],
    [`¼″ per foot`, 1 / 48],
    ["1/4 per ft", 1 / 48],
    ["1/4 in/ft", 1 / 48],
    [`1/4" / 1'`, 1 / 48],
    ["0.25 in per ft", 1 / 48],
    ["20 mm per m", 0.02],
    ["20 mm/m", 0.02],
    ["3 in per 10 ft", 0.025],
    ["2 ft per 100 ft", 0.02],
    ["-1%", -0.01],
    ["0", 0],
    ["0.5%", 0.005],
  ])("%s", (text, fall) => {
    expect(read(pipeSlope, text)).toBeCloseTo(fall, 12);
  });

  it.each(["", "%", "1:0", "1:", "steep", "2% or so", "20 per m", "1/4 in per", "1:2:3", "2 ft"])(
    "refuses %j",
    (text) => {
      expect(refused(pipeSlope, text)).toBe(true);
    },
  );

  it("refuses 0.02, which may be a ratio or 0.02 percent", () => {
    expect(read(pipeSlope, "0.02")).toMatch(/may be percent or a ratio/);
  });

  it("prints percent, inches per foot, mm per m and ratio", () => {
    expect(pipeSlope.print(1 / 48, "us")).toBe("2.1%");
    expect(pipeSlope.print(1 / 48, "us", { slope: "per-foot" })).toBe("¼ in per ft");
    expect(pipeSlope.print(0.02, "metric", { slope: "per-foot" })).toBe("20 mm per m");
    expect(pipeSlope.print(0.02, "metric", { slope: "ratio" })).toBe("1:50");
    expect(pipeSlope.print(-0.0001, "us")).toBe("0.0%");
  });
});

describe("slope of a wall", () => {
  it.each([
    ["1.5:1", 1.5],
    ["1½ : 1", 1.5],
    ["¾:1", 0.75],
    ["3/4 : 1", 0.75],
    ["1.5 to 1", 1.5],
    ["1.5H:1V", 1.5],
    ["1V:1.5H", 1.5],
    ["1:2", 0.5],
    ["0:1", 0],
    ["vertical", 0],
    ["Vertical", 0],
    ["1.5", 1.5],
    ["45°", 1],
    ["34 deg", 1 / Math.tan((34 * Math.PI) / 180)],
    ["90°", 0],
  ])("%s", (text, run) => {
    expect(read(wallSlope, text)).toBeCloseTo(run, 12);
  });

  it.each(["", ":", "1:0", "-1:1", "0°", "100°", "steep", "1.5:1:1", "1.5 ft"])(
    "refuses %j",
    (text) => {
      expect(refused(wallSlope, text)).toBe(true);
    },
  );

  it("prints run to rise", () => {
    expect(wallSlope.print(1.5, "us")).toBe("1½ : 1");
    expect(wallSlope.print(0.75, "metric")).toBe("¾ : 1");
    expect(wallSlope.print(0, "us")).toBe("vertical");
    expect(wallSlope.print(0.53, "us")).toBe("0.53 : 1");
    expect(wallSlope.print(1, "us")).toBe("1 : 1");
  });
});

describe("bearings", () => {
  it.each([
    ["135", 135],
    ["135.5°", 135.5],
    ["45°30'", 45.5],
    [`45°30′36″`, 45.51],
    ["N 45°30' E", 45.5],
    ["N45E", 45],
    ["s 45 30 e", 134.5],
    ["S 10° W", 190],
    ["N 10 W", 350],
    ["ne", 45],
    ["due south", 180],
    ["360", 0],
    ["-90", 270],
  ])("%s", (text, degrees) => {
    expect(read(bearing, text)).toBeCloseTo(degrees, 9);
  });

  it.each(["", "N", "constructor", "toString", "400", "N 95 E", "45°75'", "N E 45", "E 45 N"])(
    "%j is north or refused",
    (text) => {
      if (text === "N") expect(read(bearing, text)).toBe(0);
      else expect(refused(bearing, text)).toBe(true);
    },
  );

  it("prints degrees and quadrants", () => {
    expect(bearing.print(135, "us")).toBe("135.0°");
    expect(bearing.print(359.99, "us")).toBe("0.0°");
    expect(bearing.print(45.5, "us", { bearing: "quadrant" })).toBe("N 45°30′ E");
    expect(bearing.print(134.5, "us", { bearing: "quadrant" })).toBe("S 45°30′ E");
    expect(bearing.print(190, "us", { bearing: "quadrant" })).toBe("S 10°00′ W");
    expect(bearing.print(359.9999, "us", { bearing: "quadrant" })).toBe("N 0°00′ E");
  });
});

describe("money", () => {
  it.each([
    ["USD", "1,235", 1235],
    ["USD", "$1,235.50", 1235.5],
    ["USD", "-$20", -20],
    ["USD", "$-20", -20],
    ["USD", "USD 20", 20],
    ["USD", "20 usd", 20],
    ["EUR", "€20", 20],
    ["EUR", "20 €", 20],
    ["CAD", "CA$20", 20],
    ["CAD", "$20", 20],
  ])("%s %s", (currency, text, amount) => {
    expect(read(money(currency), text)).toBe(amount);
  });

  it.each(["", "$", "€20", "20 each", "$20.5.5", "free"])("refuses %j in USD", (text) => {
    expect(refused(money("USD"), text)).toBe(true);
  });

  it("prints by currency", () => {
    expect(money("USD").print(1234.6, "us")).toBe("$1,235");
    expect(money("EUR").print(1234.6, "metric", { digits: 2 })).toBe("€1,234.60");
    expect(money("USD").print(-0.2, "us")).toBe("$0");
  });
});

describe(`printed text reads back to within its print resolution (seed ${SEED})`, () => {
  const kinds: [Measure, Record<UnitSystem, number>, boolean][] = [
    [length, { us: 0.0254 / 16, metric: 0.005 }, false],
    [distance, { us: 0.01524, metric: 0.005 }, true],
    [elevation, { us: 0.001524, metric: 0.005 }, true],
    [size, { us: 0.0254 / 16, metric: 0.0005 }, false],
    [area, { us: 0.04645152, metric: 0.05 }, false],
    [earthVolume, { us: 0.05 * 0.764554857984, metric: 0.05 }, false],
    [liquidVolume, { us: 0.5 * 0.003785411784, metric: 0.0005 }, false],
    [flow, { us: (0.05 * 0.003785411784) / 60, metric: 0.000005 }, false],
    [head, { us: 0.01524, metric: 0.005 }, true],
    [pressure, { us: 345, metric: 50 }, true],
    [mass, { us: 0.2268, metric: 0.5 }, false],
    [haulMass, { us: 45.36, metric: 50 }, false],
    [density, { us: 0.29664, metric: 0.5 }, false],
    [velocity, { us: 0.001524, metric: 0.005 }, false],
    [hours, { us: 0.05, metric: 0.05 }, false],
    [days, { us: 0.05, metric: 0.05 }, false],
    [pipeSlope, { us: 0.0005, metric: 0.0005 }, true],
    [wallSlope, { us: 0.005, metric: 0.005 }, false],
    [money("USD"), { us: 0.5, metric: 0.5 }, true],
  ];
  it.each(kinds)("$kind", (measure, resolution, signed) => {
    const anyValue = fc.double({ min: signed ? -5000 : 0, max: 5000, noNaN: true });
    fc.assert(
      fc.property(anyValue, fc.constantFrom<UnitSystem>("us", "metric"), (value, system) => {
        const parsed = measure.parse(measure.print(value, system), system);
        expect(parsed.ok).toBe(true);
        if (parsed.ok) {
          const slack = resolution[system] * 1.001 + Math.abs(value) * 1e-12;
          expect(Math.abs(parsed.value - value)).toBeLessThanOrEqual(slack);
        }
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  it("quadrant bearings, to half a minute", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 360, noNaN: true }), (value) => {
        const back = Number(read(bearing, bearing.print(value, "us", { bearing: "quadrant" })));
        const apart = Math.abs(((back - value + 540) % 360) - 180);
        expect(apart).toBeLessThanOrEqual(0.5 / 60 + 1e-9);
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  it("any text at all gives a finite value or a message", () => {
    const alphabet = fc.constantFrom(..."0123456789.,/'\" -:%°½ftinmNESWhv$".split(""));
    const text = fc.array(alphabet, { maxLength: 14 }).map((marks) => marks.join(""));
    fc.assert(
      fc.property(fc.oneof(text, fc.string()), (written) => {
        for (const [measure] of kinds) {
          const parsed = measure.parse(written, "metric");
          if (parsed.ok) expect(Number.isFinite(parsed.value)).toBe(true);
          else expect(parsed.text.length).toBeGreaterThan(10);
        }
      }),
      { seed: SEED, numRuns: 2000 },
    );
  });
});
