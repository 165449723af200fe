/** The ground cut open, on paper. */
import { foundLayers } from "../../estimate/index.js";
import type { Section, SectionArea } from "../../estimate/index.js";
import { materialsOf, NATIVE } from "../../site/index.js";
import type { PlanPoint, Scheme, Site } from "../../site/index.js";
import { earthFills } from "../earthFills.js";
import type { Fill, GroupMark, Mark } from "../paper.js";
import { words } from "../../words/index.js";
import { PENS } from "./pens.js";
import { boxOf, lineOf, type View } from "./view.js";

/**
 * All materials that a section of a scheme can show, in an order that does not depend on the
 * drawing: so one hatch means the same on every sheet. Layers from the top down, then what works
 * bring in building order, then what is built.
 */
export function materialsInOrder(site: Site, scheme: Scheme): string[] {
  const brought = scheme.works.flatMap((work): (string | undefined)[] => {
    switch (work.kind) {
      case "tank":
        return [work.bedding.material, work.backfill];
      case "trench":
        return [work.bedding.material, work.zone.material, work.backfill];
      case "pad":
        return [work.course?.material, work.fill];
      case "bed":
        return work.filling.map(({ material }) => material);
      case "pile":
        return [work.material];
      default:
        return [];
    }
  });
  const all = [...site.ground.layers.map(({ material }) => material), ...brought];
  const earth = all.filter((each) => each !== undefined && each !== NATIVE);
  return [...new Set([...earth, NATIVE, "tank", "wall", "building"])] as string[];
}

export function fillsOf(site: Site, scheme: Scheme): ReadonlyMap<string, Fill> {
  return earthFills(site, materialsInOrder(site, scheme));
}

/** Areas of a section with their hatches; what lies outside the view is cut off. */
export function earthMarks(
  areas: readonly SectionArea[],
  fills: ReadonlyMap<string, Fill>,
  view: View,
): GroupMark {
  const marks = areas.map((area): Mark => {
    const fill = fills.get(area.material) ?? fills.get("tank");
    return {
      kind: "path",
      lines: [area.outline, ...area.holes].map((ring) => lineOf(view, ring)),
      closed: true,
      pen: area.kind === "structure" ? PENS.built : PENS.thin,
      ...(fill && { fill }),
    };
  });
  return { kind: "group", layer: words.sheetsSections.layers.earth, clip: boxOf(view), marks };
}

/** Lines of a section's surface, as [station, elevation], on paper. */
export function surfaceMarks(
  lines: Section["surface"],
  pen: (typeof PENS)[keyof typeof PENS],
  layer: string,
  view: View,
): GroupMark {
  const marks = lines
    .filter((line) => line.length > 1)
    .map((line): Mark => ({ kind: "path", lines: [lineOf(view, line)], closed: false, pen }));
  return { kind: "group", layer, clip: boxOf(view), marks };
}

type Places = readonly (readonly [number, number])[];

/**
 * Where rock begins under the ground as found: the upper edges of what is to be ripped, and of hard
 * rock, as [station, elevation]. `before` is the station that the line's own beginning has.
 */
export function rockTops(
  site: Site,
  line: readonly PlanPoint[],
  datum: number,
  before: number,
): Places[] {
  const materials = materialsOf(site);
  return foundLayers(site, line, datum).areas.flatMap(({ material, outline, holes }) => {
    const kind = materials.get(material)?.kind;
    if (kind !== "rippable" && kind !== "rock") return [];
    return [outline, ...holes].flatMap((ring) => upperEdges(ring, before));
  });
}

/** The pieces of a ring, interior to its left, that look up. */
function upperEdges(ring: Places, before: number): Places[] {
  const pieces: (readonly [number, number])[][] = [];
  ring.forEach(([s, z], i) => {
    const [t, w] = ring[(i + 1) % ring.length]!;
    if (t - s > -1e-9) return;
    const [from, to] = [[s - before, z] as const, [t - before, w] as const];
    const last = pieces.at(-1);
    const end = last?.at(-1);
    if (last && end && Math.hypot(end[0] - from[0], end[1] - from[1]) < 1e-9) last.push(to);
    else pieces.push([from, to]);
  });
  return pieces;
}
