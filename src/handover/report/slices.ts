/**
 * A volume that can be done again with a pencil: parallel sections across a work, each in the middle of
 * its slice, and their areas of cut times the slices' thickness. By Cavalieri's principle the volume is
 * the integral of the area along any line, however the work lies; sections in the middle of slices, not
 * at their ends, keep clear of upright end walls, where the area jumps.
 */
import { estimate, pathLength, schemeOf, sectionAlong } from "../../estimate/index.js";
import type { Section } from "../../estimate/index.js";
import type { PlanPoint, Site } from "../../site/index.js";

/** One section: m along the line from where it begins, and m² of cut. */
export interface Slice {
  station: number;
  area: number;
}

/** The sections of one work, and what comes of them. */
export interface Sliced {
  work: string;
  name: string;
  /** Where the line of sections begins (site, m), and its bearing in degrees; null along a path. */
  from: PlanPoint;
  bearing: number | null;
  /** m, thickness of a slice: sections are as far apart. */
  interval: number;
  slices: readonly Slice[];
  /** m³ by the sections, and by the estimate of this work alone. */
  volume: number;
  exact: number;
}

const SLICES = 20;

const sum = (volumes: Readonly<Record<string, number>>): number =>
  Object.values(volumes).reduce((total, volume) => total + volume, 0);

/** Ground as nature left it that a section still shows. */
function natural({ areas }: Section): number {
  return areas.reduce((total, { kind, area }) => total + (kind === "natural" ? area : 0), 0);
}

/** Unit vectors along the longest way of places, and square to it. */
function axesOf(places: readonly PlanPoint[]): { along: PlanPoint; across: PlanPoint } {
  const n = places.length;
  const mx = places.reduce((total, [x]) => total + x, 0) / n;
  const my = places.reduce((total, [, y]) => total + y, 0) / n;
  const second = (f: (x: number, y: number) => number): number =>
    places.reduce((total, [x, y]) => total + f(x - mx, y - my), 0);
  const turn =
    Math.atan2(2 * second((x, y) => x * y), second((x) => x * x) - second((_x, y) => y * y)) / 2;
  const along: PlanPoint = [Math.cos(turn), Math.sin(turn)];
  return { along, across: [-along[1], along[0]] };
}

/** The site with one work of a scheme alone. */
function withOnly(site: Site, schemeId: string, work: string): Site {
  return {
    ...site,
    schemes: site.schemes.map((scheme) =>
      scheme.id === schemeId
        ? { ...scheme, works: scheme.works.filter(({ id }) => id === work) }
        : scheme,
    ),
  };
}

/** A line that sections stand square to: straight, or the path of a trench. */
interface SliceLine {
  from: PlanPoint;
  /** Degrees; null along a path with bends. */
  bearing: number | null;
  length: number;
  /** The two ends of the section at a station. */
  across: (station: number) => readonly [PlanPoint, PlanPoint];
}

const toBearing = ([east, north]: PlanPoint): number =>
  ((((Math.atan2(east, north) * 180) / Math.PI) % 360) + 360) % 360;

/** m beyond what a work opens that a section reaches. */
const BEYOND = 0.5;

/** Along the longest way of the places that a work opens. */
function straightLine(places: readonly PlanPoint[]): SliceLine {
  const { along, across } = axesOf(places);
  const at = (axis: PlanPoint): number[] => places.map(([x, y]) => x * axis[0] + y * axis[1]);
  const [first, last] = [Math.min(...at(along)), Math.max(...at(along))];
  const [left, right] = [Math.min(...at(across)) - BEYOND, Math.max(...at(across)) + BEYOND];
  const place = (s: number, t: number): PlanPoint => [
    along[0] * s + across[0] * t,
    along[1] * s + across[1] * t,
  ];
  return {
    from: place(first, (left + right) / 2),
    bearing: toBearing(along),
    length: last - first,
    across: (station) => [place(first + station, left), place(first + station, right)],
  };
}

/**
 * Along a trench's path: what a bend has too much inside it lacks outside, so that area times length
 * along the path holds there as well (theorem of Pappus, for walls alike on both sides).
 */
function pathLine(path: readonly PlanPoint[], places: readonly PlanPoint[]): SliceLine {
  const reach = BEYOND + Math.max(...places.map((place) => toPath(path, place)));
  return {
    from: path[0] ?? [0, 0],
    bearing: null,
    length: pathLength(path),
    across: (station) => {
      let left = station;
      const last = path.length - 2;
      const leg = path.slice(1).findIndex((to, i) => {
        const size = apart(path[i]!, to);
        if (left <= size || i === last) return true;
        left -= size;
        return false;
      });
      const [a, b] = [path[leg]!, path[leg + 1]!];
      const size = apart(a, b);
      const [ux, uy] = [(b[0] - a[0]) / size, (b[1] - a[1]) / size];
      const [x, y] = [a[0] + ux * left, a[1] + uy * left];
      return [
        [x - uy * reach, y + ux * reach],
        [x + uy * reach, y - ux * reach],
      ];
    },
  };
}

const apart = (a: PlanPoint, b: PlanPoint): number => Math.hypot(b[0] - a[0], b[1] - a[1]);

/** m from a place to the nearest leg of a path. */
function toPath(path: readonly PlanPoint[], [x, y]: PlanPoint): number {
  return path.slice(1).reduce((least, b, i) => {
    const a = path[i]!;
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const square = dx * dx + dy * dy;
    const share = square === 0 ? 0 : ((x - a[0]) * dx + (y - a[1]) * dy) / square;
    const t = Math.min(1, Math.max(0, share));
    return Math.min(least, Math.hypot(x - a[0] - t * dx, y - a[1] - t * dy));
  }, Infinity);
}

/** The volume of a work's cut by sections; null for a work that digs nothing. Throws like `estimate`. */
export function slicesOf(site: Site, schemeId: string, work: string): Sliced | null {
  const alone = withOnly(site, schemeId, work);
  const [made] = estimate(alone, schemeId).works;
  const places = (made?.outlines?.daylight ?? []).flat().map(([x, y]): PlanPoint => [x, y]);
  const exact = made === undefined ? 0 : sum(made.cut);
  if (made === undefined || places.length < 3 || exact <= 0) return null;
  const drawn = schemeOf(alone, schemeId).works[0];
  const line =
    drawn?.kind === "trench" && drawn.path.length > 2
      ? pathLine(drawn.path, places)
      : straightLine(places);
  const interval = line.length / SLICES;
  const areaAt = (station: number): number => {
    const across = line.across(station);
    const dug = sectionAlong(alone, schemeId, "dug", across);
    const found = sectionAlong(alone, schemeId, "found", across, dug.datum);
    return Math.max(0, natural(found) - natural(dug));
  };
  const slices = Array.from({ length: SLICES }, (_, i): Slice => {
    const station = (i + 0.5) * interval;
    return { station, area: areaAt(station) };
  });
  const volume = interval * slices.reduce((total, { area }) => total + area, 0);
  const { from, bearing } = line;
  return { work, name: made.name, from, bearing, interval, slices, volume, exact };
}
