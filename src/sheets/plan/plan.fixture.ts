/** What the tests of plans ask of a sheet: its marks one by one, and what they reach to. */
import { estimate } from "../../estimate/index.js";
import type { Site } from "../../site/index.js";
import { textQuad } from "../box.js";
import { roomOf } from "../frame.js";
import type {
  GroupMark,
  Mark,
  PaperId,
  SheetContent,
  SheetJob,
  SheetMaker,
  Spot,
  TextMark,
} from "../paper.js";

/** A job on a site's first scheme. */
export function jobOf(site: Site, paper: PaperId): SheetJob {
  const schemeId = site.schemes[0]!.id;
  return { site, schemeId, estimate: estimate(site, schemeId), date: "2026-11-27", paper };
}

export function sheetsFrom(
  make: SheetMaker,
  job: SheetJob,
  windows: Parameters<SheetMaker>[2] = {},
): readonly SheetContent[] {
  return make(job, (legend) => roomOf(job.paper, legend), windows, new Set());
}

export type Single = Exclude<Mark, GroupMark>;

/** All marks that are no groups. */
export function singles(marks: readonly Mark[]): Single[] {
  return marks.flatMap((mark) => (mark.kind === "group" ? singles(mark.marks) : [mark]));
}

export function textsOf({ marks }: SheetContent): TextMark[] {
  return singles(marks).filter((mark) => mark.kind === "text");
}

/** The spots that a mark reaches to, its pen's width left out. */
export function reachOf(mark: Single): readonly Spot[] {
  if (mark.kind === "path") return mark.lines.flat();
  if (mark.kind === "text") return textQuad(mark);
  const [x, y] = mark.at;
  const { radius: r } = mark;
  return [
    [x - r, y - r],
    [x + r, y + r],
  ];
}
