/** A site in an address: behind its "#", which a browser never sends to any server. */
import { strToU8, zlibSync } from "fflate";
import type { Site } from "../../site/index.js";
import { words } from "../../words/index.js";
import { LINK_MARK } from "./linkMark.js";

/**
 * Characters of an address that hold nearly everywhere: RFC 9110 (HTTP Semantics, IETF, 2022), 4.1,
 * recommends that all senders and recipients take at least 8,000. Message apps cut some sooner: common
 * experience, no source.
 */
const SURE_LENGTH = 8_000;

/**
 * Characters that the address bars of today's browsers take: Chromium's shows and takes 32 kB (its
 * guideline on showing addresses). Seen through secondary sources.
 */
const MOST_LENGTH = 32_000;

export interface SiteLink {
  address: string;
  /** Characters. */
  length: number;
  /** "sure" holds nearly everywhere, "long" in browsers but not in every message, "over" in neither. */
  fit: "sure" | "long" | "over";
  /** What to say of it: its length, and what to send instead where it is too long. */
  says: string;
}

/**
 * The address that opens this site, all of it, in the app at `base`. Nothing of the site is left out;
 * a site that is too long for a link is to be handed over as a page or a file.
 */
export function linkOf(site: Site, base: string): SiteLink {
  const packed = zlibSync(strToU8(JSON.stringify(site)), { level: 9 });
  const address = `${base.replace(/#.*$/s, "")}${LINK_MARK}${toUrlLetters(packed)}`;
  const { length } = address;
  const fit = length <= SURE_LENGTH ? "sure" : length <= MOST_LENGTH ? "long" : "over";
  return { address, length, fit, says: words.link.fits[fit](length.toLocaleString("en-US")) };
}

/** Bytes in the letters that an address may hold anywhere: base64url of RFC 4648, without padding. */
function toUrlLetters(bytes: Uint8Array): string {
  let text = "";
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text).replace(/\+/g, "-").replace(/\//g, "_").replace(/=+$/, "");
}
