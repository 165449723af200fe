/** What is ordered but priced by no line of the cost, in words: the same on every list of it. */
import { fittingRows, soldSize, unpricedOf } from "../estimate/index.js";
import type { Estimate, Unpriced, UnpricedPiece } from "../estimate/index.js";
import type { Site } from "../site/index.js";
import { area, distance, plainNumber, size } from "../units/index.js";
import { words } from "../words/index.js";

const said = words.orders;

/** Its name as it is asked for. */
export function unpricedName(one: Unpriced, { units }: Site): string {
  if (one.kind === "fabric") return said.fabric;
  if (one.kind === "bed-pipe") {
    return said.bedPipe(one.places, soldSize(one.inside, units));
  }
  return pieceName(one, units);
}

function pieceName(one: UnpricedPiece, units: Site["units"]): string {
  const { inside, outside, row = "", made = 0 } = one;
  const sold = soldSize(inside, units, outside);
  switch (one.piece) {
    case "fitting":
      return said.fitting(soldFitting(row), sold);
    case "check-valve":
      return said.checkValve(sold);
    case "drain-valve":
      return said.drainValve(sold);
    case "branch-valve":
      return said.valve(sold);
    case "bend":
      return said.bend(`${made}°`, sold);
    case "cleanout":
      return said.cleanout(sold);
    case "distribution-box":
      return said.box(one.ways?.into ?? 1, one.ways?.out ?? 0, sold);
    case "tank-connector":
      return (one.electrical === true ? said.conduitSeal : said.tankSeal)(
        outside === undefined ? sold : size.print(outside, units),
      );
  }
}

/** A fitting as it is asked for: how it stands when water runs through it is not sold with it. */
function soldFitting(row: string): string {
  const name = fittingRows().rows.find(({ id }) => id === row)?.name ?? row;
  return name.replace(/, (open|straight through|out of the side)$/, "");
}

/** How much of it is needed: an area, a length or a count. */
export function unpricedAmount(one: Unpriced, { units }: Site): string {
  if (one.kind === "fabric") return area.print(coveredArea(one.covers), units);
  if (one.kind === "bed-pipe") {
    const all = one.runs.reduce((sum, { length }) => sum + length, 0);
    return distance.print(all, units);
  }
  return plainNumber(one.count, 0);
}

/** m². */
export const coveredArea = (covers: readonly { length: number; width: number }[]): number =>
  covers.reduce((sum, { length, width }) => sum + length * width, 0);

/** All of it in a sentence that says that the total is without it; null where everything is priced. */
export function unpricedWords(site: Site, estimate: Estimate): string | null {
  const all = unpricedOf(site, estimate);
  if (all.length === 0) return null;
  return said.orderedUnpriced(
    all
      .map((one) => said.unpricedOne(unpricedName(one, site), unpricedAmount(one, site)))
      .join("; "),
  );
}
