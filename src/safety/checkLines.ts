/** Lines in the ground: the call before digging, and every place where a hole comes near one. */
import type { CutBeside, DigResult } from "../dig/index.js";
import { isLocated, ruleOf } from "../site/index.js";
import type { Finding, Limit, Scheme, Site } from "../site/index.js";
import { earthVolume, length } from "../units/index.js";

/** m: depths nearer to each other than this are taken as the same. */
const SAME = 0.05;

type Where = Pick<Site, "limits" | "locate" | "rules" | "units">;

/**
 * The locate call, until its ticket and date are written down, and one finding for each hole that
 * comes within the tolerance of a buried line, at the place meant. `beside` is what the works cut
 * there. Texts in the site's own units.
 */
export function checkLines(
  site: Where,
  scheme: Pick<Scheme, "works">,
  { works }: Pick<DigResult, "works">,
  beside: readonly CutBeside[],
): Finding[] {
  const digs = works.some(({ cut }) => Object.values(cut).some((volume) => volume > 0));
  return [
    ...(digs ? locate(site) : []),
    ...beside.flatMap((cut) => {
      const limit = site.limits?.find(({ id }) => id === cut.limit);
      const work = scheme.works.find(({ id }) => id === cut.work);
      return limit === undefined || work === undefined ? [] : [near(site, cut, work.name, limit)];
    }),
  ];
}

function locate(site: Where): Finding[] {
  if (isLocated(site)) return [];
  const missing = site.locate?.ticket === undefined ? "no ticket number" : "no date of the call";
  return [
    {
      level: "caution",
      code: "line.locate",
      where: "site",
      text: `Have buried lines located before any digging (US: call 811) and wait your state's days; ${missing} is written down yet. Private lines on your own lot are not marked: find them yourself.`,
      source: "29 CFR 1926.651(b); the call and private lines recalled",
    },
  ];
}

function near(site: Where, cut: CutBeside, name: string, limit: Limit): Finding {
  const rule = ruleOf(site, "hand-within");
  const { units } = site;
  const volume = Object.values(cut.cut).reduce((sum, each) => sum + each, 0);
  const line = limit.name ?? limit.kind;
  const how =
    cut.distance === 0
      ? `crosses ${line}`
      : `comes within ${length.print(cut.distance, units)} of ${line} in plan`;
  const within = length.print(rule.value, units);
  return {
    level: "caution",
    code: "line.by-hand",
    where: cut.work,
    at: cut.at,
    text: `${name} ${how}: ${depthWords(site, cut, limit)} Dig by hand within ${within} of its marks, here some ${earthVolume.print(volume, units)}, and ask its owner what else is asked.`,
    source: `29 CFR 1926.651(b); ${rule.source}`,
  };
}

function depthWords({ units }: Where, { depth, distance }: CutBeside, limit: Limit): string {
  const deep = length.print(depth, units);
  const hole =
    distance === 0 ? `the hole is ${deep} deep there` : `beside it the hole is up to ${deep} deep`;
  if (limit.depth === undefined) {
    return `${hole}, and no depth of the line is entered. Lay it bare by hand to find it.`;
  }
  const line = `the line is entered at ${length.print(limit.depth, units)}`;
  const below = limit.depth - depth;
  if (below > SAME) {
    return `${hole} and ${line}, ${length.print(below, units)} under its floor. Depths drift: do not trust the figure.`;
  }
  if (below < -SAME && distance > 0) {
    return `${hole} and ${line}, so the hole goes deeper than the line beside it. Hold the ground between them as its owner says.`;
  }
  if (below < -SAME) {
    return `${hole} and ${line}, so the line is laid bare. It has to be held up as its owner says.`;
  }
  return `${hole}, and ${line}: its floor is at the line.`;
}
