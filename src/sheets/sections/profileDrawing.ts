/** One profile on paper: its heading, its runs, the ground and the pipes, the table under it. */
import { heightOn } from "../../estimate/index.js";
import type { Site } from "../../site/index.js";
import { length, pipeSlope, plainNumber } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { Fill, GroupMark, Mark, Spot } from "../paper.js";
import { BEFORE_BAR, SMALL_BAR, smallScaleBar } from "../scale.js";
import { fitText, textWidth, wrapText } from "../textWidth.js";
import { axisMarks } from "./axis.js";
import type { ChainRun } from "./chains.js";
import { dimensionLine } from "./dimension.js";
import { earthMarks, surfaceMarks } from "./earth.js";
import { INK, PENS, TEXT } from "./pens.js";
import type { ProfileData } from "./profileData.js";
import { profileNames } from "./profileNames.js";
import { pipeMarks } from "./profilePipes.js";
import { namesWidth, profileTable, type ProfileTable } from "./profileTable.js";
import { sayScale } from "./scales.js";
import { spreadInRow } from "./spread.js";
import { boxOf, lineOf, xOf, type View } from "./view.js";

export interface ProfileAsk {
  site: Site;
  data: ProfileData;
  fills: ReadonlyMap<string, Fill>;
  number: number;
  /** n of 1 : n. */
  along: number;
  up: number;
  /** mm: the left edge and upper edge of all that is drawn, and the right edge that it may reach. */
  left: number;
  top: number;
  right: number;
}

const HEAD = 9;
const LINE = 2.4;
/** mm between the runs' names and the ground, and between the ground and the table. */
const AFTER_RUNS = 2.5;

/** mm that stand to the left of the ground. */
export const profileMargin = ({ units }: Pick<Site, "units">): number => namesWidth(units) + 1;

/** mm of paper that a profile takes from its upper edge down. */
export function profileHeight(ask: ProfileAsk): number {
  const { view, runs, table } = laidOut(ask);
  const [, , , tall] = boxOf(view);
  return HEAD + runs.height + AFTER_RUNS + tall + table.height + 1;
}

interface Laid {
  view: View;
  runs: ReturnType<typeof runMarks>;
  table: ProfileTable;
}

function laidOut(ask: ProfileAsk): Laid {
  const { site, data, along, up, left, right, top } = ask;
  const { chain, beyond } = data;
  const plain: View = {
    left: left + profileMargin(site),
    top: 0,
    from: -beyond,
    to: chain.length + beyond,
    high: data.high,
    low: data.low,
    along,
    up,
  };
  const runs = runMarks(ask, plain, top + HEAD);
  const view = { ...plain, top: top + HEAD + runs.height + AFTER_RUNS };
  const [, , , tall] = boxOf(view);
  const table = profileTable({
    columns: data.columns,
    units: site.units,
    left: plain.left,
    right,
    top: view.top + tall,
    edge: xOf(view, view.to),
    x: (station) => xOf(view, station),
  });
  return { view, runs, table };
}

export function profileDrawing(ask: ProfileAsk): Mark[] {
  const { site, data } = ask;
  const { view, runs, table } = laidOut(ask);
  const unlisted = data.columns.length - table.listed.length;
  return [
    ...headMarks(ask, unlisted),
    runs.marks,
    ...groundMarks(ask, view),
    stationLines(data, table.listed, view),
    ...pipeMarks(data, view),
    ...profileNames(site, data, view),
    table.marks,
  ];
}

function headMarks(
  { site, data, number, along, up, left, top, right }: ProfileAsk,
  unlisted: number,
): Mark[] {
  const { profile } = words.sheetsSections;
  const { units } = site;
  const names = data.chain.runs.map(({ pipes }) => pipes[0]!.name);
  const times = along / up;
  const scales =
    times === 1
      ? profile.scalesEven(sayScale(along, units))
      : profile.scales(
          sayScale(along, units),
          sayScale(up, units),
          plainNumber(times, Number.isInteger(times) ? 0 : 1),
        );
  const said = unlisted > 0 ? `${scales}; ${profile.notListed(unlisted)}` : scales;
  const bars = scaleBars([along, ...(times === 1 ? [] : [up])], units, [right, top + 3.4]);
  const room = bars.left - left - BEFORE_BAR;
  const heading = profile.heading(number, names.join(", "));
  const fits = textWidth(heading, "heading", TEXT.title) <= room;
  const ends = profile.heading(number, profile.fromTo(names[0] ?? "", names.at(-1) ?? ""));
  const shown = fits ? heading : fitText(ends, "heading", TEXT.title, room);
  return [
    ...bars.marks,
    textAt([left, top + 3.2], shown, "heading", TEXT.title, "start"),
    textAt([left, top + 6.8], said, "text", TEXT.plain, "start"),
  ];
}

/** A bar for lengths, and one for heights where those are drawn larger, that end at a spot. */
function scaleBars(
  scales: readonly number[],
  units: Site["units"],
  [right, base]: Spot,
): { left: number; marks: Mark[] } {
  const { barAlong, barUp } = words.sheetsSections.profile;
  let x = right;
  const marks = [...scales].reverse().flatMap((scale, i): Mark[] => {
    const said = scales.length === 1 ? "" : i === 0 ? barUp : barAlong;
    x -= SMALL_BAR;
    const bar = smallScaleBar(scale, units, [x, base]);
    if (said === "") return bar;
    x -= 1;
    const name = textAt([x, base], said, "text", TEXT.small, "end");
    x -= textWidth(said, "text", TEXT.small) + BEFORE_BAR;
    return [...bar, name];
  });
  return { left: x, marks };
}

function groundMarks({ site, data, fills }: ProfileAsk, view: View): Mark[] {
  const { finished, beyond } = data;
  const { layers } = words.sheetsSections;
  // The sections' stations begin where the line does, before the chain.
  const shifted: View = { ...view, from: view.from + beyond, to: view.to + beyond };
  const { rules, figures } = axisMarks(view, site.units);
  const tops = data.rockTops.map((line): Mark => ({
    kind: "path",
    lines: [lineOf(view, line)],
    closed: false,
    pen: PENS.rockTop,
  }));
  return [
    rules,
    figures,
    earthMarks([...finished.areas, ...finished.standing], fills, shifted),
    { kind: "group", layer: layers.rock, clip: boxOf(view), marks: tops },
    surfaceMarks(finished.found, PENS.found, layers.found, shifted),
    { kind: "group", layer: layers.dug, clip: boxOf(view), marks: floorMarks(data, view) },
    surfaceMarks(finished.surface, PENS.ground, layers.finished, shifted),
    frameMark(view),
  ];
}

/** The trench of each run: its floor, and its upright ends as far as the ground. */
function floorMarks({ chain, columns, finished, beyond }: ProfileData, view: View): Mark[] {
  return chain.runs.flatMap(({ start, length: long }): Mark[] => {
    const end = start + long;
    const floor = columns
      .filter(({ station }) => station > start - 1e-6 && station < end + 1e-6)
      .filter(({ floor: z }) => Number.isFinite(z))
      .map(({ station, floor: z }) => [station, z] as const);
    const ground = (station: number, side: number): (readonly [number, number])[] => {
      const z = heightOn(finished.found, station + beyond + side * 1e-6);
      return z === null ? [] : [[station, z]];
    };
    if (floor.length < 2) return [];
    const line = [...ground(start, 1), ...floor, ...ground(end, -1)];
    return [{ kind: "path", lines: [lineOf(view, line)], closed: false, pen: PENS.dug }];
  });
}

function frameMark(view: View): Mark {
  const [left, top, width, height] = boxOf(view);
  const sides: Spot[] = [
    [left, top],
    [left, top + height],
    [left + width, top + height],
    [left + width, top],
  ];
  return { kind: "path", lines: [sides], closed: false, pen: PENS.frame };
}

/** From the foot of the ground up to the pipe, so that each column is found again on it. */
function stationLines(data: ProfileData, listed: ProfileData["columns"], view: View): GroupMark {
  const marks = listed
    .filter(({ invert }) => Number.isFinite(invert))
    .map(({ station, invert }): Mark => ({
      kind: "path",
      closed: false,
      pen: PENS.thin,
      lines: [
        lineOf(view, [
          [station, data.low],
          [station, invert],
        ]),
      ],
    }));
  return { kind: "group", layer: words.sheetsSections.layers.table, marks };
}

/** What each run is called, over a dimension line from its beginning to its end. */
function runMarks(
  { site, data, left, right }: ProfileAsk,
  view: View,
  top: number,
): { height: number; marks: GroupMark } {
  const said = data.chain.runs.map((run) => {
    const [from, to] = [xOf(view, run.start), xOf(view, run.start + run.length)];
    const whole = runLines(run, site);
    const widest = Math.max(...whole.map((text) => textWidth(text, "text", TEXT.small)));
    const room = Math.max(28, Math.min(widest + 1, to - from - 2));
    const lines = whole.flatMap((text) => wrapText(text, "text", TEXT.small, room));
    return { from, to, room, lines };
  });
  const middles = spreadInRow(
    said.map(({ from, to, room }) => ({ at: (from + to) / 2, size: room })),
    2,
    left,
    right,
  );
  const most = Math.max(...said.map(({ lines }) => lines.length));
  const base = top + most * LINE + 1.4;
  const marks = said.flatMap(({ from, to, lines }, i): Mark[] => [
    ...lines.map((text, k) =>
      textAt(
        [middles[i]!, top + (most - lines.length + k + 0.8) * LINE],
        text,
        "text",
        TEXT.small,
        "middle",
      ),
    ),
    ...dimensionLine([from, base], [to, base]),
    ...leadUp(middles[i]!, from, to, base),
  ]);
  return {
    height: most * LINE + 1.4,
    marks: { kind: "group", layer: words.sheetsSections.layers.dimensions, marks },
  };
}

/** A short line to a name that had to stand aside of what it names. */
function leadUp(middle: number, from: number, to: number, base: number): Mark[] {
  if (middle >= from && middle <= to) return [];
  const near = middle < from ? from : to;
  const line: Spot[] = [
    [near, base],
    [middle, base - 0.9],
  ];
  return [{ kind: "path", lines: [line], closed: false, pen: PENS.thin }];
}

function runLines({ trench, pipes }: ChainRun, { units }: Pick<Site, "units">): string[] {
  const { profile } = words.sheetsSections;
  return pipes.flatMap((check, i) => {
    const pipe = trench.pipes.find(({ id }) => id === check.id);
    const name = pipe === undefined ? check.name : `${check.name}, ${pipe.material}`;
    if (i > 0) return [name];
    const long = length.print(check.length, units, { digits: units === "us" ? 1 : 2 });
    const fall = pipeSlope.print(Math.abs(check.fall), units);
    const level = Math.abs(check.fall) < 0.0005;
    const said = level
      ? profile.level(long)
      : check.fall > 0
        ? profile.falls(long, fall)
        : profile.rises(long, fall);
    return [name, said];
  });
}

function textAt(
  at: Spot,
  text: string,
  face: "text" | "heading",
  size: number,
  anchor: "start" | "middle" | "end",
): Mark {
  return { kind: "text", at, text, face, size, anchor, color: INK };
}
