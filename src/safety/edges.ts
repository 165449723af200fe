/** What stands at the edge of a hole: loads within its depth, bases that it goes under, water in it. */
import type { DigResult } from "../dig/index.js";
import { planDistance, wordingFor, type PlanShape, type Wording } from "../flow/index.js";
import {
  ruleOf,
  type Finding,
  type PlanPoint,
  type Scheme,
  type Site,
  type Work,
} from "../site/index.js";
import type { FloorLine } from "./holeFloor.js";
import type { HoleReport } from "./holes.js";
import { bodyShapes } from "./shapes.js";

/** A load that stands or drives somewhere. */
export interface EdgeLoad {
  /** Whose it is, as words: "the digger's tracks". */
  name: string;
  /** Its places in plan, m. */
  shape: PlanShape;
  /** m beyond the shape that it takes up. */
  out?: number;
  /** Holes that it is not asked about: a digger stands at the edge of what it digs. */
  except: readonly string[];
  /** Where it need not stand, so that it is only noted. */
  passing?: boolean;
}

type EdgeSite = Pick<Site, "rules" | "units">;

/**
 * Loads within so many times the depth of a hole from its edge (a setting). `holes` are those of
 * the same scheme as `dig`. Each pair of load and hole is said once. A machine that need not stand
 * there is only noted, unless it stands nearer than spoil and equipment may: 29 CFR 1926.651(j)(2).
 */
export function checkLoads(
  holes: readonly HoleReport[],
  dig: Pick<DigResult, "works">,
  loads: readonly EdgeLoad[],
  site: EdgeSite,
): Finding[] {
  const words = wordingFor(site.units);
  const rule = ruleOf(site, "surcharge-within");
  const back = ruleOf(site, "spoil-back");
  const from = ruleOf(site, "way-out-from").value - 0.0005;
  return holes.flatMap((hole) => {
    if (hole.face < from) return [];
    const near = loads.flatMap((load) => {
      if (load.except.includes(hole.work)) return [];
      const distance = Math.max(0, edgeDistance(hole.work, load.shape, dig) - (load.out ?? 0));
      return distance < rule.value * hole.face - 1e-9 ? [{ load, distance }] : [];
    });
    if (near.length === 0) return [];
    const each = near.map(({ load, distance }) =>
      distance < 0.005 ? `${load.name} (on it)` : `${load.name} (${words.distance(distance)})`,
    );
    const isAtEdge = near.some(({ distance }) => distance < back.value - 1e-9);
    const keepOff = isAtEdge
      ? ` Keep spoil and equipment at least ${words.distance(back.value)} from the edge, or held from falling in.`
      : "";
    const passes = near.every(({ load }) => load.passing === true);
    return [
      {
        level: passes && !isAtEdge ? "note" : "caution",
        code: "edge.load",
        where: hole.work,
        text: `Within ${words.distance(rule.value * hole.face)} of the edge of the hole for ${hole.name}: ${each.join(", ")}. Weight near the edge pushes on the wall while the hole is open.${keepOff} Move it back, fill the hole first, or have the walls held for it. The competent person on the site decides.`,
        source:
          isAtEdge && !rule.source.includes(back.source)
            ? `${rule.source}; ${back.source}`
            : rule.source,
      },
    ];
  });
}

/** m in plan from a shape to where a hole comes to daylight; Infinity for a work that has no edge. */
function edgeDistance(work: string, shape: PlanShape, dig: Pick<DigResult, "works">): number {
  const rings = dig.works.find(({ id }) => id === work)?.outlines?.daylight ?? [];
  return Math.min(
    Infinity,
    ...rings
      .filter((ring) => ring.length > 0)
      .map((ring) =>
        planDistance(shape, { points: ring.map(([x, y]): PlanPoint => [x, y]), closed: true }),
      ),
  );
}

/** A thing that stands on its base beside a hole. */
interface Based {
  name: string;
  base: number;
  shapes: readonly PlanShape[];
}

/** m: a trench that comes so near is the building's own drain or the tank's own pipe. */
const JOINS = 0.3;
/** m: nearer than this the two meet, as far as anyone digs. */
const AT_IT = 0.05;
const ENTERS = "Look how deep its footing goes before you dig up to it.";
const MOVE = "Move it, raise it, or ask a registered professional engineer.";

/**
 * Holes whose floor comes below the line that goes down and out from the base of a building, or of
 * a tank that is set before the hole is dug, by the floor where it is nearest. Source: 29 CFR
 * 1926.651(i)(2); the line's slope is a setting.
 */
export function checkUndermining(
  scheme: Scheme,
  holes: readonly HoleReport[],
  floors: (work: Work) => readonly FloorLine[],
  site: EdgeSite,
  words: Wording,
): Finding[] {
  const rule = ruleOf(site, "undermine-run");
  return holes.flatMap((hole) => {
    const own = scheme.works.findIndex(({ id }) => id === hole.work);
    const work = scheme.works[own];
    if (work === undefined) return [];
    const lines = floors(work);
    return standingBeside(scheme.works, own).flatMap((based): Finding[] => {
      const worst = worstUnder(work, lines, based, rule.value);
      if (worst === null) return [];
      const isDrain = work.kind === "trench" && worst.distance < JOINS;
      return [
        {
          level: isDrain ? "note" : "caution",
          code: "edge.undermines",
          where: hole.work,
          text: `The floor of the hole for ${hole.name} goes ${words.length(worst.drop)} below the base of ${based.name} and comes ${worst.distance < AT_IT ? "right up to it" : `within ${words.distance(worst.distance)} of it`} in plan. That is under the line that goes down and out ${rule.value} : 1 from the base: what stands there may lose its footing. ${isDrain ? ENTERS : MOVE}`,
          source: rule.source,
        },
      ];
    });
  });
}

/** The piece of a floor that lies farthest under the line from a base; null where none does. */
function worstUnder(
  work: Work,
  lines: readonly FloorLine[],
  based: Based,
  run: number,
): { drop: number; distance: number } | null {
  const half = work.kind === "trench" ? work.width / 2 : 0;
  let worst: { drop: number; distance: number } | null = null;
  let most = 1e-6;
  for (const { places } of lines) {
    for (let i = 1; i < places.length; i++) {
      const [a, b] = [places[i - 1]!, places[i]!];
      const drop = based.base - Math.min(a.floor, b.floor);
      if (drop <= 0) continue;
      const piece: PlanShape = { points: [a.at, b.at], closed: false };
      const distance = Math.max(0, leastDistance([piece], based.shapes) - half);
      const under = drop * run - distance;
      if (under > most) [worst, most] = [{ drop, distance }, under];
    }
  }
  return worst;
}

function standingBeside(works: readonly Work[], own: number): Based[] {
  return works.flatMap((work, i): Based[] => {
    if (i === own) return [];
    if (work.kind === "building") {
      const shapes = [{ points: work.outline, closed: true }];
      return [{ name: work.name, base: work.base, shapes }];
    }
    if (work.kind !== "tank" || i > own) return [];
    return [{ name: work.name, base: work.base, shapes: bodyShapes(work) }];
  });
}

function leastDistance(one: readonly PlanShape[], other: readonly PlanShape[]): number {
  return Math.min(Infinity, ...one.flatMap((a) => other.map((b) => planDistance(a, b))));
}

/**
 * Holes whose floor lies under water that a probe met, each; and one note of all those that the
 * highest groundwater of the year would come into, as the scheme gives it. Source: 29 CFR
 * 1926.651(h), recalled.
 */
export function checkWater(holes: readonly HoleReport[], words: Wording): Finding[] {
  const wet = holes.filter(({ water }) => water !== null && water.overFloor > 0.0005);
  const source = "29 CFR 1926.651(h), recalled";
  const met = wet.flatMap(({ work, name, water, layers }): Finding[] => {
    if (water?.met !== true) return [];
    const under = layers.filter((each) => each.submerged && each.class === "type-c");
    const names = [...new Set(under.map((each) => each.name.toLowerCase()))];
    const asC = names.length > 0 ? ` Under water ${names.join(", ")} counts as type C.` : "";
    const text = `Water was met ${words.length(water.depth)} below the ground: ${words.length(water.overFloor)} over the floor of the hole for ${name}. Nobody works in gathering water without measures against it, and someone competent watches the pumping.${asC}`;
    return [{ level: "caution", code: "water.in-hole", where: work, text, source }];
  });
  const season = wet.filter(({ water }) => water?.met === false);
  const [first] = season;
  if (first?.water === undefined || first.water === null) return met;
  const each = season.map(({ name, water }) => `${name} (${words.length(water?.overFloor ?? 0)})`);
  const text = `No probe says where water was met. With groundwater as high as the scheme gives it, ${words.length(first.water.depth)} below the ground, it would stand over the floor of these holes: ${each.join(", ")}. Dig when the ground is dry, note the water in the probes, and keep out of gathering water.`;
  return [...met, { level: "note", code: "water.season", where: first.work, text, source }];
}
