import type { Scheme } from "../site/index.js";
import type { DaysSettings } from "./dayTypes.js";
import { hireCatalogue } from "./hireCatalogue.js";
import { exactly, mapRange } from "./range.js";

/** People that the catalogue's times by hand are for. */
export const USUAL_CREW = 2;

/** Working days lost to weather where the scheme says nothing: common practice, no source. */
export const USUAL_WEATHER = 0.1;

/**
 * How the days of a scheme's job run, with what it leaves open filled in. `usualHours` is the
 * working day where the scheme names none, h. The catalogue's laying rate goes by head of the crew.
 */
export function daysSettings(scheme: Scheme, usualHours = 8): DaysSettings {
  const days = scheme.machines?.days ?? {};
  const crew = days.crew ?? USUAL_CREW;
  const byHead = mapRange(hireCatalogue().times.layPerHour, (rate) => (rate * crew) / USUAL_CREW);
  return {
    ...(days.start !== undefined && { start: days.start }),
    hoursPerDay: scheme.machines?.hoursPerDay ?? usualHours,
    perWeek: days.perWeek ?? 5,
    weather: days.weather ?? USUAL_WEATHER,
    inspectionWait: days.inspectionWait ?? 1,
    standing: days.standing ?? 1,
    crew,
    layPerHour: days.layPerHour === undefined ? byHead : exactly(days.layPerHour),
  };
}
