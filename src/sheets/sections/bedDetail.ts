/** A raised bed cut across: fillings, laterals, walls and overflow as entered. */
import { boreSize, sectionAlong } from "../../estimate/index.js";
import type { Bed, Branch, PlanPoint, Scheme, Site } from "../../site/index.js";
import { elevation, length, size } from "../../units/index.js";
import { words } from "../../words/index.js";
import { nameOfMaterial } from "../earthNames.js";
import type { Mark } from "../paper.js";
import type { Callout } from "./callouts.js";
import type { DetailSpec } from "./detailSpec.js";
import type { Span } from "./dimensionRows.js";
import { PENS } from "./pens.js";
import { LEAST_PIPE } from "./sectionPipes.js";
import { spotOf, type View } from "./view.js";

/** m of ground beside the bed, and over and under all. */
const BESIDE = 0.35;
const OVER = 0.15;
const UNDER = 0.4;

/** Null where the bed stands beyond the survey. */
export function bedDetail(site: Site, scheme: Scheme, bed: Bed): DetailSpec | null {
  const angle = (bed.bearing * Math.PI) / 180;
  const across: PlanPoint = [Math.cos(angle), -Math.sin(angle)];
  const half = bed.width / 2 + BESIDE;
  const line: [PlanPoint, PlanPoint] = [
    [bed.at[0] - across[0] * half, bed.at[1] - across[1] * half],
    [bed.at[0] + across[0] * half, bed.at[1] + across[1] * half],
  ];
  const shown = sectionAlong(site, scheme.id, "backfilled", line);
  const heights = [...shown.surface, ...shown.found].flat().map(([, z]) => z);
  if (heights.length === 0) return null;
  const low = Math.min(bed.base, ...shown.surface.flat().map(([, z]) => z)) - UNDER;
  const branches = branchesOf(scheme, bed);
  const { detail } = words.sheetsSections;
  const [left, right] = [half - bed.width / 2, half + bed.width / 2];
  return {
    subject: `detail:bed:${bed.id}`,
    title: bed.name,
    said: detail.acrossBed(
      length.print(bed.length, site.units),
      length.print(bed.width, site.units),
    ),
    from: 0,
    to: shown.length,
    low,
    high: Math.max(bed.base + bed.height, ...heights) + OVER,
    finished: sectionAlong(site, scheme.id, "backfilled", line, low),
    dug: null,
    paint: (view) => branches.flatMap((branch) => lateralMarks(bed, branch, half, view)),
    callouts: calloutsOf(site, bed, branches, half),
    beside: fillingSpans(bed),
    across: [
      [
        { from: left, to: left + bed.wall, name: "" },
        { from: left + bed.wall, to: right - bed.wall, name: detail.inside },
        { from: right - bed.wall, to: right, name: "" },
      ].filter(({ from, to }) => to - from > 0.001),
      ...lateralSpans(branches, half),
    ],
  };
}

function branchesOf({ flow }: Scheme, { id }: Bed): Branch[] {
  const all = (flow?.pressure ?? []).flatMap(({ branches }) => branches);
  return all.filter(({ bed }) => bed === id);
}

/** Stations of a branch's laterals, evenly about the bed's middle. */
function lateralStations({ laterals: { count, apart } }: Branch, middle: number): number[] {
  return Array.from({ length: count }, (_, i) => middle + (i - (count - 1) / 2) * apart);
}

function lateralMarks(bed: Bed, branch: Branch, middle: number, view: View): Mark[] {
  const radius = Math.max(LEAST_PIPE / 2, (branch.laterals.inside * 500) / view.along);
  return lateralStations(branch, middle).map((station) => ({
    kind: "circle",
    at: spotOf(view, [station, bed.base + branch.height]),
    radius,
    pen: PENS.pipe,
    fill: { color: "#ffffff" },
  }));
}

/** From the first branch: what differs is told in the callouts. */
function lateralSpans(branches: readonly Branch[], middle: number): Span[][] {
  const [first] = branches;
  if (first === undefined || first.laterals.count < 2) return [];
  const stations = lateralStations(first, middle);
  const spans = stations.slice(1).map((to, i): Span => ({ from: stations[i]!, to, name: "" }));
  return [spans];
}

/** Fillings from the base up, as far as the walls reach. */
function fillingSpans({ base, height, filling }: Bed): Span[] {
  const spans: Span[] = [];
  let at = 0;
  for (const { depth } of filling) {
    const top = Math.min(at + depth, height);
    if (top - at > 0.001) spans.push({ from: base + at, to: base + top, name: "" });
    at = top;
  }
  return spans;
}

function calloutsOf(site: Site, bed: Bed, branches: readonly Branch[], half: number): Callout[] {
  const { detail } = words.sheetsSections;
  const level = (z: number): string => elevation.print(z, site.units);
  const edge = half + bed.width / 2;
  const fillings = fillingSpans(bed).map(({ from, to }, i): Callout => {
    const { material } = bed.filling[i]!;
    return { height: (from + to) / 2, from: edge - bed.wall, text: nameOfMaterial(site, material) };
  });
  const laterals = [...new Map(branches.map((each) => [lateralsSaid(site, each), each]))].map(
    ([text, branch]): Callout => ({
      height: bed.base + branch.height,
      from: Math.max(...lateralStations(branch, half)),
      text,
    }),
  );
  const callouts: Callout[] = [
    {
      height: bed.base + bed.height,
      from: edge,
      text: detail.bedTop(level(bed.base + bed.height)),
    },
    ...fillings,
    ...laterals,
    ...(bed.overflow === undefined
      ? []
      : [
          {
            height: bed.base + bed.overflow,
            from: edge,
            text: detail.overflow(level(bed.base + bed.overflow)),
          },
        ]),
    { height: bed.base, from: edge, text: detail.bedBase(level(bed.base)) },
  ];
  return callouts.sort((a, b) => b.height - a.height);
}

/** What the laterals of a branch are, from the scheme. */
function lateralsSaid({ units }: Site, { name, laterals }: Branch): string {
  const { count, inside, holes, length: long } = laterals;
  return words.sheetsSections.detail.laterals({
    name,
    count,
    inside: boreSize(inside, units),
    long: length.print(long, units),
    hole: size.print(holes.diameter, units, units === "us" ? { inchParts: 16 } : {}),
    apart: length.print(holes.apart, units),
  });
}
