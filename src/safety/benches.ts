/** Benches in the walls of a hole: where none may be, and how high each may be. */
import type { Wording } from "../flow/index.js";
import {
  layerClass,
  ruleOf,
  type Finding,
  type Site,
  type Walls,
  type Work,
} from "../site/index.js";
import type { HoleReport } from "./holes.js";
import { sourcesOf, wallClassSource } from "./wallRules.js";

/**
 * Benches by the classes that somebody has typed: type C takes none, type B only where it is
 * cohesive and each 4 ft at most, type A 4 ft at the foot and 5 ft above. Source: 29 CFR 1926
 * Subpart P, Appendix B, Figures B-1.1 to B-1.3 (second).
 */
export function checkBenches(
  work: Work,
  walls: Walls & { by: "benches" },
  hole: HoleReport,
  site: Pick<Site, "rules" | "ground">,
  words: Wording,
): Finding[] {
  const barred = hole.layers.filter((each) => noBenches(each.layer, each.class, site));
  const findings: Finding[] = [];
  if (barred.length > 0) findings.push(noneIn(work, [...new Set(barred.map((each) => each.name))]));
  const typed = hole.layers.map((each) => each.class);
  if (!typed.some((id) => id === "type-a" || id === "type-b")) return findings;
  const low = ruleOf(site, "bench-first");
  const high = typed.includes("type-b") ? low : ruleOf(site, "bench-next");
  const first = walls.first ?? walls.rise;
  // Of a flight no higher than its lowest face, the others are never dug.
  const above = hole.face > first ? walls.rise : 0;
  const over = [
    ...(first > low.value + 1e-9 ? [low] : []),
    ...(above > high.value + 1e-9 ? [high] : []),
  ];
  if (over.length === 0) return findings;
  findings.push({
    level: "caution",
    code: "walls.bench-high",
    where: work.id,
    text: `The benches of ${work.name} are ${words.length(first)} high at the foot and ${words.length(walls.rise)} above. In the soil as typed they may be ${words.length(low.value)} at the foot and ${words.length(high.value)} above, at most. Local rules and the competent person on the site decide.`,
    source: sourcesOf(over),
  });
  return findings;
}

/** Type C takes none, and type B none where it is not cohesive. Untyped soil is asked elsewhere. */
function noBenches(
  layer: string | null,
  id: HoleReport["layers"][number]["class"],
  site: Pick<Site, "ground">,
): boolean {
  if (id === "type-c") return true;
  if (id !== "type-b") return false;
  const found = site.ground.layers.find((each) => each.id === layer);
  return found?.soil?.ground === "soil" && found.soil.grain !== "cohesive";
}

function noneIn(work: Work, names: readonly string[]): Finding {
  return {
    level: "caution",
    code: "walls.no-benches",
    where: work.id,
    text: `The hole for ${work.name} is drawn with benches, and it goes through ${names.join(", ").toLowerCase()}: type C, untyped soil and type B that is not cohesive may not be benched. Slope the walls instead.`,
    source: wallClassSource(),
  };
}

/** True when somebody has typed every layer that a material of the ground stands for. */
export function isTyped(material: string, site: Pick<Site, "ground">): boolean {
  const layers = site.ground.layers.filter((each) => each.material === material);
  return layers.length > 0 && layers.every((each) => layerClass(each).id !== "untyped");
}
