import type { PipeRun } from "../dig/index.js";
import type { Finding, Scheme } from "../site/index.js";
import { FLOW_SETTINGS } from "./settings.js";
import { furthestStretch } from "./stretches.js";
import type { Rule } from "./rule.js";
import type { Wording } from "./wording.js";

/** What is asked of a field's pipe, rise per run: that it does not rise. */
export const FIELD_FALL: Rule = {
  value: 0,
  source: "common practice, no source: laid level to 4 in per 100 ft",
};

/**
 * Whether a gravity pipe lies in a trench of the scheme's field. Such a pipe spreads the water along
 * the trench: it is laid level or nearly so, and neither least fall nor speed is asked of it.
 */
export function isFieldPipe(
  { service, trench }: Pick<PipeRun, "service" | "trench">,
  { flow }: Pick<Scheme, "flow">,
): boolean {
  return service === "gravity" && (flow?.field ?? []).includes(trench);
}

/** A field's pipe that rises, as a whole or on a stretch of it: the water gathers at its start. */
export function fieldRises(run: PipeRun, words: Wording): Finding | undefined {
  const steps = furthestStretch(run, FIELD_FALL.value, 1);
  const rise = Math.max(-run.drop, steps.off);
  if (!(rise > FLOW_SETTINGS.dropTolerance)) return undefined;
  const where =
    -run.drop > FLOW_SETTINGS.dropTolerance
      ? "towards its far end"
      : `between ${words.distance(steps.from)} and ${words.distance(steps.to)} from its start`;
  return {
    level: "caution",
    code: "field.rises",
    where: run.id,
    text: `${run.name} rises ${words.length(rise)} ${where}; a field's pipe is laid level or falls a little, so that the water reaches its end.`,
    source: FIELD_FALL.source,
  };
}
