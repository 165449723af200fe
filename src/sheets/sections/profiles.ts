/** Sheets of pipe profiles. */
import { schemeOf } from "../../estimate/index.js";
import type { Site } from "../../site/index.js";
import { plainNumber } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { Fill, Mark, Room, SheetContent, SheetJob, SheetMaker } from "../paper.js";
import { pipeChains } from "./chains.js";
import { fillsOf } from "./earth.js";
import { sectionLegend } from "./legendRows.js";
import { profileData, type ProfileData } from "./profileData.js";
import { profileDrawing, profileHeight, profileMargin, type ProfileAsk } from "./profileDrawing.js";
import { sayScale, scaleFor, SECTION_SCALES } from "./scales.js";

/** Heights are drawn no more than so many times as large as lengths. */
const MOST_TIMES = 10;
/** mm between two profiles, and of ground in a profile at the least where two share a sheet. */
const GAP = 7;
const LEAST_TALL = 42;

/** Each chain of pipes along its stations, as many to a sheet as there is room for. */
export const pipeProfiles: SheetMaker = (job, roomOf, _windows, without) => {
  const scheme = schemeOf(job.site, job.schemeId);
  const fills = fillsOf(job.site, scheme);
  const all = pipeChains(scheme, job.estimate.flow.pipes).flatMap((chain) => {
    const data = profileData(job.site, scheme, job.estimate, chain);
    return data === null ? [] : [data];
  });
  if (all.length === 0) return [];
  const room = roomOf(sectionLegend(job.site, fills, all));
  const asked = all.map((data, i) => ({
    data,
    number: i + 1,
    ...scalesOf(job.site, data, all, room),
  }));
  return paged(job, fills, asked, room, without);
};

interface Asked {
  data: ProfileData;
  number: number;
  along: number;
  up: number;
}

/** Scales of a profile: all alike where two share a sheet, else each as large as there is room. */
function scalesOf(
  site: Site,
  data: ProfileData,
  all: readonly ProfileData[],
  room: Room,
): { along: number; up: number } {
  const { units } = site;
  const wide = room.width - profileMargin(site) - 2;
  const longOf = ({ chain, beyond }: ProfileData): number => chain.length + 2 * beyond;
  const half = (room.height - GAP) / 2 - aroundOf(data, site, room);
  const shares = all.length > 1 && half >= LEAST_TALL;
  const longest = Math.max(...(shares ? all : [data]).map(longOf));
  const along = scaleFor(longest, wide, units);
  const tall = shares ? half : room.height - aroundOf(data, site, room);
  const wanted = scaleFor(data.high - data.low, tall, units, along / MOST_TIMES);
  return { along, up: Math.min(along, roundUp(along, wanted, units)) };
}

/** The largest scale for heights from `wanted` on that is a whole or half part of the other. */
function roundUp(along: number, wanted: number, units: Site["units"]): number {
  const list = SECTION_SCALES[units].filter((scale) => scale >= wanted && scale <= along);
  return list.find((scale) => Number.isInteger((2 * along) / scale)) ?? along;
}

/** mm of a profile that do not depend on its heights. */
function aroundOf(data: ProfileData, site: Site, room: Room): number {
  const along = scaleFor(
    data.chain.length + 2 * data.beyond,
    room.width - profileMargin(site) - 2,
    site.units,
  );
  const up = 1e9;
  return profileHeight(askOf(site, new Map(), { data, number: 1, along, up }, room, 0));
}

function askOf(
  site: Site,
  fills: ReadonlyMap<string, Fill>,
  { data, number, along, up }: Asked,
  room: Room,
  top: number,
): ProfileAsk {
  const right = room.left + room.width - 1;
  return { site, data, fills, number, along, up, left: room.left + 1, top, right };
}

function paged(
  { site }: SheetJob,
  fills: ReadonlyMap<string, Fill>,
  asked: readonly Asked[],
  room: Room,
  without: ReadonlySet<string>,
): SheetContent[] {
  const pages: { asked: Asked[]; marks: Mark[] }[] = [];
  let y = Infinity;
  for (const one of asked) {
    const page = pages.at(-1);
    const height = profileHeight(askOf(site, fills, one, room, 0));
    const isOut = (other: Asked): boolean => without.has(subjectOf(other));
    const first = page?.asked[0];
    const isAlike = first?.along === one.along && isOut(first) === isOut(one);
    const fits = y + height <= room.top + room.height && isAlike;
    if (!fits) {
      y = room.top + 1;
      pages.push({ asked: [], marks: [] });
    }
    const onto = pages.at(-1)!;
    onto.asked.push(one);
    onto.marks.push(...profileDrawing(askOf(site, fills, one, room, y)));
    y += height + GAP;
  }
  return pages.map((page, i) => sheetOf(site, fills, page, i, pages.length));
}

/** By the trench that the chain begins with. */
const subjectOf = ({ data }: Asked): string => `profile:${data.chain.runs[0]?.trench.id ?? ""}`;

function sheetOf(
  site: Site,
  fills: ReadonlyMap<string, Fill>,
  { asked, marks }: { asked: readonly Asked[]; marks: Mark[] },
  i: number,
  of: number,
): SheetContent {
  const { profile } = words.sheetsSections;
  const [{ along, up }] = asked as [Asked, ...Asked[]];
  const even = asked.every((one) => one.up === up);
  const times = plainNumber(along / up, Number.isInteger(along / up) ? 0 : 1);
  return {
    id: i === 0 ? "profiles" : `profiles-${i + 1}`,
    of: asked.map(subjectOf),
    title: of > 1 ? words.sheetsSections.part(profile.sheet, i + 1, of) : profile.sheet,
    scale: along,
    scaleNote: !even
      ? profile.scaleNoteEach
      : along === up
        ? profile.scaleNoteAlike
        : profile.scaleNote(sayScale(up, site.units), times),
    north: null,
    marks,
    legend: sectionLegend(
      site,
      fills,
      asked.map(({ data }) => data),
    ),
  };
}
