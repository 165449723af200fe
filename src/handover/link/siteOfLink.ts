/** Opens the site that a link holds. */
import { readSite } from "../../site/index.js";
import type { Outcome, Site, SiteProblem } from "../../site/index.js";
import { words } from "../../words/index.js";
import { isSiteLink, LINK_MARK } from "./linkMark.js";

/** The letters that a site may be unpacked to: a link cannot be made to fill the memory. */
const MOST_LETTERS = 4_000_000;

/**
 * The site in an address. A link that was cut short or changed on its way is told by its checksum
 * (Adler-32 of the zlib format, RFC 1950), and the site in it is checked like that of a file.
 */
export async function siteOfLink(address: string): Promise<Outcome<Site, SiteProblem>> {
  const letters = address.slice(address.indexOf(LINK_MARK) + LINK_MARK.length);
  const text = isSiteLink(address) ? await unpacked(letters) : null;
  if (text !== null) return readSite(text);
  const { broken, mend } = words.link;
  return { ok: false, problems: [{ code: "bad-link", path: "", text: broken, mend }] };
}

/** The text that was packed; null where it is not whole, or longer than any link that is made. */
async function unpacked(letters: string): Promise<string | null> {
  const packed = fromUrlLetters(letters);
  if (packed === null) return null;
  // The browser's own, since it holds the checksum against what comes out.
  const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream("deflate"));
  const reader = stream.getReader();
  const decoder = new TextDecoder("utf-8", { fatal: true });
  let text = "";
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return text + decoder.decode();
      text += decoder.decode(value, { stream: true });
      if (text.length > MOST_LETTERS) {
        await reader.cancel();
        return null;
      }
    }
  } catch {
    // Not whole, or not what this app packs: the caller says that the link is broken.
    return null;
  }
}

/** Bytes of base64url without padding, RFC 4648; null for letters that stand for none. */
function fromUrlLetters(letters: string): Uint8Array<ArrayBuffer> | null {
  if (!/^[\w-]+$/.test(letters)) return null;
  try {
    const text = atob(letters.replace(/-/g, "+").replace(/_/g, "/"));
    return Uint8Array.from(text, (letter) => letter.charCodeAt(0));
  } catch {
    // A number of letters that no bytes have: cut short.
    return null;
  }
}
