import { joinedEnds } from "../estimate/index.js";
import { limitCorners, limitKind, type Limit, type PlanPoint, type Work } from "../site/index.js";
import { words } from "../words/index.js";
import type { Selection } from "./props.js";
import type { SceneContents } from "./sceneTargets.js";
import type { SnapTarget } from "./snap.js";
import { workOutline } from "./workShapes.js";

/**
 * All that a place can snap to: works, limits, and the probes and survey points that show. `but` is
 * what is being moved; the trenches that end in it are left out as well, for their ends go with it.
 */
export function snapTargets(
  contents: SceneContents,
  shown: { showProbes: boolean; showPoints: boolean },
  but: Selection | null,
): SnapTarget[] {
  const { site } = contents;
  const left = leftOut(contents, but);
  const works = contents.works.filter((work) => !left.has(work.id)).flatMap(workTargets);
  const limits = (site.limits ?? [])
    .filter((limit) => but?.kind !== "limit" || limit.id !== but.id)
    .flatMap(limitTargets);
  const { hold } = words.drawing;
  const pins = [
    ...(shown.showProbes
      ? site.ground.probes.map((one) => pin("probe", hold.probe(one.id), one))
      : []),
    ...(shown.showPoints
      ? site.survey.points.map((one) => pin("point", hold.point(one.id), one))
      : []),
  ];
  const free = pins.filter(({ kind, id }) => kind !== but?.kind || id !== but.id);
  return [...works, ...limits, ...free.map(({ target }) => target)];
}

function pin(
  kind: Selection["kind"],
  name: string,
  { id, x, y }: { id: string; x: number; y: number },
) {
  const target: SnapTarget = { name, shape: "place", places: [[x, y]] };
  return { kind, id, target };
}

/** Ids of the work that is moved and of all that goes with it. */
function leftOut({ site, works }: SceneContents, but: Selection | null): Set<string> {
  if (but?.kind !== "work") return new Set();
  const work = works.find((one) => one.id === but.id);
  const joined = work === undefined ? [] : joinedEnds({ works: [...works] }, work);
  const over = site.schemes.flatMap((scheme) =>
    scheme.works.filter(
      (one) => one.kind === "strip" && one.area.by === "work" && one.area.work === but.id,
    ),
  );
  return new Set([but.id, ...joined.map(({ trench }) => trench), ...over.map(({ id }) => id)]);
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
