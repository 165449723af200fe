import type { Material } from "../site/index.js";
import { diggingTables } from "./catalogue.js";
import type { Digger, DiggingTables, WayOfDigging } from "./catalogue.js";
import { mapRange, multiplyRanges } from "./range.js";
import type { Range } from "./types.js";

/** Everything that goes into a digger's output in one material at one depth. */
export interface Output {
  /** m³ loose per hour into the bucket and out again. */
  loosePerHour: Range;
  cycles: number;
  swingDepth: number;
  /** m³ heaped, of the bucket that fits. */
  bucket: number;
  fill: Range;
  efficiency: number;
  closeWork: Range;
  ripped: Range;
  source: string;
}

/**
 * Standard cycles per hour for a heaped bucket, m³, by how hard the digging is. Nunnally,
 * Construction Methods and Management, Table 3-3 (recalled); larger buckets keep the last row.
 */
export function cyclesPerHour(
  bucket: number,
  ease: WayOfDigging["ease"],
  { cycles: rows }: DiggingTables = diggingTables(),
): number {
  const row = rows.find((r) => bucket <= r.bucketUpTo) ?? rows[rows.length - 1];
  if (!row) throw new Error("digging tables: got no cycles, expected at least one row");
  return row[ease];
}

/**
 * Swing–depth factor at a 90° swing for a depth as a share of the greatest digging depth, linear
 * between the rows and held outside them. Nunnally, Table 3-4 (90° row second hand).
 */
export function swingDepthFactor(
  shareOfDepth: number,
  { swingDepth: { shares, at90 } }: DiggingTables = diggingTables(),
): number {
  const last = shares.length - 1;
  for (let i = 0; i < last; i++) {
    const [near, far] = [shares[i] ?? 0, shares[i + 1] ?? 0];
    const [atNear, atFar] = [at90[i] ?? 0, at90[i + 1] ?? 0];
    if (shareOfDepth <= near) return atNear;
    if (shareOfDepth < far) {
      return atNear + ((atFar - atNear) * (shareOfDepth - near)) / (far - near);
    }
  }
  return at90[last] ?? 0;
}

/** How a material is dug: its own row if the catalogue has one, else its kind's; "native" too. */
export function wayOfDigging(
  material: Material | "native",
  tables: DiggingTables = diggingTables(),
): WayOfDigging {
  if (material === "native") return tables.native;
  return tables.byMaterial[material.id] ?? tables.byKind[material.kind];
}

/**
 * Loose volume per hour = cycles per hour × swing–depth factor × heaped bucket × fill factor × job
 * efficiency × close-work factor (× share kept when ripped). Nunnally ch. 3; Peurifoy ch. 9. The
 * close-work factor is ours: see shared/catalogue/digging.json.
 *
 * `depth` m; `widest` is the width of floor, m, that the bucket must fit (Infinity for an open
 * hole): a narrower bucket holds less in proportion. `efficiency` 0 to 1.
 */
export function digOutput(
  digger: Digger,
  way: WayOfDigging,
  place: { depth: number; widest: number },
  efficiency: number,
  tables: DiggingTables = diggingTables(),
): Output {
  const bucket = digger.bucket * Math.min(1, place.widest / digger.bucketWidth);
  const cycles = cyclesPerHour(digger.bucket, way.ease, tables);
  const swingDepth = swingDepthFactor(place.depth / digger.digDepth, tables);
  const { low, likely, high } = tables.closeWork;
  const closeWork = { low, likely, high };
  const steady = cycles * swingDepth * bucket * efficiency;
  const varying = multiplyRanges(multiplyRanges(way.fill, closeWork), way.ripped);
  return {
    loosePerHour: mapRange(varying, (share) => share * steady),
    cycles,
    swingDepth,
    bucket,
    fill: way.fill,
    efficiency,
    closeWork,
    ripped: way.ripped,
    source: `Nunnally, Construction Methods and Management, ch. 3 (second hand); ${way.source}`,
  };
}
