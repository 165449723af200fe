/** One side of a tank's foot cut across: its bedding, the room beside it, what goes back there. */
import { sectionAlong } from "../../estimate/index.js";
import type { PlanPoint, Scheme, Site, Tank } from "../../site/index.js";
import { elevation, length } from "../../units/index.js";
import { words } from "../../words/index.js";
import { nameOfMaterial } from "../earthNames.js";
import { upTo } from "./cuts.js";
import type { DetailSpec } from "./detailSpec.js";

/** m of the tank inside its edge, of ground beside the floor and under it, and over the underside. */
const INSIDE = 0.6;
const BESIDE = 0.4;
const UNDER = 0.2;
const OVER = 0.5;

/** Null for a tank without bedding, or beyond the survey. */
export function tankDetail(site: Site, scheme: Scheme, tank: Tank): DetailSpec | null {
  const { at, base, bedding, body, overdig } = tank;
  if (!(bedding.depth > 0)) return null;
  const angle = (tank.bearing * Math.PI) / 180;
  const across: PlanPoint = [Math.cos(angle), -Math.sin(angle)];
  const edge = Math.min(INSIDE, body.width / 2);
  const place = (off: number): PlanPoint => [at[0] + across[0] * off, at[1] + across[1] * off];
  const half = body.width / 2;
  const line: [PlanPoint, PlanPoint] = [place(half - edge), place(half + overdig + BESIDE)];
  const floor = base - bedding.depth;
  const low = floor - UNDER;
  const finished = sectionAlong(site, scheme.id, "backfilled", line, low);
  if (finished.surface.length === 0) return null;
  const level = (z: number): string => elevation.print(z, site.units);
  const long = (metres: number): string => length.print(metres, site.units);
  const { detail } = words.sheetsSections;
  return {
    subject: `detail:tank:${tank.id}`,
    title: detail.tankBed(tank.name),
    said: detail.tankBedSaid(long(body.length + 2 * overdig), long(body.width + 2 * overdig)),
    from: 0,
    to: finished.length,
    low,
    high: base + Math.min(body.height, OVER),
    finished,
    dug: sectionAlong(upTo(site, scheme, tank), scheme.id, "dug", line),
    paint: () => [],
    callouts: [
      {
        height: base + Math.min(body.height, OVER) * 0.6,
        from: edge + overdig / 2,
        text: detail.backfillOf(nameOfMaterial(site, tank.backfill)),
      },
      { height: base, from: edge, text: detail.tankUnderside(level(base)) },
      {
        height: base - bedding.depth / 2,
        from: edge,
        text: detail.tankBedding(long(bedding.depth), nameOfMaterial(site, bedding.material)),
      },
      { height: floor, from: edge + overdig, text: detail.holeFloor(level(floor)) },
    ],
    beside: [{ from: floor, to: base, name: detail.bedding }],
    across: overdig > 0.001 ? [[{ from: edge, to: edge + overdig, name: "" }]] : [],
  };
}
