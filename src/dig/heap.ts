/** Piles: the surplus heaped at its angle of repose on the real ground. */
import {
  lowerOf,
  plane,
  elevationAt,
  type Box,
  type LayeredGround,
  type Place,
  type Surface,
} from "../ground/index.js";
import { ruleOf, type Finding, type Pile, type Site } from "../site/index.js";
import { earthVolume, length } from "../units/index.js";
import { distanceBetweenRings } from "./ringDistance.js";
import type { Heaped, WorkQuantities } from "./types.js";
import { nothingMoved, placedLayer, type Digging } from "./work.js";

/** The heap is a pyramid of this many sides about a cone, each face at the angle of repose. */
const SIDES = 24;

/** Angle of repose of loose moist earth, degrees: Nunnally, table of angles of repose, recalled. */
const REPOSE = 37;

/** A pile's quantities before its size is known: it moves nothing where it stands. */
export function standPile(ground: LayeredGround, pile: Pile): WorkQuantities {
  return nothingMoved(pile, elevationAt(ground.base.tin, pile.at[0], pile.at[1]) ?? 0);
}

/** Heaps so much loose earth (m³) on a pile, by the site's rules. All local metres. */
export function heapPile(
  digging: Digging,
  pile: Pile,
  volume: number,
  { works, site }: HeapedBeside,
): WorkQuantities {
  const { ground } = digging;
  const standing = standPile(ground, pile);
  const base = elevationAt(ground.base.tin, pile.at[0], pile.at[1]);
  if (base === null || volume <= 0) return standing;
  const shape = { at: pile.at, base, tangent: Math.tan(((pile.repose ?? REPOSE) * Math.PI) / 180) };
  const fit = settledHeap(ground, shape, volume, pile.height ?? Infinity);
  const layer = placedLayer(digging, pile.material, "backfilled");
  const surface = heapSurface(shape, fit.apex, pile.height ?? Infinity);
  ground.fill(surface, heapBox(shape, fit.apex, ground.lowest), layer);
  const heap: Heaped = {
    volume: fit.volume,
    height: Math.min(fit.apex, pile.height ?? Infinity),
    area: fit.area,
    toe: ground.placedRings(layer),
  };
  digging.findings.push(...roomFindings(pile, heap, volume, site));
  digging.findings.push(...edgeFindings(pile, heap, { works, site }));
  return { ...standing, heap };
}

/** What a heap lies beside, local, and the site whose rules and units hold. */
interface HeapedBeside {
  works: readonly WorkQuantities[];
  site: Pick<Site, "rules" | "units">;
}

interface HeapShape {
  at: Place;
  /** Ground under the middle, m. */
  base: number;
  /** Rise per run of the faces. */
  tangent: number;
}

interface Fit {
  /** Height of the pyramid's point above the ground under its middle, m; a flat top cuts it off. */
  apex: number;
  volume: number;
  area: number;
}

/**
 * The heap that holds a volume. Raising every face by dh adds about dh over the plan area that the
 * faces cover, so Newton's rule finds it in a few steps from a cone's height on level ground; the
 * answer is held between bounds known to be too little and too much.
 */
function settledHeap(ground: LayeredGround, shape: HeapShape, volume: number, height: number): Fit {
  let apex = Math.cbrt((3 * volume * shape.tangent ** 2) / Math.PI);
  let [low, high] = [0, Infinity];
  for (let step = 0; ; step++) {
    const surface = heapSurface(shape, apex, height);
    const fit = ground.measureFill(surface, heapBox(shape, apex, ground.lowest));
    if (Math.abs(fit.volume - volume) <= 1e-10 * volume || step === 30) return { apex, ...fit };
    if (fit.volume < volume) low = apex;
    else high = apex;
    const newton = fit.area > 0 ? apex + (volume - fit.volume) / fit.area : 2 * apex;
    const middle = high === Infinity ? 2 * apex : (low + high) / 2;
    const next = newton > low && newton < high ? newton : middle;
    if (next === apex || next > MOST_TIMES * Math.cbrt(volume)) return { apex, ...fit };
    apex = next;
  }
}

/** A heap whose point would stand this many times its volume's cube root high runs off the survey. */
const MOST_TIMES = 8;

function heapSurface({ at, base, tangent }: HeapShape, apex: number, height: number): Surface {
  const faces: Surface[] = [];
  for (let k = 0; k < SIDES; k++) {
    const angle = (2 * Math.PI * k) / SIDES;
    const [a, b] = [-tangent * Math.cos(angle), -tangent * Math.sin(angle)];
    faces.push(plane(a, b, base + apex - a * at[0] - b * at[1]));
  }
  return lowerOf(height < apex ? [plane(0, 0, base + height), ...faces] : faces);
}

function heapBox({ at, base, tangent }: HeapShape, apex: number, lowest: number): Box {
  const reach = (1.01 * (base + apex - lowest)) / tangent;
  return [at[0] - reach, at[1] - reach, at[0] + reach, at[1] + reach];
}

function roomFindings(
  pile: Pile,
  heap: Heaped,
  volume: number,
  { units }: HeapedBeside["site"],
): Finding[] {
  if (heap.volume >= volume * (1 - 1e-6)) return [];
  return [
    {
      level: "caution",
      code: "pile.off-survey",
      where: pile.id,
      text: `${pile.name} does not hold all the surplus within the survey: ${earthVolume.print(volume - heap.volume, units)} of it find no room. Move the pile inwards, let it be higher, or add another.`,
      source: "geometry",
    },
  ];
}

/** m: nearer by less than this is the rounding of a heap's size. */
const SLACK = 0.0005;

/** Every hole that the toe lies nearer to than the pile, or else the site's rule, keeps off. */
function edgeFindings(pile: Pile, heap: Heaped, { works, site }: HeapedBeside): Finding[] {
  const rule = ruleOf(site, "spoil-back");
  const keepOff = pile.keepOff ?? rule.value;
  const print = (metres: number): string => length.print(metres, site.units);
  return works.flatMap((work): Finding[] => {
    const away = distanceBetweenRings(heap.toe, work.outlines?.daylight ?? []);
    if (work.kind === "strip" || away > keepOff - SLACK) return [];
    const lies =
      away === 0
        ? `lies over the edge of ${work.name}, where ${print(keepOff)} is kept`
        : `lies ${print(away)} from the edge of ${work.name}, nearer than ${print(keepOff)}`;
    return [
      {
        level: "caution",
        code: "pile.near-edge",
        where: pile.id,
        text: `The toe of ${pile.name} ${lies}. Move it ${print(keepOff - away)} or more away from it.`,
        source:
          pile.keepOff === undefined
            ? `${rule.source}; local rules decide`
            : `distance set for this pile; the rule: ${rule.source}`,
      },
    ];
  });
}
