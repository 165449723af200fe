/** What is done with whole schemes: their prices, machines and costs; copying and removing them. */
import { changeScheme, freshId } from "./edits.js";
import type { PriceChoice, Scheme, Site } from "./schema.js";

/** Chooses a price for one line of one scheme; `null` goes back to the catalogue's. */
export function setPrice(
  site: Site,
  schemeId: string,
  lineId: string,
  choice: Omit<PriceChoice, "id"> | null,
): Site {
  return changeScheme(site, schemeId, (scheme) => {
    const others = (scheme.prices ?? []).filter((one) => one.id !== lineId);
    if (choice === null && others.length === (scheme.prices ?? []).length) return scheme;
    const prices = choice === null ? others : [...others, { ...choice, id: lineId }];
    return { ...scheme, prices };
  });
}

/** Chooses a price for one line of every scheme: a supplier asks the same whatever is built. */
export function setPriceOfAll(
  site: Site,
  lineId: string,
  choice: Omit<PriceChoice, "id"> | null,
): Site {
  return site.schemes.reduce((now, { id }) => setPrice(now, id, lineId, choice), site);
}

/** Changes how one scheme hires its machines; fields left out stay. */
export function setMachines(
  site: Site,
  schemeId: string,
  choice: Partial<NonNullable<Scheme["machines"]>>,
): Site {
  return changeScheme(site, schemeId, (scheme) => ({
    ...scheme,
    machines: { ...scheme.machines, ...choice },
  }));
}

/** Leaves the digger to the estimate again: the cheapest that can. */
export function leaveDiggerOpen(site: Site, schemeId: string): Site {
  return changeScheme(site, schemeId, (scheme) => {
    const kept = Object.entries(scheme.machines ?? {}).filter(([key]) => key !== "digger");
    const machines: NonNullable<Scheme["machines"]> = Object.fromEntries(kept);
    return { ...scheme, machines };
  });
}

/** Changes what one scheme's cost holds besides its works; a field given as undefined goes away. */
export function setCosts(
  site: Site,
  schemeId: string,
  choice: { [K in keyof Costs]?: Costs[K] | undefined },
): Site {
  return changeScheme(site, schemeId, (scheme) => {
    const entries = Object.entries({ ...scheme.costs, ...choice });
    const costs: Costs = Object.fromEntries(entries.filter(([, value]) => value !== undefined));
    return { ...scheme, costs };
  });
}

type Costs = NonNullable<Scheme["costs"]>;

/**
 * Copies a scheme under a new id and name, right after it, with what was taken on in it; the ids of
 * its works stay, since they only need to differ within a scheme. A scheme that the site does not
 * have changes nothing.
 */
export function copyScheme(site: Site, schemeId: string, copy: { id: string; name: string }): Site {
  const at = site.schemes.findIndex(({ id }) => id === schemeId);
  if (at < 0) return site;
  const schemes = [...site.schemes];
  schemes.splice(at + 1, 0, { ...site.schemes[at]!, ...copy });
  const { accepted = [] } = site;
  const taken = accepted.filter(({ scheme }) => scheme === schemeId);
  if (taken.length === 0) return { ...site, schemes };
  const also = taken.map((one) => ({ ...one, scheme: copy.id }));
  return { ...site, schemes, accepted: [...accepted, ...also] };
}

/** An id that no scheme of the site has. */
export function freshSchemeId(site: Site): string {
  return freshId(
    site,
    "scheme",
    site.schemes.map(({ id }) => id),
  );
}

export function renameScheme(site: Site, schemeId: string, name: string): Site {
  return changeScheme(site, schemeId, (scheme) => ({ ...scheme, name }));
}

/** Takes a scheme away; the last one stays. */
export function removeScheme(site: Site, schemeId: string): Site {
  const schemes = site.schemes.filter(({ id }) => id !== schemeId);
  return schemes.length === 0 || schemes.length === site.schemes.length
    ? site
    : { ...site, schemes };
}
