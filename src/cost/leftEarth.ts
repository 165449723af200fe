/** Earth that is bought while the job's own is left over, and why. */
import type { DigResult } from "../dig/index.js";
import { knownMaterial } from "../machines/index.js";
import { NATIVE } from "../site/index.js";
import type { Finding, Material, Scheme } from "../site/index.js";
import { earthVolume } from "../units/index.js";
import type { UnitSystem } from "../units/index.js";
import { boughtMaterials, SHORTFALL_MATERIAL } from "./loads.js";
import type { Bought } from "./loads.js";

/** m³ in the bank of one material that nobody would carry about. */
export const LEAST_LEFT = 0.1;
/** m³ bought, and left over, from which it is worth saying. */
const WORTH_SAYING = 0.5;

const TYPICAL = "share that is fit to go back: typical, no source, else as entered";

type Print = (volume: number) => string;

/**
 * Notes on fill and earth that comes in while the job's own is left over: where own earth runs short,
 * how much of which is left and why; where a work asks for fill or topsoil, what of its own would do.
 * Aggregates are graded or washed, which nothing dug is, so they are left alone.
 */
export function leftEarthFindings(
  scheme: Scheme,
  dig: DigResult,
  materials: ReadonlyMap<string, Material>,
  units: UnitSystem,
): Finding[] {
  const print: Print = (volume) => earthVolume.print(volume, units);
  return [
    ...shortFinding(dig, materials, print),
    ...boughtMaterials(dig).flatMap((bought) => ownWouldDo(bought, scheme, dig, materials, print)),
  ];
}

function shortFinding(
  { earth }: DigResult,
  materials: ReadonlyMap<string, Material>,
  print: Print,
): Finding[] {
  const rows = Object.entries(earth.left)
    .filter(([id, bank]) => id !== NATIVE && bank > LEAST_LEFT)
    .map(([id, bank]) => ({ bank, ...pick(knownMaterial(id, materials)) }));
  const left = rows.reduce((sum, { bank }) => sum + bank, 0);
  if (earth.importCompacted < WORTH_SAYING || left < WORTH_SAYING) return [];
  const each = rows.map(
    ({ name, bank, reusable }) =>
      `${name} ${print(bank)} (${reusable === 0 ? "none" : `${Math.round(100 * reusable)}%`} taken as fit)`,
  );
  const text = `${print(earth.importCompacted)} of fill, in place, has to come in while ${print(left)} of the job's own earth, as it lay, is left over: ${each.join(", ")}. All that is taken as fit goes back first. Where more of it is fit on the day, less comes in.`;
  return [{ level: "note", code: "earth.fill-beside-left", where: "site", text, source: TYPICAL }];
}

const pick = ({ name, reusable }: Material): { name: string; reusable: number } => ({
  name: name.toLowerCase(),
  reusable,
});

/** Fill or earth that a work asks for by name, where own earth of that kind is left over. */
function ownWouldDo(
  { material: id, placed, where }: Bought,
  { works }: Scheme,
  dig: DigResult,
  materials: ReadonlyMap<string, Material>,
  print: Print,
): Finding[] {
  const material = knownMaterial(id, materials);
  const isFill = id === SHORTFALL_MATERIAL;
  const left = isFill ? fitLeft(dig, materials) : (dig.earth.left[id] ?? 0);
  if (material.kind === "aggregate" || placed < WORTH_SAYING || left < WORTH_SAYING) return [];
  const names = where.map((work) => works.find((each) => each.id === work)?.name ?? work);
  const name = material.name.toLowerCase();
  const own = isFill ? "own earth that is fit to go back" : `own ${name}`;
  const way = isFill
    ? "Let the site's own earth fill it, if your plan allows."
    : "Kept apart as it is dug it may do, if your plan asks for no better; it is not counted in, since it comes up mixed where nobody keeps it apart.";
  const text = `${print(placed)} of ${name}, in place, is bought for ${names.join(", ")} while ${print(left)} of the job's ${own}, as it lay, is left over. ${way}`;
  return [
    {
      level: "note",
      code: "earth.own-would-do",
      where: where[0] ?? "site",
      text,
      source: isFill ? TYPICAL : "common practice, no source",
    },
  ];
}

/** m³ in the bank of what is left over and taken as fit: all that is left but the unfit share. */
function fitLeft({ cut, earth }: DigResult, materials: ReadonlyMap<string, Material>): number {
  return Object.entries(earth.left).reduce((sum, [id, bank]) => {
    if (id === NATIVE) return sum + bank;
    const unfit = (cut[id] ?? 0) * (1 - knownMaterial(id, materials).reusable);
    return sum + Math.max(0, bank - unfit);
  }, 0);
}
