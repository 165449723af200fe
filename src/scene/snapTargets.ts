import { joinedEnds, workOutline } from "../estimate/index.js";
import { limitCorners, limitKind, type Limit, type PlanPoint, type Work } from "../site/index.js";
import { words } from "../words/index.js";
import type { Selection } from "./props.js";
import { isAmong, shownLimits, shownProbes } from "./shown.js";
import type { SceneContents } from "./sceneTargets.js";
import type { SnapTarget } from "./snap.js";

type Shown = Pick<SceneContents, "site" | "works">;

/**
 * All that a place can snap to: works, limits, and the probes and survey points that show. `moved` is
 * what is being moved; the trenches that end in it are left out as well, for their ends go with it.
 * With `ends`, what is set is an end of a pipe's path, and where such ends belong comes first.
 */
export function snapTargets(
  contents: Shown,
  shown: { showProbes: boolean; showPoints: boolean },
  moved: readonly Selection[],
  ends = false,
): SnapTarget[] {
  const { site } = contents;
  const joined = joinedTrenches(contents, moved);
  const stays = (kind: Selection["kind"], { id }: { id: string }): boolean =>
    !isAmong(moved, { kind, id }) && !(kind === "work" && joined.has(id));
  const probes = shown.showProbes ? shownProbes(site) : [];
  const points = shown.showPoints ? site.survey.points : [];
  const { hold } = words.drawing;
  return [
    ...contents.works
      .filter((one) => stays("work", one))
      .flatMap((one) => (ends ? [...jointTargets(one), ...workTargets(one)] : workTargets(one))),
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

/**
 * Where an end of a pipe's path belongs: the middles of a tank's two short sides, where its inlet
 * and outlet are, a building's outlets, and the ends of trenches.
 */
function jointTargets(work: Work): SnapTarget[] {
  const { hold } = words.joined;
  switch (work.kind) {
    case "tank": {
      const { length, width } = work.body;
      const turn = (work.bearing * Math.PI) / 180;
      const places = [-0.5, 0.5].map((share): PlanPoint => [
        work.at[0] + share * length * Math.sin(turn),
        work.at[1] + share * length * Math.cos(turn),
      ]);
      return [{ name: hold.tankEnd(work.name), shape: "joint", places, wide: width / 2 }];
    }
    case "building":
      return (work.outlets ?? []).map(({ name, at }) => ({
        name: hold.outlet(name, work.name),
        shape: "joint",
        places: [at],
      }));
    case "trench":
      return [
        {
          name: hold.trenchEnd(work.name),
          shape: "joint",
          places:
            work.path.length < 2 ? work.path : [work.path[0]!, work.path.at(-1) ?? work.path[0]!],
        },
      ];
    default:
      return [];
  }
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
