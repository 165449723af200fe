/** Edits of how a plan is printed. */
import type { PlanWindow, PrintedSheets, Site } from "./schema.js";

/** Chooses the paper; what plans show goes back to all of it, which another size shows otherwise. */
export function setPaper(site: Site, paper: NonNullable<PrintedSheets["paper"]>): Site {
  return { ...site, sheets: { ...site.sheets, windows: {}, paper } };
}

/** Chooses what a plan shows; null goes back to all of it. */
export function setPlanWindow(site: Site, sheet: string, window: PlanWindow | null): Site {
  const others = Object.entries(site.sheets?.windows ?? {}).filter(([id]) => id !== sheet);
  const windows = Object.fromEntries(window === null ? others : [...others, [sheet, window]]);
  return { ...site, sheets: { ...site.sheets, windows } };
}

/** A sheet by its id, and by what it shows: that is the same whatever the paper, the id may not be. */
export interface SheetSubjects {
  id: string;
  of: readonly string[];
}

/** Whether a sheet is left out: by all that it shows, or by its id, as older files have it. */
export function isLeftOut(sheets: PrintedSheets | undefined, { id, of }: SheetSubjects): boolean {
  const without = new Set(sheets?.without);
  return without.has(id) || of.every((one) => without.has(one));
}

/** Puts a sheet among the printed ones, or leaves it out. */
export function printSheet(site: Site, sheet: SheetSubjects, printed: boolean): Site {
  const own = new Set([sheet.id, ...sheet.of]);
  const others = (site.sheets?.without ?? []).filter((id) => !own.has(id));
  const without = printed ? others : [...others, ...sheet.of];
  return { ...site, sheets: { ...site.sheets, without } };
}
