/**
 * Edits of the document: pure functions from one site to the next.
 *
 * Every edit shares what it does not touch, so `site.survey` and `site.ground` keep their identity
 * when only works change; the engine remembers the triangulated ground by that identity. An edit
 * that names something the site does not hold returns the very same site.
 */
import type {
  Building,
  Layer,
  Limit,
  Material,
  Pad,
  Pipe,
  PlanPoint,
  Probe,
  Scheme,
  Site,
  Strip,
  SurveyPoint,
  Work,
} from "./schema.js";
import { workNamed } from "./pipeNames.js";

/** Every id in use in the site, of whatever kind. */
function idsInUse(site: Site): Set<string> {
  const ids = new Set<string>();
  for (const point of site.survey.points) ids.add(point.id);
  for (const layer of site.ground.layers) ids.add(layer.id);
  for (const probe of site.ground.probes) ids.add(probe.id);
  for (const limit of site.limits ?? []) ids.add(limit.id);
  for (const scheme of site.schemes) {
    ids.add(scheme.id);
    for (const work of scheme.works) {
      ids.add(work.id);
      const pipes = work.kind === "trench" ? work.pipes : [];
      pipes.forEach((pipe) => ids.add(pipe.id));
    }
  }
  return ids;
}

/** The first of `prefix-1`, `prefix-2` … that nothing in the site (or in `also`) is called yet. */
export function freshId(site: Site, prefix: string, also: readonly string[] = []): string {
  const taken = idsInUse(site);
  for (const id of also) taken.add(id);
  let count = 1;
  while (taken.has(`${prefix}-${count}`)) count += 1;
  return `${prefix}-${count}`;
}

/** Replaces the item with this id by what `change` makes of it; same list when nothing changes. */
function changeItem<T extends { id: string }>(
  list: readonly T[],
  id: string,
  change: (item: T) => T,
): T[] {
  const index = list.findIndex((item) => item.id === id);
  const item = list[index];
  if (item === undefined) return list as T[];
  const changed = change(item);
  if (changed === item) return list as T[];
  const next = list.slice();
  next[index] = changed;
  return next;
}

/** Changes one scheme; the same site when the scheme is unknown or unchanged. */
export function changeScheme(
  site: Site,
  schemeId: string,
  change: (scheme: Scheme) => Scheme,
): Site {
  const schemes = changeItem(site.schemes, schemeId, change);
  return schemes === site.schemes ? site : { ...site, schemes };
}

/** Changes the list of works of one scheme; the same site when it comes back as it was. */
export function changeWorks(site: Site, schemeId: string, change: (works: Work[]) => Work[]): Site {
  return changeScheme(site, schemeId, (scheme) => {
    const works = change(scheme.works);
    return works === scheme.works ? scheme : { ...scheme, works };
  });
}

/** The work with this id in this scheme, or null. */
export function findWork(site: Site, schemeId: string, workId: string): Work | null {
  const scheme = site.schemes.find((one) => one.id === schemeId);
  return scheme?.works.find((work) => work.id === workId) ?? null;
}

/** Adds a work as the last to be built, or at a place in the building order. */
export function addWork(site: Site, schemeId: string, work: Work, place = Infinity): Site {
  return changeWorks(site, schemeId, (works) => works.toSpliced(place, 0, work));
}

/** Changes one work by a function of it. */
export function changeWork(
  site: Site,
  schemeId: string,
  workId: string,
  change: (work: Work) => Work,
): Site {
  return changeWorks(site, schemeId, (works) => changeItem(works, workId, change));
}

function liesOver(work: Work, workId: string): work is Strip {
  return work.kind === "strip" && work.area.by === "work" && work.area.work === workId;
}

/** The strips of a scheme whose area is that of this work. */
export function stripsOver(site: Site, schemeId: string, workId: string): Strip[] {
  const works = site.schemes.find((one) => one.id === schemeId)?.works ?? [];
  return works.filter((work) => liesOver(work, workId));
}

/** Takes a work away, and with it the strips that lie over it: they would have no area. */
export function removeWork(site: Site, schemeId: string, workId: string): Site {
  const left = changeWorks(site, schemeId, (works) => {
    if (works.every((work) => work.id !== workId)) return works;
    return works.filter((work) => work.id !== workId && !liesOver(work, workId));
  });
  return changeScheme(left, schemeId, (scheme) => withoutField(scheme, workId));
}

/** The scheme with a work no longer among those that take the water. */
function withoutField(scheme: Scheme, workId: string): Scheme {
  const { field, ...flow } = scheme.flow ?? {};
  if (field === undefined || !field.includes(workId)) return scheme;
  const rest = field.filter((id) => id !== workId);
  return { ...scheme, flow: rest.length > 0 ? { ...flow, field: rest } : flow };
}

/** Gives a work another name, and a trench's one pipe with it while no person named that. */
export function renameWork(site: Site, schemeId: string, workId: string, name: string): Site {
  return changeWork(site, schemeId, workId, (work) => workNamed(work, name));
}

function shifted(point: PlanPoint, by: PlanPoint): PlanPoint {
  return [point[0] + by[0], point[1] + by[1]];
}

function allShifted(points: readonly PlanPoint[], by: PlanPoint): PlanPoint[] {
  return points.map((point) => shifted(point, by));
}

function shiftedLevels({ levels }: Pad, by: PlanPoint): Pick<Pad, "levels"> {
  if (levels === undefined) return {};
  return {
    levels: levels.map((level) => ({ ...level, outline: allShifted(level.outline, by) })),
  };
}

function shiftedOutlets({ outlets }: Building, by: PlanPoint): Pick<Building, "outlets"> {
  if (outlets === undefined) return {};
  return { outlets: outlets.map((outlet) => ({ ...outlet, at: shifted(outlet.at, by) })) };
}

/**
 * The same work, its plan places moved by `by` (m east, m north); elevations stay. A pad's further
 * levels move with it; a strip over a work stays with that work.
 */
export function workMovedBy(work: Work, by: PlanPoint): Work {
  if (by[0] === 0 && by[1] === 0) return work;
  switch (work.kind) {
    case "tank":
    case "bed":
    case "pile":
      return { ...work, at: shifted(work.at, by) };
    case "pad":
      return { ...work, outline: allShifted(work.outline, by), ...shiftedLevels(work, by) };
    case "building":
      return { ...work, outline: allShifted(work.outline, by), ...shiftedOutlets(work, by) };
    case "trench":
      return { ...work, path: allShifted(work.path, by) };
    case "strip": {
      const { area } = work;
      if (area.by === "work") return work;
      return { ...work, area: { ...area, outline: allShifted(area.outline, by) } };
    }
  }
}

/** Moves a work in plan by `by` metres east and north. */
export function moveWork(site: Site, schemeId: string, workId: string, by: PlanPoint): Site {
  return changeWork(site, schemeId, workId, (work) => workMovedBy(work, by));
}

/**
 * Turns a tank or a bed to a bearing (degrees clockwise from north, brought into 0–360), or the
 * fall of a pad that has one; a pad's outline stays.
 */
export function turnWork(site: Site, schemeId: string, workId: string, bearing: number): Site {
  const turned = ((bearing % 360) + 360) % 360;
  return changeWork(site, schemeId, workId, (work) => {
    if (work.kind === "tank" || work.kind === "bed") return { ...work, bearing: turned };
    if (work.kind !== "pad" || work.fall === undefined) return work;
    return { ...work, fall: { ...work.fall, bearing: turned } };
  });
}

/** Moves a work to another place in the building order; `to` is its new index. */
export function reorderWork(site: Site, schemeId: string, workId: string, to: number): Site {
  return changeWorks(site, schemeId, (works) => {
    const from = works.findIndex((work) => work.id === workId);
    const work = works[from];
    const place = Math.max(0, Math.min(works.length - 1, to));
    if (work === undefined || from === place) return works;
    const next = works.filter((_, index) => index !== from);
    next.splice(place, 0, work);
    return next;
  });
}

/** Changes one pipe, in whichever trench of the scheme it lies. */
export function changePipe(
  site: Site,
  schemeId: string,
  pipeId: string,
  change: (pipe: Pipe) => Pipe,
): Site {
  const scheme = site.schemes.find((one) => one.id === schemeId);
  const trench = scheme?.works.find(
    (work) => work.kind === "trench" && work.pipes.some((pipe) => pipe.id === pipeId),
  );
  if (trench === undefined) return site;
  return changeWork(site, schemeId, trench.id, (work) =>
    work.kind === "trench" ? { ...work, pipes: changeItem(work.pipes, pipeId, change) } : work,
  );
}

function withProbes(site: Site, probes: Probe[]): Site {
  return probes === site.ground.probes ? site : { ...site, ground: { ...site.ground, probes } };
}

/** Adds a probe; its thicknesses must be one for each layer but the last. */
export function addProbe(site: Site, probe: Probe): Site {
  return withProbes(site, [...site.ground.probes, probe]);
}

/** Changes one probe by a function of it. */
export function changeProbe(site: Site, probeId: string, change: (probe: Probe) => Probe): Site {
  return withProbes(site, changeItem(site.ground.probes, probeId, change));
}

/** Takes a probe away. */
export function removeProbe(site: Site, probeId: string): Site {
  const left = site.ground.probes.filter((probe) => probe.id !== probeId);
  return left.length === site.ground.probes.length ? site : withProbes(site, left);
}

function withPoints(site: Site, points: SurveyPoint[]): Site {
  return points === site.survey.points ? site : { ...site, survey: { ...site.survey, points } };
}

/** Adds a survey point. */
export function addPoint(site: Site, point: SurveyPoint): Site {
  return withPoints(site, [...site.survey.points, point]);
}

/** Changes one survey point by a function of it. */
export function changePoint(
  site: Site,
  pointId: string,
  change: (point: SurveyPoint) => SurveyPoint,
): Site {
  return withPoints(site, changeItem(site.survey.points, pointId, change));
}

/** Takes a survey point away, and with it its place in any breakline. */
export function removePoint(site: Site, pointId: string): Site {
  const points = site.survey.points.filter((point) => point.id !== pointId);
  if (points.length === site.survey.points.length) return site;
  const survey = { ...site.survey, points };
  if (site.survey.breaklines !== undefined) {
    survey.breaklines = site.survey.breaklines
      .map((chain) => chain.filter((id) => id !== pointId))
      .filter((chain) => chain.length >= 2);
  }
  return { ...site, survey };
}

/** The same site on another survey: its points, and breaklines only if given. */
export function withSurvey(
  site: Site,
  points: readonly SurveyPoint[],
  breaklines?: readonly (readonly string[])[],
): Site {
  const survey: Site["survey"] = { points: points.slice() };
  if (breaklines !== undefined) survey.breaklines = breaklines.map((chain) => chain.slice());
  return { ...site, survey };
}

/** How near points are one (m, in plan); null goes back to the usual. */
export function setTolerance(site: Site, tolerance: number | null): Site {
  if (tolerance !== null) return { ...site, survey: { ...site.survey, tolerance } };
  if (site.survey.tolerance === undefined) return site;
  const survey = { ...site.survey };
  delete survey.tolerance;
  return { ...site, survey };
}

/** Which units a person sees; the document stays in SI. */
export function setUnits(site: Site, units: Site["units"]): Site {
  return site.units === units ? site : { ...site, units };
}

/** Gives the site another name. */
export function renameSite(site: Site, name: string): Site {
  return site.name === name ? site : { ...site, name };
}

/** Changes one layer's name or material. */
export function setLayer(site: Site, layerId: string, change: (layer: Layer) => Layer): Site {
  const layers = changeItem(site.ground.layers, layerId, change);
  return layers === site.ground.layers ? site : { ...site, ground: { ...site.ground, layers } };
}

/**
 * Puts a new layer at `index` (0 on top). Every probe gets thickness 0 for it; a new last layer
 * leaves the one above it with thickness 0 until a probe says otherwise.
 */
export function addLayer(site: Site, layer: Layer, index: number): Site {
  const place = Math.max(0, Math.min(site.ground.layers.length, index));
  const layers = site.ground.layers.slice();
  layers.splice(place, 0, layer);
  const gap = Math.min(place, layers.length - 2);
  const probes = site.ground.probes.map((probe) => {
    const thickness = probe.thickness.slice();
    thickness.splice(gap, 0, 0);
    return { ...probe, thickness };
  });
  return { ...site, ground: { ...site.ground, layers, probes } };
}

/** Takes a layer away and its thickness from every probe; the only layer stays. */
export function removeLayer(site: Site, layerId: string): Site {
  const index = site.ground.layers.findIndex((layer) => layer.id === layerId);
  if (index < 0 || site.ground.layers.length === 1) return site;
  const layers = site.ground.layers.filter((layer) => layer.id !== layerId);
  const gap = Math.min(index, layers.length - 1);
  const probes = site.ground.probes.map((probe) => ({
    ...probe,
    thickness: probe.thickness.filter((_, place) => place !== gap),
  }));
  const named = layers.slice(0, -1).map(({ id }) => id);
  const kept = probes.map((probe) => {
    const { stoppedIn, ...rest } = probe;
    return stoppedIn === undefined || named.includes(stoppedIn) ? probe : rest;
  });
  return { ...site, ground: { ...site.ground, layers, probes: kept } };
}

/** Adds a limit (a well, a lot line …). */
export function addLimit(site: Site, limit: Limit): Site {
  return { ...site, limits: [...(site.limits ?? []), limit] };
}

/** Changes one limit by a function of it. */
export function changeLimit(site: Site, limitId: string, change: (limit: Limit) => Limit): Site {
  const limits = changeItem(site.limits ?? [], limitId, change);
  return limits === site.limits || limits.length === 0 ? site : { ...site, limits };
}

/** Moves a limit in plan by `by` metres east and north. */
export function moveLimit(site: Site, limitId: string, by: PlanPoint): Site {
  return changeLimit(site, limitId, (limit) => ({
    ...limit,
    ...(limit.at === undefined ? {} : { at: shifted(limit.at, by) }),
    ...(limit.path === undefined ? {} : { path: allShifted(limit.path, by) }),
  }));
}

/** Takes a limit away. */
export function removeLimit(site: Site, limitId: string): Site {
  const limits = (site.limits ?? []).filter((limit) => limit.id !== limitId);
  return limits.length === (site.limits ?? []).length ? site : { ...site, limits };
}

/** Adds a material of the site's own, or replaces the one with its id. */
export function setMaterial(site: Site, material: Material): Site {
  const others = (site.materials ?? []).filter((one) => one.id !== material.id);
  return { ...site, materials: [...others, material] };
}

/** Sets how far the ground may differ from its probes; a field given as undefined goes away. */
export function setDoubt(
  site: Site,
  choice: { range?: number | undefined; share?: number | undefined },
): Site {
  const entries = Object.entries({ ...site.ground.doubt, ...choice });
  const doubt = Object.fromEntries(entries.filter(([, value]) => value !== undefined));
  return { ...site, ground: { ...site.ground, doubt } };
}
