/**
 * Topsoil taken off first, works in it, and topsoil put back at the end, against brute force. In the
 * contract's words: a strip takes the top layer, or a depth, off its area; each later work finds the
 * ground so; at the very end the earth (bank × compacted) is spread evenly on what is bare within
 * the area, as deep as asked or as it goes. Bare is what no pad, building or bed covers in plan, and
 * where no tank stands out of the ground.
 *
 * Error of the midpoint rule on squares of side h = 0.06 m: only squares that an edge meets are not
 * exact, and edges are turned by 0.25 to 1.3 rad from the grid, so that their errors come at random.
 * A strip 0.3 m deep errs by some 0.3·h·√(L·h)/3 = 0.01 m³ for L = 60 m. Bound used: 0.1 % of
 * what is compared + 0.02 m³.
 */
import { describe, expect, it } from "vitest";
import type { Building, Strip } from "../../src/site/index.js";
import { dug, pad, run, tank, total } from "../fixtures/site.js";
import {
  beyondSides,
  compare,
  depthsAbove,
  holds,
  midpoints,
  turnedBox,
  undulating,
  type Place,
} from "./undulating.js";

const [SHARE, LEAST] = [0.001, 0.02];
const COMPACTED = 0.9;

describe("topsoil stripped and put back", () => {
  it.each(Array.from({ length: 10 }, (_, i) => 84_000 + i))("seed %d", (seed) => {
    const ground = undulating(seed);
    const { between, pick } = ground.random;
    const [at, angle]: [Place, number] = [[between(-3, 3), between(-3, 3)], between(0.25, 1.3)];
    const area = turnedBox(at, angle, [-8, -5, 7, 5]);
    const beyond = between(0.5, 2);
    const overPad = pick([false, false, true]);
    const depth = pick([null, 0.2, 0.5]);
    const back = pick([0.08, 0.15, 0.6]);
    const strip: Strip = {
      kind: "strip",
      id: "strip",
      name: "Strip",
      area: overPad ? { by: "work", work: "pad", beyond } : { by: "outline", outline: area },
      putBack: { depth: back },
      ...(depth === null ? {} : { depth }),
    };
    const outline = turnedBox(at, angle, [-4, -7, 0, 1]);
    const middle = ground.topsAt(...at)[0]!;
    const top = middle - between(0.3, 0.8);
    const built = turnedBox(at, angle, [2, 2, 5, 6]);
    const building: Building = {
      kind: "building",
      id: "shed",
      name: "Shed",
      outline: built,
      base: middle,
      height: 3,
    };
    const tankAt = turnedBox(at, angle, [4, -2, 6, 0])[0]!;
    const lid = ground.topsAt(...tankAt)[0]! + pick([-1.5, -0.2, 1]);
    const body = { length: 2.4, width: 1.4, height: 1.6 };
    const bearing = 90 - (angle * 180) / Math.PI;
    const set = tank({ at: tankAt, bearing, base: lid - body.height, body });
    const works = [strip, pad({ outline, top, walls: run(0.75), fillRun: 2 }), set, building];

    const away = overPad ? beyond : 0;
    const edge = overPad ? outline : area;
    const stripped = (x: number, y: number): boolean =>
      beyondSides(edge, x, y).every((far) => far <= away);
    const [hl, hw] = [body.length / 2, body.width / 2];
    const shell = turnedBox(tankAt, angle, [-hl, -hw, hl, hw]);
    const hole = turnedBox(tankAt, angle, [-hl - 0.3, -hw - 0.3, hl + 0.3, hw + 0.3]);
    const pit = lid - body.height - 0.15;
    const count = ground.layers.length;
    const sums = midpoints(at, 15, 0.06, (x, y) => {
      const tops = ground.topsAt(x, y);
      const within = stripped(x, y);
      const bared = within ? (depth === null ? tops[1]! : tops[0]! - depth) : tops[0]!;
      const left = tops.map((z) => Math.min(z, bared));
      const far = Math.max(0, ...beyondSides(outline, x, y));
      const dugTo = Math.min(bared, top + far / 0.75);
      const filled = Math.max(0, top - far / 2 - dugTo);
      const inHole = holds(hole, x, y);
      const under = Math.max(dugTo, top - far / 2);
      const covered =
        holds(outline, x, y) || holds(built, x, y) || (holds(shell, x, y) && lid > under);
      return [
        ...depthsAbove(tops, bared),
        ...depthsAbove(left, top + far / 0.75),
        filled,
        inHole ? Math.max(0, under - pit) : 0,
        within && !covered ? 1 : 0,
      ];
    });
    const { work, result } = dug(ground.site(works));
    const taken = sums.slice(0, count).reduce((sum, volume) => sum + volume, 0);
    const bare = sums[2 * count + 2]!;
    const spread = Math.min(back * bare, COMPACTED * taken);
    const [strips, pads] = [work("strip"), work("pad")];
    const moved = total(pads.cut) + total(pads.fill);
    const { topsoil } = result.earth;
    const { faults } = compare(
      [
        ...ground.layers.flatMap((id, i) => [
          { what: `strip ${id}`, got: strips.cut[id] ?? 0, wanted: sums[i]!, size: taken },
          { what: `pad ${id}`, got: pads.cut[id] ?? 0, wanted: sums[count + i]!, size: moved },
        ]),
        { what: "pad fill", got: total(pads.fill), wanted: sums[2 * count]!, size: moved },
        { what: "tank", got: total(work("tank").cut), wanted: sums[2 * count + 1]!, size: 20 },
        { what: "put back", got: total(strips.fill), wanted: spread, size: spread },
        { what: "stripped", got: topsoil?.stripped ?? 0, wanted: taken, size: taken },
        {
          what: "left",
          got: topsoil?.leftLoose ?? -1,
          wanted: 1.25 * (taken - spread / COMPACTED),
          size: taken,
        },
      ],
      SHARE,
      LEAST,
    );
    expect(taken).toBeGreaterThan(1);
    expect(spread).toBeGreaterThan(1);
    expect(faults).toEqual([]);
    const thin = result.findings.some(({ code }) => code === "strip.thin");
    expect(thin).toBe(back * bare > COMPACTED * taken);
  });
});
