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

/** Puts a sheet among the printed ones, or leaves it out. */
export function printSheet(site: Site, sheet: string, printed: boolean): Site {
  const others = (site.sheets?.without ?? []).filter((id) => id !== sheet);
  return { ...site, sheets: { ...site.sheets, without: printed ? others : [...others, sheet] } };
}
