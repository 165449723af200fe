/** Ground that a scheme lays bare: everything it digs, fills, strips, heaps and builds, once each. */
import { areasOf, besideLine, unionOf, type Areas, type WorkQuantities } from "../dig/index.js";
import { areaOutline } from "../site/index.js";
import type { Limit, Pad, PlanPoint, Scheme } from "../site/index.js";

/** Ground as found at a place, m; NaN where it is not known. */
type GroundAt = (place: PlanPoint) => number;

/**
 * The union in plan of every hole's edge, pad with the foot of its fill, strip, pile's foot, bed and
 * building, and of drives among the limits that are said to be built for the job (the ends of one given
 * by its middle line are taken round). The fill's foot is taken as far out all round as at its highest
 * place: not too small. Tracks of machines are not known.
 */
export function disturbedGround(
  { works }: Pick<Scheme, "works">,
  dug: readonly WorkQuantities[],
  groundAt: GroundAt,
  limits: readonly Limit[] = [],
): Areas {
  const parts = works.flatMap((work): Areas[] => {
    const quantities = dug.find(({ id }) => id === work.id);
    const edge = areasOf(quantities?.outlines?.daylight ?? []);
    const foot = areasOf(quantities?.heap?.toe ?? []);
    if (work.kind === "pad") return [edge, ...padGround(work, groundAt)];
    if (work.kind === "bed" || work.kind === "building") {
      return [edge, areasOf([areaOutline(work) ?? []])];
    }
    return [edge, foot];
  });
  return unionOf([...parts, ...limits.filter(isBuiltDrive).map(driveGround)]);
}

/** Whether a limit is a drive that the job builds. */
export function isBuiltDrive({ kind, built }: Limit): boolean {
  return kind === "drive" && built === true;
}

/** The ground of a drive; none where its width, or its outline, is not given. */
export function driveGround({ path = [], closed, width }: Limit): Areas {
  if (closed === true && path.length > 2) return areasOf([path]);
  return width === undefined || path.length < 2 ? [] : besideLine(path, width / 2);
}

function padGround(pad: Pad, groundAt: GroundAt): Areas[] {
  const levels = [{ outline: pad.outline, top: pad.top }, ...(pad.levels ?? [])];
  return levels.flatMap(({ outline, top }) => {
    const rise = Math.max(
      0,
      ...outline.map((at) => top - groundAt(at)).filter((high) => Number.isFinite(high)),
    );
    const body = areasOf([outline]);
    const reach = rise * pad.fillRun;
    return reach < 0.01 ? [body] : [body, besideLine([...outline, outline[0]!], reach)];
  });
}
