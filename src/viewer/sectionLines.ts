/** Where the ground may be cut open: through each hole, and along each leg of a trench. */
import { workOutline } from "../estimate/index.js";
import type { PlanPoint, Scheme, Site, Work } from "../site/index.js";
import { words } from "../words/index.js";

export type Line = readonly [PlanPoint, PlanPoint];

export interface NamedLine {
  /** Stable, such as "tank-1 along". */
  id: string;
  name: string;
  line: Line;
}

/** m shown of the ground beyond what is cut through, as a share of its length; at least 6 m, for the sides of a hole. */
const BEYOND = 0.5;
const LEAST_BEYOND = 6;
/** m under which a leg is too short to be looked at alone. */
const SHORTEST_LEG = 1;

const says = words.viewer.section;

/** Lines that are worth a section, the first hole first; never empty. */
export function sectionLines(site: Site, scheme: Scheme): NamedLine[] {
  const lines = scheme.works.filter((work) => work.hidden !== true).flatMap(linesOf);
  return [...lines, { id: "lot", name: says.lot, line: acrossLot(site) }];
}

function linesOf(work: Work): NamedLine[] {
  if (work.kind === "trench") return legsOf(work);
  if (work.kind === "strip" || work.kind === "pile" || work.kind === "building") return [];
  const outline = workOutline(work);
  if (outline === null) return [];
  const [along, across] = axesOf(outline);
  return [
    { id: `${work.id} along`, name: says.along(work.name), line: along },
    { id: `${work.id} across`, name: says.across(work.name), line: across },
  ];
}

function legsOf({ id, name, path }: Extract<Work, { kind: "trench" }>): NamedLine[] {
  const legs = path.slice(1).map((to, i): Line => [path[i]!, to]);
  const long = legs.filter(([a, b]) => Math.hypot(b[0] - a[0], b[1] - a[1]) >= SHORTEST_LEG);
  return long.map((line, i) => ({
    id: `${id} ${i + 1}`,
    name: long.length === 1 ? says.along(name) : says.leg(name, i + 1),
    line: lengthened(line, 1),
  }));
}

/** Lines along and across an outline's longest side, through its middle. */
function axesOf(outline: readonly PlanPoint[]): [Line, Line] {
  const sides = outline.map((from, i) => {
    const to = outline[(i + 1) % outline.length]!;
    return [to[0] - from[0], to[1] - from[1]] as const;
  });
  const [dx, dy] = sides.reduce((a, b) => (Math.hypot(...b) > Math.hypot(...a) ? b : a));
  const far = Math.hypot(dx, dy) || 1;
  const way: PlanPoint = [dx / far, dy / far];
  return [throughMiddle(outline, way), throughMiddle(outline, [-way[1], way[0]])];
}

/** The line in a direction through the middle of what the outline reaches, with ground beyond. */
function throughMiddle(outline: readonly PlanPoint[], [ux, uy]: PlanPoint): Line {
  const along = outline.map(([x, y]) => x * ux + y * uy);
  const aside = outline.map(([x, y]) => y * ux - x * uy);
  const [low, high] = [Math.min(...along), Math.max(...along)];
  const off = (Math.min(...aside) + Math.max(...aside)) / 2;
  const at = (s: number): PlanPoint => [s * ux - off * uy, s * uy + off * ux];
  return lengthened([at(low), at(high)], Math.max(LEAST_BEYOND, BEYOND * (high - low)));
}

/** A line drawn out by m at both ends. */
function lengthened([a, b]: Line, by: number): Line {
  const far = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  const [ux, uy] = [(by * (b[0] - a[0])) / far, (by * (b[1] - a[1])) / far];
  return [
    [a[0] - ux, a[1] - uy],
    [b[0] + ux, b[1] + uy],
  ];
}

function acrossLot({ survey }: Site): Line {
  const xs = survey.points.map(({ x }) => x);
  const ys = survey.points.map(({ y }) => y);
  const span = (values: readonly number[]): [number, number] => [
    values.reduce((a, b) => Math.min(a, b)),
    values.reduce((a, b) => Math.max(a, b)),
  ];
  const [west, east] = span(xs);
  const [south, north] = span(ys);
  const middle = (south + north) / 2;
  return [
    [west, middle],
    [east, middle],
  ];
}
