/** The link that holds all of a site, as a text to be kept or sent. */
import { words } from "../../words/index.js";
import { copyWithout } from "../copy/copyWithout.js";
import { fileName } from "../job.js";
import type { HandoverFile, HandoverMaker } from "../job.js";
import { standingLines } from "../standing.js";
import { linkOf } from "./linkOf.js";

const says = words.link;

/** A site that is too long for any link: what to hand over instead is in the message. */
export class TooLongForLink extends Error {}

/**
 * One text file: the link on a line of its own first, then what it is. Without `options.address` only
 * the part from the "#" on, and what to put before it. What the page is made without, it is too. Throws `TooLongForLink`: a link that would be
 * cut on its way is not written.
 */
export const makeLink: HandoverMaker = (whole, { address, choices } = {}) => {
  const leftOut = choices?.page?.without ?? [];
  const job = { ...whole, site: copyWithout(whole.site, leftOut) };
  const link = linkOf(job.site, address ?? "");
  if (link.fit === "over") return Promise.reject(new TooLongForLink(link.says));
  const lines = [
    link.address,
    "",
    ...(address === undefined ? [says.putBefore] : []),
    link.says,
    leftOut.length === 0 ? says.says : says.fileSaysLess,
    "",
    ...standingLines(job).map(([label, text]) => (label === "" ? text : `${label}: ${text}`)),
  ];
  const file: HandoverFile = {
    name: fileName(job, says.fileName, "txt"),
    type: "text/plain",
    data: `${lines.join("\n")}\n`,
  };
  return Promise.resolve([file]);
};
