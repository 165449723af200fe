import type { SurveyPoint } from "./schema.js";

const STAYS = /\b(pin|iron|stake|staked|nail|peg|hub|monument|bench|bm|mark|corner|pipe|casing)\b/i;

/** Whether a survey point's note tells of something that stays in the ground, to measure from. */
export function staysInGround({ note = "" }: Pick<SurveyPoint, "note">): boolean {
  return STAYS.test(note);
}
