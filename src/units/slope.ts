import { mixedNumber, notRead } from "./amount.js";
import { plainNumber } from "./measure.js";
import type { Measure, Parsed, PrintOptions, UnitSystem } from "./measure.js";
import { plainText, readAmount, readNumber, readUnit } from "./reading.js";
import { unitRow } from "./table.js";

const PIPE_EXAMPLES = {
  us: "2%, 1/4 in per ft or 1:50 (rise to run)",
  metric: "2%, 1:50 (rise to run) or 20 mm per m",
} as const;
const WALL_EXAMPLES = "1.5:1 (run to rise), 3/4:1, 45° or vertical";

/**
 * Fall of a pipe: rise per run, positive downhill, either sign. `2.1%`; with `slope: "per-foot"`
 * `¼ in per ft`, rounded to 1/16 in, or `20 mm per m`; with `"ratio"` `1:48`. Reads `2%`, `1:50` and
 * `1 in 50` as rise to run, `1/4"/ft`, `20 mm per m`. A bare number is percent, but one under 0.1 is
 * refused: `0.02` may mean 0.02% or a ratio, a hundredfold apart.
 */
export const pipeSlope: Measure = {
  kind: "pipe slope",
  parse(text, system) {
    const plain = plainText(text);
    const negative = plain.startsWith("-");
    const fall = readFall(plain.replace(/^[+-] ?/, ""), system);
    if (fall === "unclear") {
      return {
        ok: false,
        text: `“${plain}” may be percent or a ratio: write ${PIPE_EXAMPLES[system]}.`,
      };
    }
    if (fall === undefined || !Number.isFinite(fall)) {
      return notRead(text, "fall", PIPE_EXAMPLES[system]);
    }
    return { ok: true, value: negative && fall !== 0 ? -fall : fall };
  },
  print: (value, system, options = {}) => printFall(value, system, options),
  unitLabel: () => "%",
  toSystem: (value) => value * 100,
  fromSystem: (value) => value / 100,
};

function readFall(text: string, system: UnitSystem): number | "unclear" | undefined {
  const ratio = /^(.+?) ?: ?(.+)$/.exec(text) ?? /^([\d./ ]+) in ([\d.,]+)$/.exec(text);
  if (ratio !== null) return ratioOf(ratio[1], ratio[2], system);
  const per = /^(.+?) ?(?:\bper\b|\/) ?((?:[\d.,]+ ?)?[a-z'][a-z'.]*)$/.exec(text);
  if (per !== null) return riseOverLength(per[1] ?? "", per[2] ?? "", system);
  const number = readNumber(text, system);
  if (number === undefined) return undefined;
  if (/^ ?(%|percent|per cent|pct)$/.test(number.rest)) return number.value / 100;
  if (number.rest !== "") return undefined;
  return number.value > 0 && number.value < 0.1 ? "unclear" : number.value / 100;
}

/** Two bare numbers, the first over the second. */
function ratioOf(
  over: string | undefined,
  under: string | undefined,
  system: UnitSystem,
): number | undefined {
  const top = readNumber(over ?? "", system);
  const bottom = readNumber(under ?? "", system);
  if (top === undefined || bottom === undefined) return undefined;
  if (top.rest.trim() !== "" || bottom.rest.trim() !== "" || bottom.value === 0) return undefined;
  return top.value / bottom.value;
}

/** `1/4 in` over `ft`, `20 mm` over `m`, `3 in` over `10 ft`; a bare rise over feet is inches. */
function riseOverLength(rise: string, run: string, system: UnitSystem): number | undefined {
  const unitAlone = readUnit(run, "length", system);
  const isUnit = unitAlone !== undefined && unitAlone.rest === "";
  const metre = unitRow("length", "m");
  const bareRun = !isUnit && readNumber(run, system)?.rest === "";
  if (bareRun) return undefined;
  const length = isUnit ? unitAlone.unit.size : readAmount(run, "length", system, metre);
  if (length === undefined || length === 0) return undefined;
  const overFeet = /(?:ft|foot|feet|')\.?$/.test(run);
  const bareRise = readNumber(rise, system)?.rest === "";
  if (bareRise && !overFeet) return undefined;
  const height = readAmount(rise, "length", system, unitRow("length", "in"));
  return height === undefined ? undefined : height / length;
}

function printFall(value: number, system: UnitSystem, options: PrintOptions): string {
  if (options.slope === "ratio" && value !== 0) {
    return `${value < 0 ? "-" : ""}1:${plainNumber(1 / Math.abs(value), options.digits ?? 0)}`;
  }
  if (options.slope === "per-foot" && system === "us") {
    const parts = Math.round(Math.abs(value) * 12 * 16);
    return `${value < 0 && parts > 0 ? "-" : ""}${mixedNumber(parts, 16)} in per ft`;
  }
  if (options.slope === "per-foot")
    return `${plainNumber(value * 1000, options.digits ?? 0)} mm per m`;
  const number = plainNumber(value * 100, options.digits ?? 1);
  return options.bare === true ? number : `${number}%`;
}

/**
 * Slope of a dug or filled wall: run per 1 of rise, not below zero; 0 is vertical. `1½ : 1`, or
 * `vertical`. Reads `1.5:1` and `1.5 to 1` as run to rise, `1.5H:1V`, `1V:1.5H`, `45°` up from the
 * level, `vertical`, and a bare number as the run.
 */
export const wallSlope: Measure = {
  kind: "wall slope",
  parse(text, system): Parsed {
    const run = readWall(plainText(text), system);
    if (run === undefined || !Number.isFinite(run))
      return notRead(text, "wall slope", WALL_EXAMPLES);
    return { ok: true, value: run };
  },
  print(value, _system, options = {}) {
    const digits = options.digits ?? 2;
    const number = plainNumber(value, digits);
    if (options.bare === true) return number;
    if (value === 0) return "vertical";
    const eighths = value * 8;
    const tidy = options.digits === undefined && Math.abs(eighths - Math.round(eighths)) < 1e-9;
    return tidy && value > 0 ? `${mixedNumber(Math.round(eighths), 8)} : 1` : `${number} : 1`;
  },
  unitLabel: () => ": 1",
  toSystem: (value) => value,
  fromSystem: (value) => value,
};

function readWall(text: string, system: UnitSystem): number | undefined {
  if (/^(vertical|plumb)$/.test(text)) return 0;
  const upright = /^(.+?) ?v ?(?::|to) ?(.+?) ?h$/.exec(text);
  if (upright !== null) return ratioOf(upright[2], upright[1], system);
  const ratio = /^(.+?) ?h? ?(?::|\bto\b) ?(.+?) ?v?$/.exec(text);
  if (ratio !== null) return ratioOf(ratio[1], ratio[2], system);
  const number = readNumber(text, system);
  if (number === undefined) return undefined;
  if (number.rest === "") return number.value;
  if (!/^ ?(°|deg|degrees?)$/.test(number.rest)) return undefined;
  if (number.value === 90) return 0;
  return number.value > 0 && number.value < 90
    ? 1 / Math.tan((number.value * Math.PI) / 180)
    : undefined;
}
