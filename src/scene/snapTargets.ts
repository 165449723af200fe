import { joinedEnds } from "../estimate/index.js";
import { limitCorners, limitKind, type Limit, type PlanPoint, type Work } from "../site/index.js";
import { words } from "../words/index.js";
import type { Selection } from "./props.js";
import { isAmong, shownLimits, shownProbes } from "./shown.js";
import type { SceneContents } from "./sceneTargets.js";
import type { SnapTarget } from "./snap.js";
import { workOutline } from "./workShapes.js";

type Shown = Pick<SceneContents, "site" | "works">;

/**
 * All that a place can snap to: works, limits, and the probes and survey points that show. `moved` is
 * what is being moved; the trenches that end in it are left out as well, for their ends go with it.
 */
export function snapTargets(
  contents: Shown,
  shown: { showProbes: boolean; showPoints: boolean },
  moved: readonly Selection[],
): SnapTarget[] {
  const { site } = contents;
  const joined = joinedTrenches(contents, moved);
  const stays = (kind: Selection["kind"], { id }: { id: string }): boolean =>
    !isAmong(moved, { kind, id }) && !(kind === "work" && joined.has(id));
  const probes = shown.showProbes ? shownProbes(site) : [];
  const points = shown.showPoints ? site.survey.points : [];
  const { hold } = words.drawing;
  return [
    ...contents.works.filter((one) => stays("work", one)).flatMap(workTargets),
    ...shownLimits(site)
      .filter((one) => stays("limit", one))
      .flatMap(limitTargets),
    ...probes.filter((one) => stays("probe", one)).map((one) => pin(hold.probe(one.id), one)),
    ...points.filter((one) => stays("point", one)).map((one) => pin(hold.point(one.id), one)),
  ];
}

function pin(name: string, { x, y }: { x: number; y: number }): SnapTarget {
  return { name, shape: "place", places: [[x, y]] };
}

/** Ids of the trenches that end in what is moved. */
function joinedTrenches({ works }: Shown, moved: readonly Selection[]): Set<string> {
  const all = { works: [...works] };
  const held = works.filter(({ id }) => isAmong(moved, { kind: "work", id }));
  return new Set(held.flatMap((work) => joinedEnds(all, work).map(({ trench }) => trench)));
}

function workTargets(work: Work): SnapTarget[] {
  const { name } = work;
  const targets: SnapTarget[] = [];
  const middle = (at: PlanPoint): SnapTarget => ({ name, shape: "middle", places: [at] });
  if (work.kind === "trench") targets.push({ name, shape: "path", places: work.path });
  else {
    const places = workOutline(work);
    if (places !== null) targets.push({ name, shape: "outline", places });
  }
  if ("at" in work) targets.push(middle(work.at));
  if (work.kind === "building") {
    for (const outlet of work.outlets ?? []) {
      targets.push({ name: outlet.name, shape: "place", places: [outlet.at] });
    }
  }
  if (work.kind === "pad") {
    for (const { outline } of work.levels ?? []) {
      targets.push({ name, shape: "outline", places: outline });
    }
  }
  return targets;
}

/** What a person calls a limit: its name, or its kind. */
export function limitName({ name, kind }: Limit): string {
  return name ?? limitKind(kind)?.name ?? kind;
}

function limitTargets(limit: Limit): SnapTarget[] {
  const name = limitName(limit);
  const { at } = limit;
  const corners = limitCorners(limit);
  return [
    ...(at === undefined ? [] : [{ name, shape: "place" as const, places: [at] }]),
    ...(corners === null ? [] : [lineTarget(name, corners)]),
  ];
}

function lineTarget(
  name: string,
  { places, closed }: { places: PlanPoint[]; closed: boolean },
): SnapTarget {
  return { name, shape: closed ? "outline" : "path", places };
}
