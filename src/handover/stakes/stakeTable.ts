import { schemeOf } from "../../estimate/index.js";
import { limitCorners, lotLinesOf } from "../../site/index.js";
import type { PlanPoint, Site } from "../../site/index.js";
import { toEarth } from "../../survey/index.js";
import type { EarthPlace } from "../../survey/index.js";
import { distance, elevation, plainNumber } from "../../units/index.js";
import type { HandoverJob } from "../job.js";
import type { Cell } from "../sheet.js";
import { words } from "../../words/index.js";
import { crossing, FLATTEST, sideOf } from "./marks.js";
import type { Mark } from "./marks.js";
import { STAKE_TOLERANCE } from "./outline.js";
import { pipesAtStakes } from "./pipeStations.js";
import type { Stake, StakeGroup } from "./stake.js";

/** All that is set out, with what it is set out from. */
export interface StakeOut {
  job: HandoverJob;
  groups: readonly StakeGroup[];
  marks: readonly [Mark, Mark] | null;
  /** m, of the offset stakes. */
  offset: number;
}

/** Where a place is on the earth, degrees on WGS 84; null where the site is not placed. */
export function earthOf({ site }: HandoverJob, at: PlanPoint): EarthPlace | null {
  return site.place === undefined ? null : toEarth(site.place, at);
}

export const workName = ({ site, schemeId }: HandoverJob, id: string): string =>
  schemeOf(site, schemeId).works.find((work) => work.id === id)?.name ?? id;

/** Lengths with the site's unit: millimetres of a metre or hundredths of a foot are what a tape reads. */
function metrics({ site: { units } }: HandoverJob): {
  unit: string;
  number: (metres: number | null | undefined) => Cell;
} {
  const digits = units === "us" ? 2 : 3;
  return {
    unit: distance.unitLabel(units),
    number: (metres) =>
      metres === null || metres === undefined || !Number.isFinite(metres)
        ? null
        : { number: Number(distance.toSystem(metres, units).toFixed(digits)) },
  };
}

/** One row for each stake: coordinates, distances from two marks, position, distance to the next. */
export function stakeRows(out: StakeOut): Cell[][] {
  const { groups } = out;
  return [
    headings(out),
    ...groups.flatMap(({ stakes, closed }) =>
      stakes.map((stake, i) => {
        const next = stakes[i + 1] ?? (closed && stakes.length > 2 ? stakes[0] : undefined);
        return stakeRow(out, stake, next);
      }),
    ),
    [],
    ...notes(out).map((note) => [note]),
  ];
}

function headings({ job, marks }: StakeOut): string[] {
  const said = words.stakes;
  const { unit } = metrics(job);
  const [a, b] = marks ?? [];
  return [
    ...[said.stake, said.work, said.what, said.east(unit), said.north(unit), said.ground(unit)],
    ...[said.grade(unit), said.cut(unit), said.station(unit)],
    ...(a && b
      ? [said.fromMark(a.name, unit), said.fromMark(b.name, unit), said.side(a.name, b.name)]
      : []),
    ...(a && b ? [said.angle] : []),
    ...(job.site.place ? [said.latitude, said.longitude] : []),
    ...[said.next, said.toNext(unit), said.note],
  ];
}

function stakeRow(out: StakeOut, stake: Stake, next: Stake | undefined): Cell[] {
  const { job, marks } = out;
  const { number } = metrics(job);
  const { at, ground, grade } = stake;
  const earth = earthOf(job, at);
  return [
    ...[stake.name, workName(job, stake.work), words.stakes.kinds[stake.kind]],
    ...[number(at[0]), number(at[1]), number(ground), number(grade)],
    cutCell(number(ground), number(grade)),
    number(stake.station),
    ...(marks === null ? [] : markCells(out, marks, at)),
    ...(earth === null ? [] : [degrees(earth.latitude), degrees(earth.longitude)]),
    next?.name ?? null,
    next === undefined ? null : number(apart(at, next.at)),
    faults(out, stake).join("; "),
  ];
}

/** Ground less what is dug to, as each is written: so it comes out again with a pencil. */
function cutCell(ground: Cell, to: Cell): Cell {
  if (!isNumber(ground) || !isNumber(to)) return null;
  return { number: Number((ground.number - to.number).toFixed(3)) };
}

const isNumber = (cell: Cell): cell is { number: number } =>
  typeof cell === "object" && cell !== null && "number" in cell;

/** Degrees to a seventh decimal: a centimetre. */
const degrees = (value: number): Cell => ({ number: Number(value.toFixed(7)) });

const apart = ([ax, ay]: PlanPoint, [bx, by]: PlanPoint): number => Math.hypot(bx - ax, by - ay);

function markCells({ job }: StakeOut, [a, b]: readonly [Mark, Mark], at: PlanPoint): Cell[] {
  const said = words.stakes;
  const { number } = metrics(job);
  const side = sideOf(a.at, b.at, at);
  // Within a millimetre of the line either side is the same place.
  const onLine = Math.abs(side) < 0.001 * apart(a.at, b.at);
  return [
    ...[number(apart(a.at, at)), number(apart(b.at, at))],
    onLine ? said.onLine : side > 0 ? said.left : said.right,
    { number: Number(crossing(a.at, b.at, at).toFixed(0)) },
  ];
}

/** What to look out for at a stake. */
export function faults({ marks }: StakeOut, { at, ground, lost }: Stake): string[] {
  const said = words.stakes;
  const flat = marks !== null && crossing(marks[0].at, marks[1].at, at) < FLATTEST;
  return [
    ...(flat ? [said.flat] : []),
    ...(lost ? [said.insideDig] : []),
    ...(ground === null ? [said.noGround] : []),
  ];
}

/** Every corner of the lot by the number that the plans give it. */
function lotCorners(site: Site): Pick<Mark, "name" | "at">[] {
  return lotLinesOf(site).flatMap((line) =>
    (limitCorners(line)?.places ?? []).map((at, i) => ({
      name: words.stakes.limitCorner(line.name ?? line.id, i + 1),
      at,
    })),
  );
}

function notes({ job, marks, offset }: StakeOut): string[] {
  const said = words.stakes;
  const { units } = job.site;
  const long = (metres: number): string => distance.print(metres, units, { digits: 2 });
  const marked = (marks ?? []).map(({ name, at: [x, y] }) => said.markLine(name, long(x), long(y)));
  return [
    ...marked.map((line) => `${said.mark}: ${line}`),
    ...lotCorners(job.site).map(
      ({ name, at: [x, y] }) => `${said.lotCorner}: ${said.markLine(name, long(x), long(y))}`,
    ),
    ...(marks === null ? [] : [said.levelTape, said.twoPlaces]),
    said.offsetRule(long(offset)),
    said.gradeRule,
    said.fromGround,
    said.rounded(long(STAKE_TOLERANCE)),
    job.site.place === undefined ? said.notOnEarth : said.receiver,
    said.datum,
  ];
}

/** One row for each pipe at each stake of its trench: ground, invert, floor, and the cuts to them. */
export function stationRows({ job, groups }: StakeOut): Cell[][] {
  const said = words.stakes;
  const { unit, number } = metrics(job);
  const rows = pipesAtStakes(job, groups).map(({ pipe, stake, invert }): Cell[] => {
    const { ground, grade, stationKind } = stake;
    const down = (to: number | null): Cell => cutCell(number(ground), number(to));
    return [
      ...[pipe.name, stake.name, number(stake.station), said.at[stationKind ?? "interval"]],
      ...[number(ground), number(invert), down(invert)],
      ...[number(grade), down(grade)],
    ];
  });
  return [
    [
      ...[said.pipe, said.stake, said.station(unit), said.isAt, said.ground(unit)],
      ...[said.invert(unit), said.cutToInvert(unit), said.floor(unit), said.cutToFloor(unit)],
    ],
    ...rows,
    [],
    [said.fromGround],
    [said.datum],
  ];
}

/** "cut 2.10 m" or "grade 0.30 m above the ground" at a stake; empty where there is no grade. */
export function cutWords({ site: { units } }: HandoverJob, { ground, grade }: Stake): string {
  if (ground === null || grade === null) return "";
  const depth = elevation.print(Math.abs(ground - grade), units);
  return ground >= grade ? words.stakes.cutBy(depth) : words.stakes.aboveBy(depth);
}

/** Meters with three decimals and a point, whatever the site's units: what GPX asks for. */
export const plainMetres = (metres: number): string => plainNumber(metres, 3).replaceAll(",", "");
