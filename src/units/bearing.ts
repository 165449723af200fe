import { notRead } from "./amount.js";
import { plainNumber } from "./measure.js";
import type { Measure, UnitSystem } from "./measure.js";
import { plainText, readNumber } from "./reading.js";

const EXAMPLES = "135°, 45°30' or N 45°30' E";

const COMPASS: Readonly<Record<string, number>> = {
  n: 0,
  north: 0,
  ne: 45,
  e: 90,
  east: 90,
  se: 135,
  s: 180,
  south: 180,
  sw: 225,
  w: 270,
  west: 270,
  nw: 315,
};

/**
 * Bearing, degrees clockwise from north, 0 up to 360. `135.0°`, or with `bearing: "quadrant"`
 * `S 45°00′ E` to the minute. Reads `135`, `135.5°`, `45°30'15"`, `N 45°30' E`, `N45E`, `NE`, `due
 * south`; 360 is 0; outside −360 to 360 is refused.
 */
export const bearing: Measure = {
  kind: "bearing",
  parse(text, system) {
    const degrees = readBearing(plainText(text).replace(/^due /, ""), system);
    if (degrees === undefined) return notRead(text, "bearing", EXAMPLES);
    return { ok: true, value: turned(degrees) };
  },
  print(value, _system, options = {}) {
    if (options.bearing === "quadrant") return quadrant(value);
    // Rounding may reach 360.0, which is north again.
    const digits = options.digits ?? 1;
    const number = plainNumber(turned(Number(turned(value).toFixed(digits))), digits);
    return options.bare === true ? number : `${number}°`;
  },
  unitLabel: () => "°",
  toSystem: (value) => value,
  fromSystem: (value) => value,
};

function turned(degrees: number): number {
  const rest = degrees % 360;
  const up = rest < 0 ? rest + 360 : rest;
  return up === 360 || up === 0 ? 0 : up;
}

function readBearing(text: string, system: UnitSystem): number | undefined {
  const compass = Object.hasOwn(COMPASS, text) ? COMPASS[text] : undefined;
  if (compass !== undefined) return compass;
  const parts = /^(n|north|s|south) ?(\d.*?) ?(e|east|w|west)$/.exec(text);
  if (parts !== null) {
    const angle = readAngle(parts[2] ?? "", system);
    if (angle === undefined || angle > 90) return undefined;
    const north = parts[1]?.startsWith("n") === true;
    const east = parts[3]?.startsWith("e") === true;
    if (north) return east ? angle : 360 - angle;
    return east ? 180 - angle : 180 + angle;
  }
  const angle = readAngle(text.replace(/^[+-] ?/, ""), system);
  if (angle === undefined || angle > 360) return undefined;
  return text.startsWith("-") ? -angle : angle;
}

/** Degrees, or degrees with minutes and seconds by marks or spaces; minutes and seconds under 60. */
function readAngle(text: string, system: UnitSystem): number | undefined {
  const sexagesimal =
    /^(\d{1,3}) ?(?:°|d|deg|-| ) ?(\d{1,2}) ?(?:'|m|min|-| |$)? ?(?:(\d{1,2}(?:\.\d+)?) ?(?:"|s|sec)?)?$/;
  const parts = sexagesimal.exec(text);
  if (parts !== null) {
    const minutes = Number(parts[2]);
    const seconds = Number(parts[3] ?? 0);
    if (minutes >= 60 || seconds >= 60) return undefined;
    return Number(parts[1]) + minutes / 60 + seconds / 3600;
  }
  const number = readNumber(text, system);
  if (number === undefined || !/^ ?(°|deg|degrees?)?$/.test(number.rest)) return undefined;
  return number.value;
}

function quadrant(value: number): string {
  if (!Number.isFinite(value)) throw new Error(`cannot print bearing ${value}: expected finite`);
  const minutesRound = Math.round(turned(value) * 60) % (360 * 60);
  const degrees = minutesRound / 60;
  const north = degrees <= 90 || degrees >= 270;
  const east = degrees <= 180;
  const fromPole = north
    ? Math.min(minutesRound, 21600 - minutesRound)
    : Math.abs(10800 - minutesRound);
  const whole = Math.floor(fromPole / 60);
  const minutes = String(fromPole - whole * 60).padStart(2, "0");
  return `${north ? "N" : "S"} ${whole}°${minutes}′ ${east ? "E" : "W"}`;
}
