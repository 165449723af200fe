/** Cutting holes: what tanks and pads have in common. */
import { tidyOutline, type Place, type Tally } from "../ground/index.js";
import type { Walls, Work } from "../site/index.js";
import { reachFindings } from "./reachCheck.js";
import type { WorkQuantities } from "./types.js";
import { type PlaneOf } from "./sideWall.js";
import { benchFinding, type Hole, type WallTerms } from "./walls.js";
import { materialsMet, type Digging, type Filling } from "./work.js";

/** How the walls of a work stand, as they are planned before it is dug. */
export function wallTerms(digging: Digging, walls: Walls): WallTerms {
  const { ground, runOf, flattestRun } = digging;
  return { ground, walls, runOf, flattestRun };
}

/** Fields of a work's quantities that follow from its cut. */
export type DugQuantities = Pick<
  WorkQuantities,
  | "cut"
  | "deepest"
  | "tallestFace"
  | "daylight"
  | "materialsMet"
  | "outlines"
  | "cutCentre"
  | "bands"
>;

/** Cuts holes one after the other and says what is wrong with them. */
export function digHoles(
  digging: Digging,
  work: Work,
  holes: readonly { hole: Hole; floor: PlaneOf }[],
): DugQuantities {
  const { ground } = digging;
  const taken = ground.tally();
  let structureHit = 0;
  for (const { hole, floor } of holes) {
    for (const shelf of hole.shelves) {
      structureHit += ground.cut(shelf, hole.box, taken, 0, floor);
    }
    if (hole.tooMany) digging.findings.push(benchFinding(work.id, work.name));
  }
  if (structureHit > negligibleArea(digging)) {
    digging.findings.push(structureFinding(work.id, work.name));
  }
  digging.findings.push(...reachFindings(digging, work));
  return quantitiesOf(digging, taken);
}

/** The quantities that follow from the present work's cut. */
export function quantitiesOf(digging: Digging, taken: Tally): DugQuantities {
  const { ground } = digging;
  const { area, deepest, tallest } = ground.markedExtent();
  const cut = taken.record();
  const centre = taken.centre();
  digging.moved[digging.number]!.natural = taken.record(({ by }) => by < 0);
  return {
    cut,
    deepest,
    tallestFace: tallest,
    daylight: area,
    materialsMet: materialsMet(ground, cut),
    ...(centre && { cutCentre: centre }),
    ...shapesOf(digging),
  };
}

function shapesOf({ ground }: Digging): Pick<WorkQuantities, "outlines" | "bands"> {
  return {
    outlines: { daylight: ground.cutRings("daylight"), toe: ground.cutRings("floor") },
    bands: ground
      .cutBands()
      .list()
      .map(({ from, to, volume }) => ({ from, to, cut: volume, fill: 0 })),
  };
}

/** What putting in adds to a work's quantities. */
export function quantitiesPut(
  { ground }: Digging,
  filling: Filling,
  dug: Pick<WorkQuantities, "bands">,
): Pick<WorkQuantities, "fill" | "fillCentre" | "bands"> {
  const centre = filling.centre();
  return {
    fill: filling.record(),
    ...(centre && { fillCentre: centre }),
    ...(dug.bands && { bands: withFill(dug.bands, ground.filledBands().list()) }),
  };
}

/** Bands of cut joined with those of fill, which have the same step. */
function withFill(
  cut: NonNullable<WorkQuantities["bands"]>,
  filled: readonly { from: number; to: number; volume: number }[],
): NonNullable<WorkQuantities["bands"]> {
  const count = Math.max(cut.length, filled.length);
  return Array.from({ length: count }, (_, k) => {
    const { from, to } = k < cut.length ? cut[k]! : filled[k]!;
    return { from, to, cut: cut[k]?.cut ?? 0, fill: filled[k]?.volume ?? 0 };
  });
}

/** A plan area no greater than this is rounding: 1e-10 of the square of the site's size. */
function negligibleArea({ ground }: Digging): number {
  return 1e-10 * (1e12 * ground.base.tin.rounding) ** 2;
}

export function structureFinding(id: string, name: string): Digging["findings"][number] {
  return {
    level: "caution",
    code: "dig.meets-structure",
    where: id,
    text: `${name} runs into a tank that is already set. The tank is left standing and the dig is counted only around it; move one of them or change the building order.`,
    source: "geometry",
  };
}

/**
 * Which side of an outline as written each edge of the tidied one is. Where tidying joined sides
 * that go straight on, the flattest of their slopes holds, and `sides` is changed to say so.
 */
export function tidySides(
  written: readonly Place[],
  sides: readonly number[] | undefined,
): { outline: Place[]; runs: number[] | undefined } {
  const outline = tidyOutline(written);
  if (!sides) return { outline, runs: undefined };
  const runs = outline.map((p, i) => {
    const q = outline[(i + 1) % outline.length]!;
    const along = written.flatMap((a, k) => {
      const b = written[(k + 1) % written.length]!;
      return liesAlong(p, q, a) && liesAlong(p, q, b) ? [sides[k] ?? 0] : [];
    });
    return Math.max(0, ...along);
  });
  return { outline, runs };
}

function liesAlong(p: Place, q: Place, at: Place): boolean {
  const [dx, dy] = [q[0] - p[0], q[1] - p[1]];
  const length = Math.hypot(dx, dy);
  const off = (dx * (at[1] - p[1]) - dy * (at[0] - p[0])) / length;
  const along = (dx * (at[0] - p[0]) + dy * (at[1] - p[1])) / length;
  const slack = 1e-9 * length;
  return Math.abs(off) <= slack && along >= -slack && along <= length + slack;
}
