/** Reads lot lines as deeds and plats give them: a bearing and a distance for each side. */
import { bearing, FOOT, plainText, readNumber, US_SURVEY_FOOT } from "../units/index.js";
import { metresIn } from "./points.js";
import type { SurveyUnit } from "./types.js";

/** One side of a lot as written. */
export interface Course {
  /** Line of the text, from 1. */
  line: number;
  /** Azimuth, degrees clockwise from north, 0 up to 360. */
  bearing: number;
  /** m in plan. */
  length: number;
}

/** What of the text could not be used, and where. */
export interface CourseProblem {
  line: number;
  /** The part as written. */
  text: string;
  what: string;
  mend: string;
}

/** m in one of the units that deeds use. Chain of 66 ft, rod of 16½ ft (recalled). */
const LAND_UNITS: readonly { names: RegExp; metres: number }[] = [
  { names: /^us survey (?:ft|feet|foot)\b/, metres: US_SURVEY_FOOT },
  { names: /^(?:ft|feet|foot)\b|^'/, metres: FOOT },
  { names: /^(?:m|meters?|metres?)\b/, metres: 1 },
  { names: /^(?:ch|chains?)\b/, metres: 66 * FOOT },
  { names: /^(?:lk|links?)\b/, metres: 0.66 * FOOT },
  { names: /^(?:rds?|rods?|poles?|perch(?:es)?)\b/, metres: 16.5 * FOOT },
];

const ANGLE = String.raw`\d{1,3}(?:\.\d+)?(?: ?(?:°|deg(?:rees?)?|d|-| ) ?\d{1,2}(?:\.\d+)? ?(?:'|m|min(?:utes?)?)?(?: ?-? ?\d{1,2}(?:\.\d+)? ?(?:"|s|sec(?:onds?)?)?)?| ?(?:°|deg(?:rees?)?))?`;
const QUADRANT = new RegExp(String.raw`\b(n|north|s|south)\.? ?(${ANGLE}) ?(e|east|w|west)\b`);
const CARDINAL = /\b(?:due )?(north|south|east|west)\b|^\s*(n|s|e|w)(?=[ ,;:])/;
const AZIMUTH = new RegExp(String.raw`^(?:az(?:imuth)? ?:? ?)?(${ANGLE})(?= ?[,;:] ?| |$)`);

/**
 * The courses of a text, one to a line, or parted by ";" or "thence": `N 45°30' E 120.5 ft`,
 * `N45-30-15E, 36.7 m`, `az 45.504 120`, `thence due south 10 rods`. A name before the bearing and
 * words after the distance are passed over. `unit` is that of a distance written without one.
 */
export function readCourses(
  text: string,
  unit: SurveyUnit,
): { courses: Course[]; problems: CourseProblem[] } {
  const courses: Course[] = [];
  const problems: CourseProblem[] = [];
  text.split(/\r?\n/).forEach((written, index) => {
    for (const part of written.split(/;|\bthence\b/i)) {
      const plain = plainText(part).replace(/\t/g, " ");
      if (!/\d/.test(plain)) continue;
      const read = readCourse(plain, unit);
      const place = { line: index + 1 };
      if ("what" in read) problems.push({ ...place, text: part.trim(), ...read });
      else courses.push({ ...place, ...read });
    }
  });
  return { courses, problems };
}

type Read = Omit<Course, "line"> | Pick<CourseProblem, "what" | "mend">;

function readCourse(plain: string, unit: SurveyUnit): Read {
  if (/\b(curve|arc|radius|chord)\b/.test(plain) && !/\bchord\b.*\d/.test(plain)) {
    return { what: "is a curve", mend: "give its chord as a bearing and a distance" };
  }
  const found = bearingIn(plain);
  if (found === null) {
    return {
      what: "has no bearing that can be read",
      mend: "write it as N 45°30' E, N45-30-15E or an azimuth from 0 to 360",
    };
  }
  const read = bearing.parse(found.text, "us");
  if (!read.ok) {
    return {
      what: `has a bearing that cannot be: ${found.text.toUpperCase()}`,
      mend: "degrees go from 0 to 90 between north or south and east or west, minutes and seconds to 59",
    };
  }
  const length = lengthIn(found.rest, unit);
  if (length === null || length <= 0) {
    return {
      what: "has no distance after its bearing",
      mend: "write a distance above 0 after it, such as 120.5 ft or 36.7 m",
    };
  }
  return { bearing: read.value, length };
}

/** The bearing in a part of the text, in a form that `bearing.parse` reads, and what follows it. */
function bearingIn(plain: string): { text: string; rest: string } | null {
  const quadrant = QUADRANT.exec(plain);
  if (quadrant !== null) {
    const [all, from, angle, to] = quadrant;
    const rest = plain.slice(quadrant.index + all.length);
    return { text: `${from ?? ""} ${marked(angle ?? "")} ${to ?? ""}`, rest };
  }
  const cardinal = CARDINAL.exec(plain);
  if (cardinal !== null) {
    const word = cardinal[1] ?? cardinal[2] ?? "";
    return { text: word, rest: plain.slice(cardinal.index + cardinal[0].length) };
  }
  const named = withoutName(plain);
  const azimuth = AZIMUTH.exec(named);
  if (azimuth === null) return null;
  return { text: marked(azimuth[1] ?? ""), rest: named.slice(azimuth[0].length) };
}

/** A name, or the number of the line, before an azimuth: "AB 45.5 120", "1, 45.5, 120". */
function withoutName(plain: string): string {
  const word = /^[a-z][a-z\d-]* ?[:,]? (?=\d)/.exec(plain);
  if (word !== null && !/^az/.test(plain)) return plain.slice(word[0].length);
  const cells = plain.split(/ ?[,;] ?/);
  return cells.length > 2 && /^\d+$/.test(cells[0] ?? "") ? cells.slice(1).join(", ") : plain;
}

/** Degrees, minutes and seconds with their marks, whatever stood between them. */
function marked(angle: string): string {
  const [degrees = "", minutes, seconds] = angle.match(/\d+(?:\.\d+)?/g) ?? [];
  if (minutes === undefined) return degrees;
  if (/\./.test(degrees)) return "";
  if (seconds !== undefined) return `${degrees}°${minutes}'${seconds}"`;
  // `bearing` reads whole minutes only; a fraction of one is given in seconds.
  const rest = Number(minutes) - Math.floor(Number(minutes));
  const whole = `${degrees}°${Math.floor(Number(minutes))}'`;
  return rest === 0 ? whole : `${whole}${Number((rest * 60).toFixed(6))}"`;
}

/** The first distance in what follows the bearing, m. */
function lengthIn(rest: string, unit: SurveyUnit): number | null {
  const at = rest.search(/\d|\.\d/);
  if (at < 0) return null;
  const number = readNumber(rest.slice(at), unit === "m" ? "metric" : "us");
  if (number === undefined) return null;
  const after = number.rest.replace(/^ /, "");
  const named = LAND_UNITS.find(({ names }) => names.test(after));
  const metres = number.value * (named?.metres ?? metresIn(unit));
  return /^(?:ft|feet|foot|')/.test(after) && unit === "us-survey-ft"
    ? number.value * US_SURVEY_FOOT
    : metres;
}
