import {
  alongPath,
  type Estimate,
  FACE,
  rectangle,
  type Stage,
  workMiddle,
  workOutline,
} from "../estimate/index.js";
import type { PlanPoint, Site, Work } from "../site/index.js";
import type { ScreenPoint } from "./dragging.js";
import { toScene, type SceneFrame, type ScenePoint } from "./frame.js";
import { distanceToPath, type PickTarget, type Prism } from "./picking.js";
import type { Selection } from "./props.js";
import { projectPoint, type SceneView } from "./sceneView.js";
import { isAmong, shownLimits, shownProbes } from "./shown.js";
import { boxAround, type ScreenBox } from "./spotLayout.js";
import type { StageGround } from "./stageGround.js";
import { isSet, pileHeight } from "./works/WorkModels.js";
import { probeHeight } from "./works/ProbePins.js";

/** What of the site shows and can be picked. */
export interface SceneContents {
  site: Site;
  works: readonly Work[];
  estimate: Estimate | null;
  stage: Stage;
  frame: SceneFrame;
  found: StageGround;
  ground: StageGround;
  /** True where the scene is looked at only: nothing in it can be moved. */
  fixed?: boolean | undefined;
}

/** The works as the pointer sees them, scene frame. */
export function pickTargets(contents: SceneContents): PickTarget[] {
  const { works, frame } = contents;
  return works.map((work) => {
    const outline =
      work.kind === "tank" ? holeFloor(work) : (workOutline(work) ?? pileRing(work, contents));
    const path = work.kind === "trench" ? work.path.map((at) => toScene(frame, at)) : null;
    return {
      id: work.id,
      body: bodyOf(work, contents),
      footprint: path === null ? outline.map((at) => toScene(frame, at)) : null,
      path,
      halfWidth: work.kind === "trench" ? work.width / 2 : 0,
    };
  });
}

/** A scene narrower than this (CSS px) shows fewer labels. */
export const NARROW = 560;

/** True when the work carries a label: all do, but on a narrow scene only tanks, beds and the chosen. */
export function hasTag(work: Work, chosen: readonly (Selection | null)[], width: number): boolean {
  return (
    isAmong(chosen, { kind: "work", id: work.id }) ||
    width >= NARROW ||
    work.kind === "tank" ||
    work.kind === "bed"
  );
}

/**
 * Id of the tank whose hole the place on a dug face belongs to: its walls slope out beyond the floor
 * that is the tank's footprint. Null for a place that is not dug, or too far out for such a wall
 * (more than twice its depth from the floor).
 */
export function holeUnder(
  contents: SceneContents,
  targets: readonly PickTarget[],
  ground: ScenePoint | null,
): string | null {
  if (ground === null) return null;
  const [x, y] = ground;
  const found = contents.found.heightAt(x, y);
  if (found === null || contents.ground.heightAt(x, y)?.face === FACE.found) return null;
  let best: { id: string; off: number } | null = null;
  for (const work of contents.works) {
    const floor = targets.find((target) => target.id === work.id)?.footprint;
    const first = floor?.[0];
    if (work.kind !== "tank" || floor === null || floor === undefined || first === undefined) {
      continue;
    }
    const off = distanceToPath([x, y], [...floor, first]);
    const depth = found.z + contents.frame.origin[2] - work.base;
    if (off <= 2 * depth && off < (best?.off ?? Infinity)) best = { id: work.id, off };
  }
  return best?.id ?? null;
}

function holeFloor(work: Extract<Work, { kind: "tank" }>) {
  const { length, width } = work.body;
  return rectangle(work.at, work.bearing, length + 2 * work.overdig, width + 2 * work.overdig);
}

/** About where a tank's hole opens at the ground: its floor, spread by its walls' slope. */
export function holeMouth(
  work: Extract<Work, { kind: "tank" }>,
  contents: SceneContents,
): PlanPoint[] {
  const [x, y] = toScene(contents.frame, work.at);
  const ground = contents.found.heightAt(x, y)?.z ?? work.base - contents.frame.origin[2];
  const depth = Math.max(0, ground + contents.frame.origin[2] - work.base);
  const spread = work.overdig + depth * (work.walls.by === "run" ? work.walls.run : 0.7);
  const { length, width } = work.body;
  return rectangle(work.at, work.bearing, length + 2 * spread, width + 2 * spread);
}

/** The tanks as they stand at this stage, scene frame. */
export function tankBodies(contents: SceneContents): Prism[] {
  return contents.works.flatMap((work) =>
    work.kind === "tank" ? (bodyOf(work, contents) ?? []) : [],
  );
}

/** A body of a work that stands in or on the ground at this stage. */
export interface StandingBody {
  work: Work;
  prism: Prism;
}

/** Every body that there is at this stage, scene frame. */
export function standingBodies(contents: SceneContents): StandingBody[] {
  return contents.works.flatMap((work) => {
    const prism = bodyOf(work, contents);
    return prism === null ? [] : [{ work, prism }];
  });
}

function pileRing(work: Work, contents: SceneContents) {
  if (work.kind !== "pile") return [];
  const radius = Math.max(1, pileHeight(work, contents.works, contents.estimate) * 1.3);
  return rectangle(work.at, 0, radius * 2, radius * 2);
}

function bodyOf(work: Work, contents: SceneContents): Prism | null {
  const { frame, stage } = contents;
  const drop = frame.origin[2];
  const outline = (workOutline(work) ?? []).map((at) => toScene(frame, at));
  if (work.kind === "building") {
    return { outline, bottom: work.base - drop, top: work.base + work.height * 1.25 - drop };
  }
  if (!isSet(stage)) return null;
  if (work.kind === "bed") {
    return { outline, bottom: work.base - drop, top: work.base + work.height - drop };
  }
  if (work.kind === "tank") {
    return { outline, bottom: work.base - drop, top: work.base + work.body.height - drop };
  }
  return null;
}

/** The place on a work that its label points to, scene frame. */
export function workAnchor(work: Work, contents: SceneContents): ScenePoint {
  const { frame, stage, ground, found } = contents;
  const [x, y] = toScene(frame, workMiddle(work));
  const surface = (stage === "found" ? found : ground).heightAt(x, y)?.z ?? frame.centre[2];
  const drop = frame.origin[2];
  switch (work.kind) {
    case "building":
      return [x, y, work.base + work.height * 1.2 - drop];
    case "bed":
      return [x, y, isSet(stage) ? work.base + work.height - drop : surface];
    case "tank":
      return [
        x,
        y,
        stage !== "found" && stage !== "backfilled" ? work.base + work.body.height - drop : surface,
      ];
    case "pad": {
      // At an edge: a pad's middle is where the thing on it has its own label.
      const edge = toScene(frame, alongPath(work.outline.slice(0, 2), 0.5));
      return [edge[0], edge[1], ground.heightAt(edge[0], edge[1])?.z ?? surface];
    }
    // The ground as it stands has the heap in it already.
    case "pile":
    case "trench":
    case "strip":
      return [x, y, surface];
  }
}

/** The box that a work fills on the screen, hole and body; null for a trench, which is long and thin. */
export function screenBoxOf(
  work: Work,
  contents: SceneContents,
  view: SceneView,
): ScreenBox | null {
  if (work.kind === "trench") return null;
  const body = bodyOf(work, contents);
  const outline =
    work.kind === "tank"
      ? holeMouth(work, contents)
      : (workOutline(work) ?? pileRing(work, contents));
  const surface = work.kind === "tank" ? contents.found : contents.ground;
  const foot = outline.map((at): ScenePoint => {
    const [x, y] = toScene(contents.frame, at);
    return [x, y, surface.heightAt(x, y)?.z ?? contents.frame.centre[2]];
  });
  const top = body === null ? [workAnchor(work, contents)] : atLevel(body.outline, body.top);
  return boxAround([...foot, ...top].map((at) => projectPoint(view, at)));
}

/** px between the little boxes along a trench, and of each. */
const BEAD = { apart: 10, size: 12 };

/** The trenches as little boxes along them on the screen. */
export function trenchStrips(contents: SceneContents, view: SceneView): ScreenBox[] {
  const { works, frame, ground } = contents;
  return works.flatMap((work) => {
    if (work.kind !== "trench") return [];
    const path = work.path.map((at): ScreenPoint | null => {
      const [x, y] = toScene(frame, at);
      return projectPoint(view, [x, y, ground.heightAt(x, y)?.z ?? frame.centre[2]]);
    });
    return path.flatMap((b, i) => {
      const a = path[i - 1] ?? null;
      if (a === null || b === null) return [];
      const count = Math.min(
        200,
        Math.ceil(Math.hypot(b.left - a.left, b.top - a.top) / BEAD.apart),
      );
      return Array.from({ length: count }, (_, k): ScreenBox => {
        const share = (k + 0.5) / count;
        const [left, top] = [a.left + (b.left - a.left) * share, a.top + (b.top - a.top) * share];
        const { size } = BEAD;
        return { left: left - size / 2, top: top - size / 2, width: size, height: size };
      });
    });
  });
}

/** m: how tall and half as wide a tree is drawn, about. */
const TREE = { height: 5, radius: 1.3 };

/** Boxes on the screen of what stands on the ground: bodies of works, and trees. */
export function standingBoxes(contents: SceneContents, view: SceneView): ScreenBox[] {
  const bodies = contents.works.flatMap((work) => bodyOf(work, contents) ?? []);
  const solids = bodies.map((body) =>
    boxAround(
      [...atLevel(body.outline, body.bottom), ...atLevel(body.outline, body.top)].map((at) =>
        projectPoint(view, at),
      ),
    ),
  );
  const trees = shownLimits(contents.site).map((limit) => {
    if (limit.kind !== "tree" || limit.at === undefined) return null;
    const [x, y] = toScene(contents.frame, limit.at);
    const z = contents.found.heightAt(x, y)?.z;
    if (z === undefined) return null;
    const ring = rectangle([x, y], 0, 2 * TREE.radius, 2 * TREE.radius);
    const places: ScenePoint[] = [...atLevel(ring, z + 1), [x, y, z], [x, y, z + TREE.height]];
    return boxAround(places.map((at) => projectPoint(view, at)));
  });
  return [...solids, ...trees].filter((box) => box !== null);
}

function atLevel(outline: readonly PlanPoint[], z: number): ScenePoint[] {
  return outline.map(([x, y]) => [x, y, z]);
}

/** Foot and top of a probe's pin, scene frame; null beyond the survey. */
export function probeEnds(
  contents: SceneContents,
  id: string,
): { foot: ScenePoint; top: ScenePoint } | null {
  const probe = shownProbes(contents.site).find((p) => p.id === id);
  if (probe === undefined) return null;
  const [x, y] = toScene(contents.frame, [probe.x, probe.y]);
  const ground = contents.found.heightAt(x, y);
  if (ground === null) return null;
  return {
    foot: [x, y, ground.z],
    top: [x, y, ground.z + probeHeight(contents.site, probe) + 0.3],
  };
}

/** The probe or survey point nearest the pointer within `reach` px; null for none. */
export function pinUnder(
  view: SceneView,
  contents: SceneContents,
  shown: { probes: boolean; points: boolean },
  screen: ScreenPoint,
  reach: number,
): Selection | null {
  let best: { selection: Selection; far: number } | null = null;
  const offer = (selection: Selection, far: number): void => {
    if (far <= reach && (best === null || far < best.far)) best = { selection, far };
  };
  if (shown.points) {
    for (const point of contents.site.survey.points) {
      const [x, y] = toScene(contents.frame, [point.x, point.y]);
      const at = projectPoint(view, [x, y, point.z - contents.frame.origin[2]]);
      if (at !== null) {
        offer(
          { kind: "point", id: point.id },
          Math.hypot(at.left - screen.left, at.top - screen.top),
        );
      }
    }
  }
  if (shown.probes) {
    for (const probe of shownProbes(contents.site)) {
      const ends = probeEnds(contents, probe.id);
      const far = ends === null ? Infinity : pxToLine(view, ends.foot, ends.top, screen);
      offer({ kind: "probe", id: probe.id }, far);
    }
  }
  return (best as { selection: Selection } | null)?.selection ?? null;
}

function pxToLine(view: SceneView, a: ScenePoint, b: ScenePoint, screen: ScreenPoint): number {
  const from = projectPoint(view, a);
  const to = projectPoint(view, b);
  if (from === null || to === null) return Infinity;
  const [ex, ey] = [to.left - from.left, to.top - from.top];
  const size2 = ex * ex + ey * ey;
  const share =
    size2 === 0 ? 0 : ((screen.left - from.left) * ex + (screen.top - from.top) * ey) / size2;
  const held = Math.min(1, Math.max(0, share));
  return Math.hypot(screen.left - from.left - held * ex, screen.top - from.top - held * ey);
}
