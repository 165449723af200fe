import { pointsFromTable, readFieldBook, readPointTable } from "../../survey/index.js";
import type { BookReading, PointsRead, SurveyProblem, TablePreview } from "../../survey/index.js";
import { checkSite } from "../../site/index.js";
import type { Site, SurveyPoint } from "../../site/index.js";
import { words } from "../../words/index.js";
import { fieldRows, readingOf, thicknessOf } from "./draft.js";
import type { Draft } from "./draft.js";
import { spanOf } from "./spanOf.js";

/** Whether only a guess tells east from north: the wrong way round mirrors all of the ground. */
export function axesHang(draft: Draft, preview: TablePreview): boolean {
  return !draft.axesKnown && preview.ask.some(({ code }) => code === "axis-order");
}

/** What a draft comes to: what was read, what is wrong, and the site if there can be one. */
export interface DraftRead {
  preview: TablePreview | null;
  table: PointsRead | null;
  book: BookReading | null;
  wrongLines: readonly { line: number; text: string }[];
  problems: readonly SurveyProblem[];
  points: readonly SurveyPoint[];
  /** The ground of the points that can be used so far, to look at; null while there is none. */
  drawn: Site | null;
  /** Null while something stops it. */
  site: Site | null;
  /** Why there is no site yet, or a last word on it. */
  state: string;
}

const NOTHING: DraftRead = {
  preview: null,
  table: null,
  book: null,
  wrongLines: [],
  problems: [],
  points: [],
  drawn: null,
  site: null,
  state: "",
};

function groundOf(draft: Draft, points: readonly SurveyPoint[]): Site["ground"] | string {
  const soil = { id: "soil", name: words.startPage.soil, material: draft.soilMaterial };
  if (draft.under === "unknown") return { layers: [soil], probes: [] };
  const topsoil = thicknessOf(draft.topsoil, draft.units);
  const depth = thicknessOf(draft.soil, draft.units);
  if (!topsoil.ok) return words.startPage.topsoilSays(topsoil.text);
  if (!depth.ok) return words.startPage.soilSays(depth.text);
  if (draft.rockMaterial === "") return words.startPage.sayHowRockDigs;
  const east = readingOf(draft.probeEast, draft.unit);
  const north = readingOf(draft.probeNorth, draft.unit);
  if (typeof east === "object" && east !== null) return east.wrong;
  if (typeof north === "object" && north !== null) return north.wrong;
  const middle = (key: "x" | "y"): number =>
    points.reduce((sum, point) => sum + point[key], 0) / points.length;
  return {
    layers: [
      { id: "topsoil", name: words.startPage.topsoil, material: "topsoil" },
      soil,
      { id: "rock", name: words.startPage.rock, material: draft.rockMaterial },
    ],
    probes: [
      {
        id: "probe-1",
        x: east ?? middle("x"),
        y: north ?? middle("y"),
        thickness: [topsoil.value, depth.value],
        note: words.startPage.firstProbeTakenWhole,
      },
    ],
  };
}

/** The site of these points; or in words what stops it. */
function siteOf(draft: Draft, points: readonly SurveyPoint[]): Site | string {
  const ground = groundOf(draft, points);
  if (typeof ground === "string") return ground;
  const checked = checkSite({
    format: "bankyard-site",
    version: 1,
    name: draft.name.trim() === "" ? words.startPage.mySite : draft.name.trim(),
    units: draft.units,
    currency: "USD",
    survey: { points },
    ground,
    schemes: [{ id: "scheme-1", name: words.startPage.firstScheme, works: [] }],
  });
  if (checked.ok) return checked.value;
  const [first] = checked.problems;
  return first === undefined ? words.startPage.pointsMakeNoGround : `${first.text}; ${first.mend}.`;
}

function finished(draft: Draft, read: DraftRead, held: string): DraftRead {
  const stop = read.problems.find((problem) => problem.stops);
  if (stop !== undefined) return { ...read, state: `${stop.text}; ${stop.mend}.` };
  const enough = read.points.length >= 3;
  const bare = enough ? siteOf({ ...draft, under: "unknown" }, read.points) : null;
  const drawn = typeof bare === "string" ? null : bare;
  if (held !== "") return { ...read, drawn, state: held };
  if (!enough) return { ...read, state: words.startPage.least3PointsFar(read.points.length) };
  const site = siteOf(draft, read.points);
  if (typeof site === "string") return { ...read, drawn, state: site };
  const made = words.startPage.pointsMakeGround(read.points.length);
  return { ...read, drawn, site, state: `${made} ${spanOf(read.points, draft.units)}` };
}

function readTable(draft: Draft): DraftRead {
  if (draft.text.trim() === "") return { ...NOTHING, state: words.startPage.pasteOrOpenTable };
  const preview = readPointTable(draft.text);
  if (!preview.ok) {
    const [first] = preview.problems;
    return {
      ...NOTHING,
      problems: preview.problems,
      state: first === undefined ? "" : `${first.text}; ${first.mend}.`,
    };
  }
  const roles = draft.roles ?? preview.value.columns.map((column) => column.role);
  const table = pointsFromTable(preview.value, roles, draft.unit);
  const points = table.offset?.points ?? table.points;
  const read = { ...NOTHING, preview: preview.value, table, problems: table.problems, points };
  const bad = words.counts.rowsCannot(table.bad.length);
  const good = words.counts.pointsAreGood(points.length);
  const axesHeld = axesHang(draft, preview.value) ? words.startPage.sayAxes : "";
  const unitHeld = draft.unitKnown ? axesHeld : words.startPage.sayUnits;
  const held =
    table.bad.length > 0 && !draft.leaveOut ? words.startPage.usedMendOrTick(good, bad) : unitHeld;
  return finished(draft, read, held);
}

function readBook(draft: Draft): DraftRead {
  const { rows, wrong } = fieldRows(draft.book, draft.unit);
  if (rows.length === 0) {
    return { ...NOTHING, state: words.startPage.enterBenchMarksLine };
  }
  const run = readingOf(draft.runLength, draft.unit);
  const runLength = typeof run === "number" && run > 0 ? run : undefined;
  const book = readFieldBook(rows, runLength === undefined ? {} : { runLength });
  const read = { ...NOTHING, wrongLines: wrong };
  if (!book.ok) {
    const [first] = book.problems;
    return {
      ...read,
      problems: book.problems,
      state: first === undefined ? "" : `${first.text}; ${first.mend}.`,
    };
  }
  const { points, problems } = book.value;
  const held = wrong.length === 0 ? "" : words.counts.notUnderstood(wrong.length);
  return finished(draft, { ...read, book: book.value, problems, points }, held);
}

/** Reads a draft as far as it goes. Pure. */
export function readDraft(draft: Draft): DraftRead {
  return draft.way === "table" ? readTable(draft) : readBook(draft);
}

/** What a part of this leaf is given. */
export interface DraftProps {
  draft: Draft;
  read: DraftRead;
  set: (next: Partial<Draft>) => void;
}
