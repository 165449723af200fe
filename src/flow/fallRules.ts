import falls from "../../shared/catalogue/falls.json" with { type: "json" };
import type { PipeRun } from "../dig/index.js";
import { ruleOf } from "../site/index.js";
import type { Locality, Scheme } from "../site/index.js";
import type { Rule } from "./rule.js";

/** One published or local table of least falls. Sources stand in shared/catalogue/falls.json. */
export interface FallRule {
  id: string;
  name: string;
  /** By inside diameter, m, smallest first; fall is rise per run; `says` is the rule's own words. */
  rows: readonly { upToInside: number; fall: number; says: string }[];
  source: string;
}

/** The tables that a person can pick from; picking one writes it into the scheme's `flow.leastFall`. */
export function fallRules(): readonly FallRule[] {
  return falls.rules;
}

/**
 * Least fall (rise per run) for a pipe of the given inside diameter, m: from the scheme's own rows
 * if it has any, else from the catalogue's table in use. The first row whose limit is not less than
 * the diameter counts; a pipe larger than every row takes the largest. Throws on an empty catalogue.
 */
export function leastFallFor(inside: number, scheme: Pick<Scheme, "flow">): Rule {
  const own = scheme.flow?.leastFall;
  if (own !== undefined && own.length > 0) {
    const row = rowFor(inside, own);
    return { value: row.fall, source: row.source };
  }
  const used = usedRule();
  const row = rowFor(inside, used.rows);
  return { value: row.fall, source: `${used.source}: ${row.says}` };
}

/** Most fall, rise per run: the scheme's own or the usual one, which no rule was found for. */
export function mostFallFor(scheme: Pick<Scheme, "flow">): Rule {
  const own = scheme.flow?.mostFall;
  if (own !== undefined) return { value: own, source: SET_BY_SCHEME };
  return { value: falls.mostFall.value, source: falls.mostFall.source };
}

/**
 * Least ground over a pipe, m: the scheme's own or the usual one; over a conduit never less than
 * the electrical rule for the way that it is wired, as a smaller figure set for pipes is not meant
 * for cables. The electrical rule is the rule book's, or the site's local number.
 */
export function leastCoverFor(
  scheme: Pick<Scheme, "flow" | "works">,
  { service, id }: Pick<PipeRun, "service" | "id">,
  locality: Locality = {},
): Rule {
  const own = scheme.flow?.leastCover;
  const usual = { value: falls.leastCover.value, source: falls.leastCover.source };
  const pipe = own === undefined ? usual : { value: own, source: SET_BY_SCHEME };
  if (service !== "conduit") return pipe;
  const drawn = scheme.works
    .flatMap((work) => (work.kind === "trench" ? work.pipes : []))
    .find((each) => each.id === id);
  const { value, source } = ruleOf(locality, `wiring-${drawn?.wiring ?? "pvc"}`);
  return pipe.value >= value ? pipe : { value, source };
}

/**
 * Usual build-up of a pump tank's low water above its underside, m: the tank's floor, the gap that
 * keeps the intake off it, and the pump, which stays covered.
 */
export function pumpWell(): { slab: Rule; intake: Rule; pump: Rule } {
  return falls.pumpWell;
}

const SET_BY_SCHEME = "set in this scheme";

function usedRule(): FallRule {
  const used = falls.rules.find((rule) => rule.id === falls.used);
  if (used === undefined) {
    throw new Error(
      `falls catalogue: got used "${falls.used}", expected the id of one of its rules`,
    );
  }
  return used;
}

function rowFor<Row extends { upToInside: number }>(inside: number, rows: readonly Row[]): Row {
  const ordered = [...rows].sort((a, b) => a.upToInside - b.upToInside);
  const row = ordered.find((each) => inside <= each.upToInside) ?? ordered.at(-1);
  if (row === undefined) throw new Error("least falls: got no rows, expected one or more");
  return row;
}
