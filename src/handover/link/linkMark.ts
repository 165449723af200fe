/** What a site stands behind in an address: a browser never sends it to any server. */
export const LINK_MARK = "#site=";

/** Whether an address, or what stands from its "#" on, is meant to hold a site. */
export const isSiteLink = (address: string): boolean => address.includes(LINK_MARK);
