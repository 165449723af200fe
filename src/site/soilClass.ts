/**
 * The class of a soil as an excavation's wall, from a short list of questions. After 29 CFR 1926
 * Subpart P, Appendix A, paragraph (b), definitions of stable rock and types A, B and C. Until the
 * questions are answered it is untyped, and 1926.652(b)(1) asks for the flattest of the walls.
 */
import type { Layer } from "./schema.js";

export type SoilAnswers = NonNullable<Layer["soil"]>;

export type SoilClassId = "stable-rock" | "type-a" | "type-b" | "type-c" | "untyped";

export interface SoilClass {
  /** A class of shared/catalogue/walls.json, or untyped. */
  id: SoilClassId;
  /** What led to it, for the person to read; several where several hold. */
  because: readonly string[];
  /** The next question to answer, while it is untyped. */
  ask: keyof SoilAnswers | null;
}

/** The class of a layer by what was found of it. */
export function soilClass(answers: SoilAnswers): SoilClass {
  // Water decides before all else: App. A (b), type C (iii) and (iv).
  if (answers.water === "submerged" || answers.water === "seeps") return wet(answers);
  if (answers.ground === "rock") return rockClass(answers);
  if (answers.ground === "soil") return soilType(answers);
  return untyped("ground");
}

function wet({ ground, water }: SoilAnswers): SoilClass {
  const rock = ground === "rock";
  const why =
    water === "submerged"
      ? `${rock ? "rock" : "soil"} under water`
      : `water comes freely out of the ${rock ? "rock" : "soil"}`;
  return typed("type-c", [why]);
}

function rockClass({ rock, water, dips }: SoilAnswers): SoilClass {
  if (rock === undefined) return untyped("rock");
  if (rock === "stable") return typed("stable-rock", ["whole rock that stands upright"]);
  if (dips === "steeply") return typed("type-c", [STEEP]);
  if (water === undefined) return untyped("water");
  return typed("type-b", ["dry rock that is not stable"]);
}

const STEEP = "layers dip into the hole at 4 across to 1 up or steeper";

/** Questions of a soil in the order in which they are asked. */
const SOIL_QUESTIONS = [
  "grain",
  "strength",
  "water",
  "fissured",
  "shaken",
  "disturbed",
  "dips",
] as const satisfies readonly (keyof SoilAnswers)[];

function soilType(answers: SoilAnswers): SoilClass {
  const { grain, strength, dips } = answers;
  if (grain === "granular") return typed("type-c", ["sand, gravel or loamy sand"]);
  if (dips === "steeply") return typed("type-c", [STEEP]);
  if (grain === "cohesive" && strength === "low") {
    return typed("type-c", ["cohesive, but of 0.5 tsf or less"]);
  }
  const open = SOIL_QUESTIONS.find(
    (question) =>
      answers[question] === undefined && !(question === "strength" && grain !== "cohesive"),
  );
  if (open !== undefined) return untyped(open);
  const lowered = whyNotA(answers);
  if (lowered.length > 0) return typed("type-b", lowered);
  return typed("type-a", ["cohesive, 1.5 tsf or more, with nothing against it"]);
}

/** What keeps a soil from type A though it is no type C. */
function whyNotA(answers: SoilAnswers): string[] {
  const { grain, strength, fissured, shaken, disturbed, dips } = answers;
  return [
    ...(grain === "silt" ? ["silt, silt loam or sandy loam"] : []),
    ...(grain === "angular-gravel" ? ["angular gravel, like broken stone"] : []),
    ...(grain === "cohesive" && strength === "middle" ? ["cohesive, between 0.5 and 1.5 tsf"] : []),
    ...(fissured === true ? ["fissured"] : []),
    ...(shaken === true ? ["shaken by traffic or the like"] : []),
    ...(disturbed === true ? ["dug before, or fill"] : []),
    ...(dips === "gently" ? ["layers dip into the hole"] : []),
  ];
}

function typed(id: SoilClassId, because: readonly string[]): SoilClass {
  return { id, because, ask: null };
}

function untyped(ask: keyof SoilAnswers): SoilClass {
  return { id: "untyped", because: ["not all questions are answered"], ask };
}
