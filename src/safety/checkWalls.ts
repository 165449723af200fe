import type { WorkQuantities } from "../dig/index.js";
import type { Wording } from "../flow/index.js";
import { layerRun, NATIVE, ruleOf } from "../site/index.js";
import type { Finding, Layer, Locality, Material, Rule, Site, Walls, Work } from "../site/index.js";
import { wallSlope } from "../units/index.js";
import type { UnitSystem } from "../units/index.js";
import { checkBenches, isTyped } from "./benches.js";
import type { HoleReport } from "./holes.js";
import { sidesOf, type Side } from "./sides.js";
import { depthTriggers, sourcesOf, wallClassSource, wallClasses } from "./wallRules.js";

/** What a check of slopes needs to know beside the hole itself. */
export interface WallContext {
  materials: ReadonlyMap<string, Material>;
  words: Wording;
  units: UnitSystem;
  /** Whose rules hold. */
  locality: Locality;
}

/** The same for the walls of a hole that is filled again. */
export interface HoleContext extends WallContext {
  locality: Locality & Pick<Site, "ground">;
  /** What the hole's layers want; undefined where the ground beside it is not known. */
  report?: HoleReport | undefined;
}

/** A material met in a hole and the steepest run given for it. */
interface Met {
  name: string;
  run: number;
  /** The rule that the run is of, where no material gives one. */
  rule?: Rule;
  topsoil: boolean;
  /** Whether somebody has typed its soil. */
  typed: boolean;
}

/**
 * Findings on the walls of one hole, by its tallest face (the uphill one, not the centre): from the
 * depth at which walls must be protected, from the depth that asks for a way out, over the depth
 * that asks for an engineer, and walls drawn steeper than the material they stand in is given.
 */
export function checkWalls(work: Work, hole: WorkQuantities, context: HoleContext): Finding[] {
  const face = Math.max(hole.tallestFace, hole.deepest);
  const triggers = depthTriggers(context.locality);
  const findings: Finding[] = [];
  // A face within half a millimetre of the figure counts as having reached it.
  const reaches = (depth: number) => face >= depth - 0.0005;
  if (face > triggers.engineerOver.value) findings.push(needsEngineer(work, face, context));
  const wayOut = reaches(triggers.wayOutFrom.value);
  const steep = wayOut ? tooSteep(work, hole, face, context) : [];
  const isProtected = reaches(triggers.protectFrom.value);
  if (isProtected) {
    findings.push(
      isStableRock(hole, context)
        ? stableRock(work, face, context)
        : needsProtection(work, hole, { face, isSteep: steep.some(isCaution) }, context),
    );
  }
  // Beside the caution that walls of this height fall, the ladder is worth knowing.
  const level = findings.some(isCaution) ? "note" : "caution";
  if (wayOut) findings.push({ ...needsWayOut(work, face, context), level }, ...steep);
  return findings;
}

const isCaution = ({ level }: Finding): boolean => level === "caution";

function needsEngineer(work: Work, face: number, { words, locality }: HoleContext): Finding {
  const { engineerOver } = depthTriggers(locality);
  return {
    level: "stop",
    code: "walls.engineer",
    where: work.id,
    text: `The hole for ${work.name} has a face ${words.length(face)} high. Over ${words.length(engineerOver.value)} a registered professional engineer must design how its walls are held.`,
    source: engineerOver.source,
  };
}

/** True when somebody has typed all that the hole goes through as stable rock. */
function isStableRock(hole: WorkQuantities, { locality, report }: HoleContext): boolean {
  if (report === undefined || report.layers.length === 0) return false;
  const all = hole.materialsMet.every((id) => isTyped(id, locality));
  return all && report.layers.every((each) => each.class === "stable-rock");
}

function stableRock(work: Work, face: number, { words, locality }: HoleContext): Finding {
  return {
    level: "note",
    code: "walls.stable-rock",
    where: work.id,
    text: `The hole for ${work.name} has a face ${words.length(face)} high in what was typed as stable rock all the way. The rule asks for no protection there only as long as a competent person on the site finds it so; any soil over it, or a crack, and it does.`,
    source: depthTriggers(locality).protectFrom.source,
  };
}

function needsProtection(
  work: Work,
  hole: WorkQuantities,
  { face, isSteep }: { face: number; isSteep: boolean },
  context: HoleContext,
): Finding {
  const { protectFrom, stricterStates } = depthTriggers(context.locality);
  const untyped = ruleOf(context.locality, "untyped-run");
  const met = materialsMet(hole, context);
  const through =
    met.length === 0 ? "" : ` It goes through ${listed(met.map((each) => each.name))}.`;
  const stricter = protectFrom.local ? [] : [stricterStates];
  const others = stricter.map(({ value }) => ` (some states: ${context.words.length(value)})`);
  // Of walls drawn too steep a finding of its own tells.
  const slopes = isSteep
    ? ""
    : `Its walls are drawn ${drawn(work, context.units)}; where nobody has typed the soil, the steepest in the rule is ${wallSlope.print(untyped.value, context.units)}. `;
  return {
    level: "caution",
    code: "walls.protect",
    where: work.id,
    text:
      `The hole for ${work.name} has a face ${context.words.length(face)} high, and from ${context.words.length(protectFrom.value)}${others.join("")} ` +
      `nobody goes in without sloped walls, shoring or a shield, unless a competent person finds stable rock all the way.${through}${soilOverRock(context)} ` +
      `${slopes}Local rules and the competent person on the site decide.`,
    source: sourcesOf([protectFrom, ...stricter, ...(isSteep ? [] : [untyped])]),
  };
}

/** Rock is let off only where no soil lies over it. */
function soilOverRock({ report }: HoleContext): string {
  const rock = report?.layers.some((each) => each.class === "stable-rock") ?? false;
  return rock ? " The rock under it is not let off, since soil lies over it." : "";
}

function needsWayOut(work: Work, face: number, { words, locality }: HoleContext): Finding {
  const { wayOutFrom, wayOutWithin, protectFrom, stricterStates } = depthTriggers(locality);
  const strict = face >= stricterStates.value - 0.0005 && face < protectFrom.value - 0.0005;
  const states = strict
    ? ` Some states ask for sloped or held walls from ${words.length(stricterStates.value)} already.`
    : "";
  return {
    level: "caution",
    code: "walls.way-out",
    where: work.id,
    text: `The hole for ${work.name} is ${words.length(face)} deep at its tallest face. From ${words.length(wayOutFrom.value)} keep a ladder, stairway or ramp in it, within ${words.distance(wayOutWithin.value)} of everyone.${states}`,
    source: sourcesOf([wayOutFrom, wayOutWithin, ...(strict ? [stricterStates] : [])]),
  };
}

function tooSteep(work: Work, hole: WorkQuantities, face: number, context: HoleContext): Finding[] {
  const walls = wallsOf(work);
  if (walls === undefined) return [];
  if (walls.by === "layers") return layersTooSteep(work, face, context);
  const met = materialsMet(hole, context);
  const findings = walls.by === "benches" ? benchFindings(work, walls, met, context) : [];
  const sides = sidesOf(work) ?? [{ name: "", run: benchRun(walls) }];
  const wanted = Math.max(0, ...met.map((each) => each.run));
  const steep = sides.filter((side) => side.run < wanted - 1e-9);
  if (steep.length === 0) return findings;
  const run = Math.min(...steep.map((side) => side.run));
  const weak = met.filter((each) => run < each.run - 1e-9);
  const slope = (each: number) => wallSlope.print(each, context.units);
  const deep = face >= depthTriggers(context.locality).protectFrom.value - 0.0005;
  const onlyTopsoil = weak.every((each) => each.topsoil);
  const tooDeep = tooDeepForADay(work, context);
  const aDay = tooDeep.map(
    ({ value }) =>
      ` Type A soil may stand steeper for a day only in a hole up to ${context.words.length(value)} deep.`,
  );
  const mend = onlyTopsoil
    ? "Strip it back from the edge, or slope each layer by itself."
    : `Lay them back to ${slope(wanted)}, or slope each layer by itself, or plan for shoring or a shield.`;
  findings.push({
    level: deep && !onlyTopsoil ? "caution" : "note",
    code: "walls.too-steep",
    where: work.id,
    text:
      `${steepOnes(work, steep, context.units)}, steeper than what stands there is given or typed to stand: ` +
      `${listed(weak.map((each) => `${each.name} ${slope(each.run)}`))}.${aDay.join("")} ${mend} Local rules and the competent person on the site decide.`,
    source: sourcesOf([
      { source: wallClassSource() },
      ...weak.flatMap(({ rule }) => rule ?? []),
      ...tooDeep,
    ]),
  });
  return findings;
}

/** The rule that keeps a hole in type A soil, open a day, from ½ : 1: it is too deep for that. */
function tooDeepForADay(work: Work, { report, locality }: HoleContext): Rule[] {
  if (!("openDay" in work) || work.openDay !== true || report === undefined) return [];
  const typeA = report.layers.length > 0 && report.layers.every((each) => each.class === "type-a");
  return typeA && !report.shortTerm ? [ruleOf(locality, "short-open-depth")] : [];
}

/** Each layer at its own slope falls short only where water asks for more than the layer does. */
function layersTooSteep(
  work: Work,
  face: number,
  { report, units, locality }: HoleContext,
): Finding[] {
  const steep = report?.layers.filter((each) => each.drawn < each.wanted - 1e-9) ?? [];
  if (steep.length === 0) return [];
  const slope = (run: number) => wallSlope.print(run, units);
  const deep = face >= depthTriggers(locality).protectFrom.value - 0.0005;
  return [
    {
      level: deep ? "caution" : "note",
      code: "walls.too-steep",
      where: work.id,
      text: `The hole for ${work.name} is drawn layer by layer, and stands steeper than is wanted in ${listed(steep.map((each) => `${each.name.toLowerCase()} (drawn ${slope(each.drawn)}, wanted ${slope(each.wanted)})`))}. Water under the ground asks for more. Lay its walls back, or plan for shoring or a shield. Local rules and the competent person on the site decide.`,
      source: wallClassSource(),
    },
  ];
}

function benchFindings(
  work: Work,
  walls: Walls & { by: "benches" },
  met: readonly Met[],
  context: HoleContext,
): Finding[] {
  const { report, locality, words } = context;
  if (report === undefined) return benchesInLooseSoil(work, met);
  const typed = checkBenches(work, walls, report, locality, words);
  if (typed.some((one) => one.code === "walls.no-benches")) return typed;
  const open = met.filter((each) => !each.typed);
  return [...benchesInLooseSoil(work, open), ...typed];
}

/** Run per 1 of rise of a whole flight of benches; walls of planes are asked of `sidesOf`. */
function benchRun(walls: Walls): number {
  return walls.by === "benches" ? walls.tread / walls.rise : 0;
}

/** "The walls of the hole for Tank 1 are drawn ¾ : 1", or which of its sides are. */
function steepOnes(work: Work, steep: readonly Side[], units: UnitSystem): string {
  const named = steep.filter((side) => side.name !== "");
  if (named.length === 0)
    return `The walls of the hole for ${work.name} are drawn ${drawn(work, units)}`;
  const each = named.map((side) => `${side.name} ${wallSlope.print(side.run, units)}`);
  return `These walls of the hole for ${work.name} are drawn too steep: ${listed(each)}`;
}

function benchesInLooseSoil(work: Work, met: readonly Met[]): Finding[] {
  const typeC = wallClasses().find((each) => each.id === "type-c");
  if (typeC === undefined) throw new Error("walls catalogue: got no type-c, expected it");
  const loose = met.filter((each) => each.run >= typeC.run && !each.topsoil);
  if (loose.length === 0) return [];
  return [
    {
      level: "caution",
      code: "walls.no-benches",
      where: work.id,
      text: `The hole for ${work.name} is drawn with benches, and it goes through ${listed(loose.map((each) => each.name))}: type C and untyped soil may not be benched. Slope the walls instead.`,
      source: wallClassSource(),
    },
  ];
}

/** What the hole meets, top down. Earlier backfill and unknown earth count as soil nobody typed. */
function materialsMet(hole: WorkQuantities, context: HoleContext): Met[] {
  const { materials, locality } = context;
  return hole.materialsMet.map((id) => {
    const material = materials.get(id);
    if (material === undefined) {
      const name = id === NATIVE ? "earlier backfill" : id;
      const rule = ruleOf(locality, "untyped-run");
      return { name, run: rule.value, rule, topsoil: false, typed: false };
    }
    const name = material.name.toLowerCase();
    const run = runOf(material, context);
    return { name, run, topsoil: material.kind === "topsoil", typed: isTyped(id, locality) };
  });
}

/** The flattest run that the hole's layers of a material ask for, or all the site's layers of it. */
function runOf(material: Material, { report, locality, materials }: HoleContext): number {
  const inHole = report?.layers.filter((each) => each.material === material.id) ?? [];
  if (inHole.length > 0) return Math.max(...inHole.map((each) => each.own));
  const layers = locality.ground.layers.filter((each: Layer) => each.material === material.id);
  if (layers.length === 0) return material.wallRun;
  return Math.max(...layers.map((each) => layerRun(each, materials)));
}

function wallsOf(work: Work): Walls | undefined {
  return "walls" in work ? work.walls : undefined;
}

function drawn(work: Work, units: UnitSystem): string {
  const walls = wallsOf(work);
  if (walls === undefined) return "vertical";
  if (walls.by === "layers") return "layer by layer, each at its own slope";
  if (walls.by === "benches") return "as benches";
  const sides = sidesOf(work) ?? [];
  const named = sides.filter((side) => side.name !== "");
  if (named.length === 0) return wallSlope.print(walls.run, units);
  const plain = walls.sides === undefined ? `${wallSlope.print(walls.run, units)}, ` : "";
  return plain + named.map(({ name, run }) => `${name} ${wallSlope.print(run, units)}`).join(", ");
}

function listed(names: readonly string[]): string {
  const unique = [...new Set(names)];
  const last = unique.pop() ?? "";
  return unique.length === 0 ? last : `${unique.join(", ")} and ${last}`;
}
