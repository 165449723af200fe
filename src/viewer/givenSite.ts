import { readSite } from "../site/index.js";
import type { Outcome, Site, SiteProblem } from "../site/index.js";

/** What the page was made from, as it lies in the file. */
export interface Given {
  site: Outcome<Site, SiteProblem>;
  /** The scheme that was open when the page was made; empty for none. */
  schemeId: string;
  /** When the page was made, ISO 8601; empty where that is not told. */
  madeAt: string;
}

/** Reads the site that `pageOf` put into this page. */
export function givenSite(page: Document): Given {
  const data = page.getElementById("site");
  return {
    site: readSite(data?.textContent ?? ""),
    schemeId: data?.dataset["scheme"] ?? "",
    madeAt: data?.dataset["made"] ?? "",
  };
}
