/** A plan in the making: marks by layer, the ink that they leave, lettering still to be placed, legend. */
import type { PlanPoint } from "../../site/index.js";
import type { Fill, GroupMark, LegendRow, Mark, Pen, Spot } from "../paper.js";
import {
  lineObstacles,
  placeLabels,
  type LabelWish,
  type Obstacle,
  type PlacedLabel,
} from "../place.js";
import { textQuad } from "../box.js";
import { boxQuad } from "../quads.js";
import { clipLine, clipRing, inRoom, ringLine } from "./clip.js";
import type { Label } from "./lettering.js";
import { lineMarks, letterSpots, type LineStyle } from "./lineStyle.js";
import { INK, PENS, TYPE } from "./pens.js";
import { mmOf, onPaper, type PlanFrame } from "./planFrame.js";
import { tagged } from "./tag.js";
import { Way } from "./way.js";

/** Who has first choice of places: the higher. */
export const RANK = {
  letters: 9,
  figures: 8,
  must: 7,
  names: 6,
  wish: 4,
  contours: 3,
  /** Elevations of survey points, and after them the numbers of those that are listed. */
  spots: 2,
  listed: 1,
} as const;

/** What it costs lettering to lie on a stretch of line, beside the better of its own places. */
export const WEIGHT = {
  light: 0.25,
  circle: 1,
  slope: 0.6,
  point: 5,
  usual: 3,
  strong: 8,
  symbol: 60,
} as const;

/** mm of line that count as one stretch. */
const STRETCH = 2;
/** mm that a label may stand off, with a line that leads to what it names. */
const REACH = 50;
/** The same of a number that stands for an elevation in the list. */
const LISTED_REACH = 9;

interface Waiting {
  rank: number;
  label: Label;
}

/** mm kept free about what is placed first. */
const AIR = 0.3;

export class PlanDrawing {
  private readonly obstacles: Obstacle[] = [];
  private readonly layers = new Map<string, Mark[]>();
  private readonly rows = new Map<string, LegendRow>();
  private readonly waiting: Waiting[] = [];

  constructor(readonly frame: PlanFrame) {}

  spot(place: readonly [number, number]): Spot {
    return onPaper(this.frame, place);
  }

  /** Whether a place lies in the room, so many mm from its edge. */
  shows(place: readonly [number, number], inside = 0): boolean {
    return inRoom(this.frame.room, this.spot(place), inside);
  }

  mm(metres: number): number {
    return mmOf(this.frame, metres);
  }

  /** Draws what of a line in plan lies in the room; its pieces on paper. */
  line(
    layer: string,
    places: readonly (readonly [number, number])[],
    style: LineStyle,
    weight: number = WEIGHT.usual,
  ): Spot[][] {
    return this.lineOnPaper(
      layer,
      places.map((place) => this.spot(place)),
      style,
      weight,
    );
  }

  lineOnPaper(
    layer: string,
    spots: readonly Spot[],
    style: LineStyle,
    weight: number = WEIGHT.usual,
  ): Spot[][] {
    const pieces = clipLine(thinned(spots), this.frame.room);
    for (const piece of pieces) {
      this.put(layer, this.inside(lineMarks(piece, style)));
      this.keepOff(piece, weight);
      if (style.letter === undefined) continue;
      const lettering = { lines: [style.letter], size: TYPE.small, color: style.pen.color };
      for (const { at, turn } of letterSpots(piece)) {
        const seats = [{ middle: at, turn }];
        this.label(RANK.letters, { ...lettering, face: "strong", seats });
      }
    }
    return pieces;
  }

  /** Heads and ticks of a line that ends at the room's edge may stick out of it: those are left off. */
  private inside(marks: readonly Mark[]): Mark[] {
    const { room } = this.frame;
    return marks.flatMap((mark): Mark[] => {
      if (mark.kind !== "path") return [mark];
      const lines = mark.lines.filter((line) => line.every((spot) => inRoom(room, spot, -1e-6)));
      return lines.length === 0 ? [] : [{ ...mark, lines }];
    });
  }

  /** Draws what of rings in plan lies in the room, holes by the even–odd rule; the pieces of its edge. */
  area(
    layer: string,
    rings: readonly (readonly (readonly [number, number])[])[],
    { fill, pen }: { fill?: Fill; pen?: Pen },
    weight: number = WEIGHT.usual,
  ): Spot[][] {
    const onPaperRings = rings.map((ring) => ring.map((place) => this.spot(place)));
    const lines = onPaperRings
      .map((ring) => clipRing(ring, this.frame.room))
      .filter((ring) => ring.length > 2);
    if (fill !== undefined && lines.length > 0) {
      this.put(layer, [{ kind: "path", lines, closed: true, fill }]);
    }
    if (pen === undefined) return lines;
    return onPaperRings.flatMap((ring) => this.lineOnPaper(layer, ringLine(ring), { pen }, weight));
  }

  /** Draws what of a circle in plan lies in the room. */
  circle(layer: string, at: PlanPoint, radius: number, style: LineStyle): Spot[][] {
    const ring = Array.from({ length: 145 }, (_, k): PlanPoint => {
      const turn = (k / 72) * Math.PI;
      return [at[0] + radius * Math.sin(turn), at[1] + radius * Math.cos(turn)];
    });
    return this.line(layer, ring, style, WEIGHT.circle);
  }

  /** A symbol about a place, `reach` mm each way, if all of it lies in the room; true if it does. */
  symbol(
    layer: string,
    place: readonly [number, number],
    marks: (at: Spot) => readonly Mark[],
    reach: number,
  ): boolean {
    if (!this.shows(place, reach)) return false;
    const at = this.spot(place);
    this.put(layer, marks(at));
    this.keepOffBox(at, 0.8 * reach, WEIGHT.symbol);
    return true;
  }

  /** Lettering keeps off a line on paper, at a cost for each stretch of it. */
  keepOff(line: readonly Spot[], weight: number): void {
    const way = new Way(line);
    const count = Math.max(1, Math.ceil(way.length / STRETCH));
    const stations = Array.from(
      { length: count + 1 },
      (_, k) => way.at((k / count) * way.length).at,
    );
    this.obstacles.push(...lineObstacles(stations, 0.3, weight));
  }

  /** Lettering keeps off a box about a spot, `reach` mm each way; never lies on it where infinite. */
  keepOffBox([x, y]: Spot, reach: number, weight: number): void {
    this.obstacles.push({ quad: boxQuad(x - reach, y - reach, 2 * reach, 2 * reach), weight });
  }

  /** Marks on paper, which must lie in the room. */
  put(layer: string, marks: readonly Mark[]): void {
    const known = this.layers.get(layer);
    if (known === undefined) this.layers.set(layer, [...marks]);
    else known.push(...marks);
  }

  /** Lettering to be placed; of what lies off the paper none, since a leader would run out of the plan. */
  label(rank: number, label: Label): void {
    if (label.anchor !== undefined && !inRoom(this.frame.room, label.anchor, -1e-6)) return;
    this.waiting.push({ rank, label });
  }

  /** A row of the legend; of several with one name the first stands. */
  row(name: string, sample: readonly Mark[]): void {
    if (!this.rows.has(name)) this.rows.set(name, { name, sample });
  }

  legendRows(): LegendRow[] {
    return [...this.rows.values()];
  }

  /** Places the lettering and hands over all that was drawn. */
  finish(layer: string): Finished {
    const wishes = this.waiting.filter(({ label }) => label.must !== true);
    const ranked = (is: (rank: number) => boolean): Waiting[] =>
      wishes.filter(({ rank }) => is(rank));
    const taken: Obstacle[] = [];
    const place = (of: readonly Waiting[], never: number): Placed =>
      this.place(layer, of, never, taken);
    // What need not stand there never covers what is drawn strongly, nor what is placed already.
    const musts = place(
      this.waiting.filter(({ label }) => label.must === true),
      Infinity,
    );
    place(
      ranked((rank) => rank > RANK.spots),
      WEIGHT.strong,
    );
    const spots = place(
      ranked((rank) => rank === RANK.spots),
      WEIGHT.usual,
    );
    const listed = place(
      ranked((rank) => rank === RANK.listed),
      WEIGHT.strong,
    );
    const points = (labels: readonly Label[]): string[] =>
      labels.flatMap(({ point }) => (point === undefined ? [] : [point]));
    return {
      marks: [...this.layers].map(([name, marks]) => ({ kind: "group", layer: name, marks })),
      legend: this.legendRows(),
      leftOut: musts.left.length,
      spots: {
        written: points([...spots.placed, ...listed.placed]),
        left: points([...spots.left, ...listed.left]),
      },
    };
  }

  /** Places some lettering; `taken` by all before it, and by this from now on. */
  private place(layer: string, of: readonly Waiting[], never: number, taken: Obstacle[]): Placed {
    const hard = this.obstacles.map((one) =>
      one.weight >= never ? { ...one, weight: Infinity } : one,
    );
    const wishes = of.map(({ rank, label }, i) => wishOf(label, rank, String(i)));
    const { placed, left } = placeLabels(wishes, [...hard, ...taken], this.frame.room);
    const labelOf = (id: string): Label => of[Number(id)]!.label;
    for (const one of placed) {
      if (one.leader !== null) this.put(layer, leaderMarks(one.leader));
      this.put(layer, marksOf(one, labelOf(one.id)));
      taken.push(...takenBy(one));
    }
    return { placed: placed.map(({ id }) => labelOf(id)), left: left.map(labelOf) };
  }
}

/** Labels that found room, and those that did not. */
interface Placed {
  placed: readonly Label[];
  left: readonly Label[];
}

/** A plan with its lettering. */
export interface Finished {
  marks: GroupMark[];
  legend: LegendRow[];
  /** Labels that had to be found a place and got none. */
  leftOut: number;
  /** Survey points whose elevation, or number in the list, is written, and those that found no room. */
  spots: { written: readonly string[]; left: readonly string[] };
}

function marksOf({ marks }: PlacedLabel, { tag }: Label): readonly Mark[] {
  return tag === undefined ? marks : tagged(marks[0]!, tag.number, tag.text);
}

function takenBy({ marks, leader }: PlacedLabel): Obstacle[] {
  return [
    ...marks.map((mark) => ({ quad: textQuad(mark, AIR), weight: Infinity, text: true })),
    ...(leader === null ? [] : lineObstacles(leader, 0.3, Infinity)),
  ];
}

function wishOf(label: Label, priority: number, id: string): LabelWish {
  const { lines, size, face = "text", color = INK.black, seats, anchor, clear = 0.8 } = label;
  return {
    ...{ id, lines, face, size, color, halo: true, priority, gap: clear },
    at: anchor ?? seats?.[0]?.middle ?? [0, 0],
    reach: label.must === true ? REACH : priority === RANK.listed ? LISTED_REACH : 0,
    ...(seats !== undefined && { spots: seats }),
    ...(label.shun !== undefined && { shun: label.shun }),
    ...(anchor === undefined && { onlySpots: true }),
  };
}

function leaderMarks(leader: readonly [Spot, Spot]): Mark[] {
  return [
    { kind: "path", lines: [leader], closed: false, pen: PENS.leader },
    { kind: "circle", at: leader[0], radius: 0.4, fill: { color: INK.black } },
  ];
}

/** mm: nearer spots than this on a line are one. */
const SAME = 0.05;

/** A line without spots that lie on each other on paper. */
function thinned(line: readonly Spot[]): Spot[] {
  const kept: Spot[] = [];
  line.forEach((spot, i) => {
    const last = kept[kept.length - 1];
    const far = last === undefined || Math.hypot(spot[0] - last[0], spot[1] - last[1]) >= SAME;
    if (far) kept.push(spot);
    else if (i === line.length - 1 && kept.length > 1) kept[kept.length - 1] = spot;
  });
  return kept;
}
