import type { ColumnRole, SurveyUnit } from "./types.js";

const WORDS: Readonly<Record<Exclude<ColumnRole, "ignore">, readonly string[]>> = {
  id: [
    ...["point", "points", "pt", "p", "pnt", "id", "no", "nr", "num", "number", "name", "pid"],
    ...["pointid", "pointno", "pointnr", "pointnumber", "pointname", "ptid", "ptno", "ptnumber"],
    ...["station", "sta", "punkt", "punto", "punktnummer"],
  ],
  east: [
    ...["easting", "eastings", "east", "e", "x", "xcoord", "xcoordinate", "longitude", "lon"],
    ...["long", "lng", "este", "est", "rechtswert"],
  ],
  north: [
    ...["northing", "northings", "north", "n", "y", "ycoord", "ycoordinate", "latitude", "lat"],
    ...["norte", "nord", "hochwert"],
  ],
  elevation: [
    ...["elevation", "elev", "elv", "el", "z", "zcoord", "height", "h", "rl", "reducedlevel"],
    ...["level", "alt", "altitude", "groundlevel", "gl", "höhe", "hoehe", "cota", "kote"],
  ],
  note: [
    ...["description", "desc", "descr", "note", "notes", "code", "remark", "remarks", "comment"],
    ...["comments", "feature", "label", "type", "bemerkung"],
  ],
};

/** What a header cell says its column is; undefined for words that are not known. */
export function headerRole(cell: string): Exclude<ColumnRole, "ignore"> | undefined {
  const word = headerWord(cell);
  if (word === "") return /^\s*#\s*$/.test(cell) ? "id" : undefined;
  const roles = ["id", "east", "north", "elevation", "note"] as const;
  const exact = roles.find((role) => WORDS[role].includes(word));
  // `Elev m`, `Northing ft`: a unit without brackets runs on.
  return exact ?? roles.find((role) => WORDS[role].includes(word.replace(/(usft|ft|feet|m)$/, "")));
}

/** A header cell in lower case, without bracketed units, marks and spaces. */
export function headerWord(cell: string): string {
  return cell
    .toLowerCase()
    .replace(/[([{].*?[)\]}]/g, "")
    .replace(/[^\p{L}]/gu, "");
}

/** The unit that header cells name, when they name one and only one. */
export function headerUnit(cells: readonly string[]): SurveyUnit | undefined {
  const found = new Set(cells.map(cellUnit).filter((unit) => unit !== undefined));
  return found.size === 1 ? [...found][0] : undefined;
}

function cellUnit(cell: string): SurveyUnit | undefined {
  const unit =
    /[([{ _](us[- ]?survey[- ]?(?:ft|feet|foot)|us[- ]?ft|ft|feet|m|met(?:re|er)s?)[)\]}]?$/.exec(
      cell.trim().toLowerCase(),
    )?.[1];
  if (unit === undefined) return undefined;
  if (unit.startsWith("us")) return "us-survey-ft";
  return unit.startsWith("f") ? "ft" : "m";
}

/** Whether the header says that the places are in degrees. */
export function headerSaysDegrees(names: readonly string[]): boolean {
  return names.some((name) => /^(latitude|lat|longitude|lon|lng)$/.test(headerWord(name)));
}
