/** A site as a copy for somebody else, without what is none of their business. */
import { estimate } from "../../estimate/index.js";
import { onlyKnown, without } from "../../site/index.js";
import type { Scheme, Site } from "../../site/index.js";
import type { LeftOut } from "../choices.js";
import { GAP, scrubbed } from "./scrubbed.js";
import { moneyIn, namesIn } from "./told.js";

/**
 * The site without costs, without names, or both; the same site where nothing is left out. What a
 * person has written freely (names of things, notes, reasons, sources) stays, less the names that are
 * left out and less amounts of money. A scheme that loses prices keeps the digger that they chose, so
 * that its days do not change. Throws like `estimate`.
 */
export function copyWithout(site: Site, leftOut: readonly LeftOut[]): Site {
  if (leftOut.length === 0) return without(site, "leftOut");
  const patterns = [
    ...(leftOut.includes("costs") ? [moneyIn(site.currency)] : []),
    ...(leftOut.includes("names") ? namesIn(site) : []),
  ];
  const known = onlyKnown(site);
  const priced = leftOut.includes("costs") ? withoutCosts(known) : known;
  const bare = leftOut.includes("names") ? withoutNames(priced) : priced;
  return { ...scrubbed(bare, patterns), leftOut: [...leftOut] };
}

function withoutCosts(site: Site): Site {
  return { ...site, schemes: site.schemes.map((scheme) => schemeWithoutCosts(site, scheme)) };
}

function schemeWithoutCosts(site: Site, scheme: Scheme): Scheme {
  const { machines } = scheme;
  const bare: Scheme = {
    ...without(without(scheme, "prices"), "costs"),
    ...(machines?.diggers && {
      machines: {
        ...machines,
        diggers: machines.diggers.map((own) => without(without(own, "rates"), "source")),
      },
    }),
  };
  const isPriced = scheme.prices !== undefined || scheme.costs !== undefined || machines?.diggers;
  if (!isPriced || machines?.digger !== undefined) return bare;
  const digger = estimate(site, scheme.id).machines.digger.id;
  return { ...bare, machines: { ...bare.machines, digger } };
}

/**
 * Without whose it is, where on earth it lies, who drew it and who took what on. That there is a locate
 * ticket stays, since days and findings go by it.
 */
function withoutNames(site: Site): Site {
  const { project, locate, accepted } = site;
  const benchmark = project?.benchmark;
  const date = project?.date;
  return {
    ...without(without(site, "place"), "project"),
    ...(project && { project: { ...(benchmark && { benchmark }), ...(date && { date }) } }),
    ...(locate && { locate: locate.ticket === undefined ? locate : { ...locate, ticket: GAP } }),
    ...(accepted && { accepted: accepted.map((taken) => without(taken, "by")) }),
  };
}
