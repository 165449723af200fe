import type { RentalCover } from "../parts.js";
import { plainNumber } from "../../units/index.js";
import { words } from "../../words/index.js";

/** A count as `printed` in words. */
type Counted = (count: number, printed: string) => string;

const several = (count: number, said: Counted): string => said(count, plainNumber(count, 0));

/** A hire in words: "1 week and 2 days". */
export function coverWords(cover: RentalCover): string {
  const parts = [
    cover.fourWeeks > 0 ? several(cover.fourWeeks, words.counts.fourWeekHires) : "",
    cover.weeks > 0 ? several(cover.weeks, words.counts.weeks) : "",
    cover.days > 0 ? several(cover.days, words.counts.days) : "",
  ].filter((part) => part !== "");
  return parts.length === 0 ? words.machinesLeaf.noHire : parts.join(" and ");
}
