/** What must hold between the fields of a site, beyond each field's own schema. */
import { materialsOf } from "./catalogue.js";
import { areaOutline, outlineProblem } from "./planShape.js";
import type { SiteProblem, SiteProblemCode } from "./problem.js";
import { NATIVE, type PlanPoint, type Scheme, type Site, type Walls, type Work } from "./schema.js";

/** Survey points that a site may have: what a page can hold and join, with room to spare. */
export const MOST_POINTS = 1_000_000;

type Report = (code: SiteProblemCode, path: string, text: string, mend: string) => void;

/** Everything wrong between the fields of a site whose fields are each right. */
export function crossProblems(site: Site): SiteProblem[] {
  const problems: SiteProblem[] = [];
  const report: Report = (code, path, text, mend) => problems.push({ code, path, text, mend });
  checkSurvey(site, report);
  checkLayers(site, report);
  unique(site.materials ?? [], "materials", report);
  site.materials?.forEach((material, i) => {
    if (material.id === NATIVE) {
      const place = `materials[${i}].id`;
      report("duplicate-id", place, `"${NATIVE}" stands for the site's own earth`, "rename it");
    }
  });
  unique(site.schemes, "schemes", report);
  site.schemes.forEach((scheme, i) => checkScheme(site, scheme, `schemes[${i}]`, report));
  return problems;
}

function unique(rows: readonly { id: string }[], path: string, report: Report): void {
  const seen = new Map<string, number>();
  rows.forEach(({ id }, i) => {
    const first = seen.get(id);
    if (first === undefined) seen.set(id, i);
    else
      report("duplicate-id", `${path}[${i}].id`, `"${id}" is also ${path}[${first}]`, "rename one");
  });
}

function checkSurvey(site: Site, report: Report): void {
  const { points, breaklines, boundary } = site.survey;
  if (points.length > MOST_POINTS) {
    const count = points.length.toLocaleString("en-US");
    const most = MOST_POINTS.toLocaleString("en-US");
    const text = `has ${count} points; up to ${most} can be worked on`;
    const mend = "thin the points, or keep those around the dig only";
    report("too-large", "survey.points", text, mend);
    return;
  }
  unique(points, "survey.points", report);
  const known = new Set(points.map((point) => point.id));
  breaklines?.forEach((chain, i) => {
    const path = `survey.breaklines[${i}]`;
    if (chain.length < 2) report("wrong-count", path, "has fewer than 2 points", "add a point");
    chain.forEach((id, k) => {
      if (!known.has(id)) {
        report(
          "unknown-id",
          `${path}[${k}]`,
          `no survey point is called "${id}"`,
          "use a point's id",
        );
      }
    });
  });
  if (boundary) checkOutline(boundary, "survey.boundary", report);
}

function checkLayers(site: Site, report: Report): void {
  const { layers, probes } = site.ground;
  unique(layers, "ground.layers", report);
  unique(probes, "ground.probes", report);
  layers.forEach((layer, i) => {
    checkMaterial(site, layer.material, `ground.layers[${i}].material`, false, report);
  });
  probes.forEach((probe, i) => {
    const wanted = layers.length - 1;
    if (probe.thickness.length !== wanted) {
      report(
        "wrong-count",
        `ground.probes[${i}].thickness`,
        `has ${probe.thickness.length} values for ${layers.length} layers`,
        `give ${wanted}, one for each layer but the last, 0 where a layer is absent`,
      );
    }
    checkStopped(layers, probe, `ground.probes[${i}].stoppedIn`, report);
  });
}

/** A probe can only have stopped in a layer that it gives a thickness of. */
function checkStopped(
  layers: Site["ground"]["layers"],
  { stoppedIn }: Site["ground"]["probes"][number],
  path: string,
  report: Report,
): void {
  if (stoppedIn === undefined) return;
  const named = layers.slice(0, -1).map(({ id }) => id);
  if (named.includes(stoppedIn)) return;
  report(
    "unknown-layer",
    path,
    `names no layer above the last: "${stoppedIn}"`,
    named.length > 0 ? `use one of: ${named.join(", ")}` : "remove it, as there is only one layer",
  );
}

function checkScheme(site: Site, scheme: Scheme, path: string, report: Report): void {
  unique(scheme.works, `${path}.works`, report);
  uniquePipes(scheme, path, report);
  unique(scheme.costs?.lines ?? [], `${path}.costs.lines`, report);
  scheme.works.forEach((work, i) => checkWork(site, work, `${path}.works[${i}]`, report));
  checkStrips(scheme, path, report);
}

function checkStrips(scheme: Scheme, path: string, report: Report): void {
  scheme.works.forEach((strip, i) => {
    if (strip.kind !== "strip" || strip.area.by !== "work") return;
    const { work: id } = strip.area;
    const place = `${path}.works[${i}].area.work`;
    const under = scheme.works.find((work) => work.id === id);
    if (under === undefined) {
      const mend = "use the id of a pad, tank, building or bed, or give the strip an outline";
      report("unknown-id", place, `no work of this scheme is called "${id}"`, mend);
    } else if (areaOutline(under) === null) {
      const text = `"${id}" is a ${under.kind}, which has no area to strip`;
      const mend = "name a pad, tank, building or bed, or give the strip an outline";
      report("bad-shape", place, text, mend);
    }
  });
}

/** Pipe ids are unique in a scheme, whichever trench they lie in. */
function uniquePipes(scheme: Scheme, path: string, report: Report): void {
  const seen = new Set<string>();
  scheme.works.forEach((work, i) => {
    if (work.kind !== "trench") return;
    work.pipes.forEach(({ id }, k) => {
      const place = `${path}.works[${i}].pipes[${k}].id`;
      if (seen.has(id)) report("duplicate-id", place, `"${id}" is used twice`, "rename one");
      seen.add(id);
    });
  });
}

function checkWork(site: Site, work: Work, path: string, report: Report): void {
  const material = (id: string, at: string, native = false): void =>
    checkMaterial(site, id, `${path}.${at}`, native, report);
  switch (work.kind) {
    case "tank":
      checkSides(work.walls, 4, "front, right, back and left", path, report);
      material(work.bedding.material, "bedding.material");
      material(work.backfill, "backfill", true);
      return;
    case "pad":
      checkPad(work, path, report);
      if (work.course) material(work.course.material, "course.material");
      material(work.fill, "fill", true);
      return;
    case "trench":
      checkTrench(work, path, report);
      checkSides(work.walls, 2, "left and right", path, report);
      material(work.bedding.material, "bedding.material");
      material(work.zone.material, "zone.material", true);
      material(work.backfill, "backfill", true);
      return;
    case "bed":
      work.filling.forEach(({ material: id }, i) => material(id, `filling[${i}].material`));
      if (2 * work.wall >= Math.min(work.length, work.width)) {
        report("bad-shape", `${path}.wall`, "leaves no room inside the bed", "make it thinner");
      }
      return;
    case "building":
      checkOutline(work.outline, `${path}.outline`, report);
      return;
    case "pile":
      material(work.material, "material", true);
      return;
    case "strip":
      if (work.area.by === "outline") {
        checkOutline(work.area.outline, `${path}.area.outline`, report);
      }
  }
}

function checkSides(
  walls: Walls,
  wanted: number,
  which: string,
  path: string,
  report: Report,
): void {
  if (walls.by !== "run" || walls.sides === undefined || walls.sides.length === wanted) return;
  const text = `has ${walls.sides.length} values for ${wanted} sides`;
  report("wrong-count", `${path}.walls.sides`, text, `give ${wanted}: ${which}`);
}

/**
 * A pad's outlines are simple and its walls' own slopes fit them. Those of `sides` hold for every
 * level, side by side in the order written, so each level's outline then needs as many corners.
 */
function checkPad(pad: Work & { kind: "pad" }, path: string, report: Report): void {
  checkOutline(pad.outline, `${path}.outline`, report);
  const corners = pad.outline.length;
  checkSides(pad.walls, corners, "one for each side of the outline", path, report);
  const ownSides = pad.walls.by === "run" && pad.walls.sides !== undefined;
  pad.levels?.forEach((level, i) => {
    const place = `${path}.levels[${i}].outline`;
    checkOutline(level.outline, place, report);
    if (ownSides && level.outline.length !== corners) {
      const text = `has ${level.outline.length} corners, and the pad has ${corners}, each side with its own wall slope`;
      const mend =
        "give every level as many corners, in the same order, or one slope for all sides";
      report("wrong-count", place, text, mend);
    }
  });
}

function checkTrench(work: Work & { kind: "trench" }, path: string, report: Report): void {
  const length = work.path.reduce((sum, [x, y], i) => {
    const [px, py] = work.path[Math.max(0, i - 1)]!;
    return sum + Math.hypot(x - px, y - py);
  }, 0);
  if (length < 1e-6) {
    report("bad-shape", `${path}.path`, "has no length", "give two places apart from each other");
  }
  work.pipes.forEach((pipe, i) => {
    if (pipe.inside >= pipe.outside) {
      report(
        "bad-shape",
        `${path}.pipes[${i}].inside`,
        `is ${pipe.inside}, not less than the outside ${pipe.outside}`,
        "give the inside and outside diameters in metres",
      );
    }
  });
}

function checkOutline(outline: readonly PlanPoint[], path: string, report: Report): void {
  const wrong = outlineProblem(outline);
  if (wrong) report("bad-shape", path, wrong, "give the corners in order around the outside");
}

function checkMaterial(
  site: Site,
  id: string,
  path: string,
  native: boolean,
  report: Report,
): void {
  if (native && id === NATIVE) return;
  if (materialsOf(site).has(id)) return;
  report(
    "unknown-id",
    path,
    `no material is called "${id}"`,
    "use a material of the catalogue or add it under materials",
  );
}
