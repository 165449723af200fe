import { createContext, useContext } from "react";
import type { Estimate } from "../estimate/index.js";
import type { Site } from "../site/index.js";
import { useDesk } from "../store/index.js";

/** What a leaf shows: the open site, the scheme chosen, and its estimate (null when it failed). */
export interface OpenSite {
  site: Site;
  schemeId: string;
  estimate: Estimate | null;
}

/** Set by the page when a site is open; leaves are drawn only then. */
export const OpenSiteContext = createContext<OpenSite | null>(null);

/** The open site. Throws outside of an open desk. */
export function useSite(): OpenSite {
  const open = useContext(OpenSiteContext);
  if (open === null) throw new Error("a leaf expected an open site, got none");
  return open;
}

/** The open site, or null where there is none. */
export const useOpenSite = (): OpenSite | null => useContext(OpenSiteContext);

/** The store's `edit`, which never changes. */
export const useEdit = (): ReturnType<typeof useDesk.getState>["edit"] =>
  useDesk((desk) => desk.edit);
