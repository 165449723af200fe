/**
 * Pipes laid by cover against brute force. In the contract's words: the pipe's top outside lies
 * `depth` below the ground along the path as it was; a gravity pipe never rises on its way; the
 * floor is the lowest underside less the bedding; a path's ends are vertical; walls are planes
 * square to each leg; a bend's outside is level at the bend's own depth, mitred.
 *
 * Error. The invert is read from a table of stations every 2 mm, straight between; where the ground
 * breaks between two of them the table errs by at most a quarter of 2 mm times the break of the
 * slope, below 0.5 mm. Volumes: midpoint rule on squares of side h = 0.03 m, turned by 0.25 to
 * 1.3 rad to the path, so that errors of the squares at vertical sides, at most d·h²/2 each, come
 * at random: some d·h·√(L·h)/3 = 0.015 m³ for 1.2 m and 60 m. Bound: 0.1 % of the cut + 0.02 m³.
 */
import { describe, expect, it } from "vitest";
import { dug, pipe, run, total, trench } from "../fixtures/site.js";
import { compare, depthsAbove, midpoints, undulating, type Place } from "./undulating.js";

const [SHARE, LEAST] = [0.001, 0.02];
const STEP = 0.002;

interface Leg {
  start: Place;
  u: Place;
  station: number;
  length: number;
}

function legsOf(path: readonly Place[]): Leg[] {
  let station = 0;
  return path.slice(1).map(([qx, qy], i) => {
    const [px, py] = path[i]!;
    const length = Math.hypot(qx - px, qy - py);
    station += length;
    const u: Place = [(qx - px) / length, (qy - py) / length];
    return { start: [px, py], u, station: station - length, length };
  });
}

/** m along a leg from its start, and m to its left. */
function onLeg({ start, u }: Leg, x: number, y: number): [along: number, left: number] {
  const [dx, dy] = [x - start[0], y - start[1]];
  return [dx * u[0] + dy * u[1], u[0] * dy - u[1] * dx];
}

/** Heights every `STEP` along the path, to be read straight between. */
function tableOf(length: number, heightAt: (station: number) => number): Float64Array {
  const count = Math.ceil(length / STEP);
  return Float64Array.from({ length: count + 1 }, (_, i) => heightAt((i * length) / count));
}

function readTable(table: Float64Array, length: number, station: number): number {
  const at = Math.min(
    table.length - 1.000001,
    Math.max(0, (station / length) * (table.length - 1)),
  );
  const i = Math.floor(at);
  return table[i]! + (at - i) * (table[i + 1]! - table[i]!);
}

const spread = (values: readonly number[]): [number, number] => [
  values.reduce((a, b) => Math.min(a, b)),
  values.reduce((a, b) => Math.max(a, b)),
];

describe("a pipe by cover, in a straight or bent trench", () => {
  it.each(Array.from({ length: 18 }, (_, i) => 85_000 + i))("seed %d", (seed) => {
    const ground = undulating(seed);
    const { between, pick, whole } = ground.random;
    const start: [number, number] = [between(-9, -7), between(-6, -3)];
    const path = [start];
    let heading = between(0.25, 0.8);
    for (let i = whole(1, 2); i >= 0; i--) {
      const [px, py] = path[path.length - 1]!;
      const far = between(5, 7);
      path.push([px + far * Math.cos(heading), py + far * Math.sin(heading)]);
      heading += pick([-0.5, 0.4, 0.7]);
    }
    if (pick([true, false])) path.reverse();
    const service = pick(["gravity", "pressure", "conduit"] as const);
    const [cover, width, slope] = [between(0.5, 0.9), between(0.5, 0.8), pick([0, 0.5])];
    const [inside, outside, bed, above] = [0.1, 0.112, 0.1, 0.15];
    const wall = (outside - inside) / 2;
    const legs = legsOf(path);
    const last = legs[legs.length - 1]!;
    const length = last.station + last.length;
    const groundAlong = tableOf(length, (s) => {
      const leg = legs.find(({ station, length: long }) => s <= station + long) ?? last;
      const far = s - leg.station;
      return ground.topsAt(leg.start[0] + far * leg.u[0], leg.start[1] + far * leg.u[1])[0]!;
    });
    const inverts = groundAlong.map((z) => z - cover - wall - inside);
    if (service === "gravity") {
      for (let i = 1; i < inverts.length; i++) inverts[i] = Math.min(inverts[i]!, inverts[i - 1]!);
    }
    const invertAt = (s: number): number => readTable(inverts, length, s);

    // The lowest surface of legs and bends at a place, and the invert that it belongs to.
    const lowestAt = (x: number, y: number): [surface: number, invert: number] => {
      let found: [number, number] = [Infinity, NaN];
      const consider = (invert: number, out: number): void => {
        const floor = invert - wall - bed;
        const surface = out <= 0 ? floor : slope > 0 ? floor + out / slope : Infinity;
        if (surface < found[0]) found = [surface, invert];
      };
      legs.forEach((leg, i) => {
        const [along, left] = onLeg(leg, x, y);
        if (along >= 0 && along <= leg.length) {
          consider(invertAt(leg.station + along), Math.abs(left) - width / 2);
        }
        const before = legs[i - 1];
        if (!before || along >= 0) return;
        const [past, wasLeft] = onLeg(before, x, y);
        if (past <= before.length) return;
        const turn = before.u[0] * leg.u[1] - before.u[1] * leg.u[0];
        const outer = turn > 0 ? -1 : 1;
        consider(invertAt(leg.station), Math.max(outer * left, outer * wasLeft) - width / 2);
      });
      return found;
    };
    const middle = path[Math.floor(path.length / 2)]!;
    const count = ground.layers.length;
    const sums = midpoints(middle, 16, 0.03, (x, y) => {
      const [surface, invert] = lowestAt(x, y);
      if (surface === Infinity) return [];
      const tops = ground.topsAt(x, y);
      if (surface >= tops[0]!) return [];
      const bedded = Math.min(tops[0]!, Math.max(surface, invert - wall));
      const zoned = Math.min(tops[0]!, Math.max(bedded, invert + inside + wall + above));
      const put = [bedded - surface, zoned - bedded, tops[0]! - zoned];
      return [...depthsAbove(tops, surface), ...put];
    });
    const work = trench({
      path,
      width,
      walls: run(slope),
      bedding: { depth: bed, material: "crushed-gravel" },
      zone: { above, material: "pea-gravel" },
      pipes: [pipe({ service, inside, outside, grade: { by: "cover", depth: cover } })],
    });
    const { work: found, result } = dug(ground.site([work]));
    const { cut, fill, displaced } = found();
    const laid = result.pipes[0]!;
    const size = total(cut);
    const step = length / (inverts.length - 1);
    let slant = 0;
    for (let i = 1; i < inverts.length; i++)
      slant += Math.hypot(step, inverts[i]! - inverts[i - 1]!);
    const { faults } = compare(
      [
        ...ground.layers.map((id, i) => {
          return { what: `cut ${id}`, got: cut[id] ?? 0, wanted: sums[i]!, size };
        }),
        { what: "bedding", got: fill["crushed-gravel"]!, wanted: sums[count]!, size },
        { what: "zone", got: fill["pea-gravel"]! + displaced, wanted: sums[count + 1]!, size },
        { what: "backfill", got: fill["native"]!, wanted: sums[count + 2]!, size },
      ],
      SHARE,
      LEAST,
    );
    const pipeVolume = (Math.PI / 4) * outside ** 2 * slant;
    const covers = [...inverts].map((invert, i) => groundAlong[i]! - invert - inside - wall);
    const [least, most] = spread(covers);
    expect(faults).toEqual([]);
    expect(size).toBeGreaterThan(3);
    expect(Math.abs(displaced / pipeVolume - 1)).toBeLessThan(1e-4);
    expect(Math.abs(laid.length - length)).toBeLessThan(1e-9);
    // The lowest ground may lie between two stations of the table.
    expect(Math.abs(laid.drop - (inverts[0]! - inverts[inverts.length - 1]!))).toBeLessThan(5e-4);
    expect(Math.abs(laid.cover.least - least)).toBeLessThan(5e-4);
    expect(Math.abs(laid.cover.most - most)).toBeLessThan(5e-4);
  });
});
