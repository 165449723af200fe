/** What a tank's place asks for: risers under deep ground, a soft bed on rock. */
import type { WorkQuantities } from "../dig/index.js";
import type { Wording } from "../flow/index.js";
import { materialsOf, ruleOf } from "../site/index.js";
import type { Finding, PlanPoint, Site, Tank } from "../site/index.js";

/** m: less than this is finer than a hole is dug. */
const SLACK = 0.005;

interface Around {
  site: Site;
  words: Wording;
  /** Ground over a place once the job is done, m; NaN where it is not known. */
  groundAt: (place: PlanPoint) => number;
}

/** Findings of a tank where the site shows them; none where nothing is dug for it. */
export function checkTank(tank: Tank, hole: WorkQuantities | undefined, around: Around): Finding[] {
  return [...deepLids(tank, around), ...onRock(tank, hole, around)];
}

function deepLids(tank: Tank, { site, words, groundAt }: Around): Finding[] {
  const rule = ruleOf(site, "riser-from");
  const cover = groundAt(tank.at) - tank.base - tank.body.height;
  if (!(cover > rule.value + SLACK)) return [];
  return [
    {
      level: "note",
      code: "tank.riser",
      where: tank.id,
      text: `The top of ${tank.name} lies ${words.length(cover)} below the ground; from ${words.length(rule.value)} its lids are brought up with risers, closed and fastened. Ask the maker how much ground the tank may carry.`,
      source: `${rule.source}; depth over the tank's middle by geometry`,
    },
  ];
}

const SOFT = /sand|pea/;

function onRock(tank: Tank, hole: WorkQuantities | undefined, { site, words }: Around): Finding[] {
  const met = materialsOf(site).get(hole?.materialsMet.at(-1) ?? "");
  if (met?.kind !== "rock" && met?.kind !== "rippable") return [];
  const rule = ruleOf(site, "rock-bedding");
  const { depth, material } = tank.bedding;
  const isSoft = SOFT.test(material);
  if (isSoft && depth >= rule.value - SLACK) return [];
  const bed = materialsOf(site).get(material)?.name.toLowerCase() ?? material;
  const has = depth > 0 ? `it is bedded on ${words.length(depth)} of ${bed}` : "it has no bedding";
  return [
    {
      level: "caution",
      code: "tank.rock-bedding",
      where: tank.id,
      text: `The hole for ${tank.name} ends in ${met.name.toLowerCase()}, and ${has}. Where the rock is jagged, ${words.length(rule.value)} of pea gravel or sand go under the tank.`,
      source: rule.source,
    },
  ];
}
