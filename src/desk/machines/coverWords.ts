import type { RentalCover } from "../parts.js";
import { plainNumber } from "../../units/index.js";

/** "1 day", "3 days". */
export const several = (count: number, one: string, many: string): string =>
  `${plainNumber(count, 0)} ${count === 1 ? one : many}`;

/** A hire in words: "1 week and 2 days". */
export function coverWords(cover: RentalCover): string {
  const parts = [
    cover.fourWeeks > 0 ? several(cover.fourWeeks, "four-week hire", "four-week hires") : "",
    cover.weeks > 0 ? several(cover.weeks, "week", "weeks") : "",
    cover.days > 0 ? several(cover.days, "day", "days") : "",
  ].filter((part) => part !== "");
  return parts.length === 0 ? "no hire" : parts.join(" and ");
}
