import { useEffect, useState } from "react";
import type { Estimate } from "../../estimate/index.js";
import type { Site } from "../../site/index.js";
import { useSite } from "../useSite.js";

interface Worked<T> {
  site: Site;
  estimate: Estimate;
  answer: T;
}

/**
 * What is worked out from the site that is open and its estimate, after the page has drawn that it is
 * being done; null until then, and while nobody asks. Done anew when the site changes.
 */
export function useWorkedOut<T>(
  asked: boolean,
  work: (site: Site, schemeId: string, now: Estimate) => T,
): T | null {
  const { site, schemeId, estimate } = useSite();
  const [worked, setWorked] = useState<Worked<T> | null>(null);
  const current = worked?.site === site && worked.estimate === estimate ? worked.answer : null;
  useEffect(() => {
    if (!asked || estimate === null || current !== null) return undefined;
    const later = setTimeout(
      () => setWorked({ site, estimate, answer: work(site, schemeId, estimate) }),
      60,
    );
    return () => clearTimeout(later);
  }, [asked, current, estimate, schemeId, site, work]);
  return asked ? current : null;
}
