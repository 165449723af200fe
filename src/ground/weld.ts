/** Survey points that share a place made one vertex, and vertices sorted along a Hilbert curve. */
import type { Finding, SurveyPoint } from "../site/index.js";
import { frameOf, keysOf, orderOf, type Frame } from "./hilbert.js";
import { PlaceGrid } from "./placeGrid.js";
import type { Places } from "./places.js";

/** Places that are all further apart than the reach, sorted along a Hilbert curve. */
export interface WeldedPlaces extends Places {
  /** The square that holds them all. */
  frame: Frame;
  /** Number of the survey point at each vertex. */
  points: Uint32Array;
  /** Number of the vertex of each survey point, also of points that were welded away. */
  vertices: Uint32Array;
  findings: Finding[];
}

/**
 * One vertex for each place: a point within `reach` (m) in plan of an earlier one that was kept is
 * dropped, and a finding says so. Sorts the places given in place, to spare the memory.
 */
export function weldPlaces(
  points: readonly SurveyPoint[],
  places: Places,
  reach: number,
): WeldedPlaces {
  const frame = frameOf(places.x, places.y);
  const { keptAs, findings } = weld(points, places, frame, reach);
  const order = without(orderOf(keysOf(frame, places.x, places.y)), keptAs, findings.length);
  const count = order.length;
  const vertices = new Uint32Array(keptAs.length);
  for (let vertex = 0; vertex < count; vertex++) vertices[order[vertex]!] = vertex;
  for (let i = 0; i < keptAs.length; i++) vertices[i] = vertices[keptAs[i]!]!;
  const spare = new Float64Array(count);
  for (const values of [places.x, places.y, places.z]) reorder(values, order, spare);
  const [x, y, z] = [places.x, places.y, places.z].map((values) => values.subarray(0, count)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  return { origin: places.origin, frame, x, y, z, points: order, vertices, findings };
}

/** For each point the number of the point that stands for its place, itself if it is the first. */
function weld(
  points: readonly SurveyPoint[],
  { x, y, z }: Places,
  frame: Frame,
  reach: number,
): { keptAs: Uint32Array; findings: Finding[] } {
  const keptAs = new Uint32Array(x.length);
  const findings: Finding[] = [];
  const grid = new PlaceGrid(x, y, frame, reach, x.length);
  for (let i = 0; i < keptAs.length; i++) {
    const first = grid.near(x[i]!, y[i]!);
    if (first < 0) {
      keptAs[i] = i;
      grid.add(i);
    } else {
      keptAs[i] = first;
      findings.push(weldFinding(points[first]!, points[i]!, reach, Math.abs(z[i]! - z[first]!)));
    }
  }
  return { keptAs, findings };
}

/** Brings the values with some numbers to the front, in the order of the numbers. */
function reorder(values: Float64Array, numbers: Uint32Array, spare: Float64Array): void {
  for (let i = 0; i < numbers.length; i++) spare[i] = values[numbers[i]!]!;
  values.set(spare);
}

/** The numbers that are kept as themselves, in the order given. */
function without(numbers: Uint32Array, keptAs: Uint32Array, dropped: number): Uint32Array {
  if (dropped === 0) return numbers;
  const kept = new Uint32Array(numbers.length - dropped);
  for (let i = 0, next = 0; i < numbers.length; i++) {
    const number = numbers[i]!;
    if (keptAs[number] === number) kept[next++] = number;
  }
  return kept;
}

function weldFinding(first: SurveyPoint, late: SurveyPoint, reach: number, gap: number): Finding {
  const differs = gap > 0.02;
  return {
    level: differs ? "caution" : "note",
    code: differs ? "survey.two-heights" : "survey.welded",
    where: late.id,
    at: [late.x, late.y],
    text: differs
      ? `Survey points ${first.id} and ${late.id} are at one place but ${gap.toFixed(2)} m apart in height; ${first.id} is used. Check which is right.`
      : `Survey point ${late.id} is at the place of ${first.id} and is counted once.`,
    source: `geometry: points within ${Number((1000 * reach).toPrecision(3))} mm in plan are one point`,
  };
}
