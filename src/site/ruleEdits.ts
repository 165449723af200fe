/** Edits of what a site says of rules: local numbers, setbacks, findings taken on. */
import type { Finding } from "./finding.js";
import { gistOf } from "./gist.js";
import { parted } from "./parted.js";
import type { Accepted, LocalRule, Setback, Site } from "./schema.js";

/** Replaces a published number by the local one; `null` goes back to the published. */
export function setLocalRule(site: Site, id: string, local: Omit<LocalRule, "id"> | null): Site {
  const others = (site.rules ?? []).filter((rule) => rule.id !== id);
  return { ...site, rules: local === null ? others : [...others, { ...local, id }] };
}

/** Sets the site's own table of setbacks; `null` goes back to the published one. */
export function setSetbacks(site: Site, setbacks: readonly Setback[] | null): Site {
  if (setbacks !== null) return { ...site, setbacks: [...setbacks] };
  const entries = Object.entries(site).filter(([key]) => key !== "setbacks");
  return Object.fromEntries(entries) as Site;
}

/** What of a finding an acceptance goes by. */
type Said = Pick<Finding, "level" | "code" | "where" | "text">;

/**
 * The acceptance that covers a finding in a scheme; null for none, and always for a stop. One work
 * may have several findings of a code (too near a well, and too near a creek), so what was said
 * counts as well, whatever its figures. A file of before has acceptances that do not say it.
 */
export function acceptanceOf(
  site: Pick<Site, "accepted">,
  schemeId: string,
  finding: Said,
): Accepted | null {
  if (finding.level === "stop") return null;
  const covers = ({ code, where, said, scheme }: Accepted): boolean =>
    code === finding.code &&
    where === finding.where &&
    (said === undefined || gistOf(said) === gistOf(finding.text)) &&
    (scheme === undefined || scheme === schemeId);
  return (site.accepted ?? []).find(covers) ?? null;
}

/**
 * Takes a finding on with a reason, in place of an earlier acceptance of the same. A stop, or a
 * reason of fewer than three letters, changes nothing.
 */
export function acceptFinding(
  site: Site,
  schemeId: string,
  finding: Said,
  given: { reason: string; by?: string; on?: string },
): Site {
  const reason = given.reason.trim();
  if (finding.level === "stop" || reason.length < 3) return site;
  const { code, where } = finding;
  const [said] = parted(finding.text);
  const accepted = [
    ...(withdrawAcceptance(site, schemeId, finding).accepted ?? []),
    { ...given, reason, code, where, said, scheme: schemeId },
  ];
  return { ...site, accepted };
}

/** Withdraws the acceptance of a finding in a scheme; the site itself when there is none. */
export function withdrawAcceptance(site: Site, schemeId: string, finding: Said): Site {
  const covering = acceptanceOf(site, schemeId, finding);
  if (covering === null) return site;
  return { ...site, accepted: (site.accepted ?? []).filter((one) => one !== covering) };
}
