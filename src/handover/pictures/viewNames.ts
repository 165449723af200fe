/** Names of works and limits, and heights of contours, set so that none covers another. */
import { layer, lineObstacles, placeLabels, textWidth } from "../../sheets/index.js";
import type { Face, Mark, Pen } from "../../sheets/index.js";
import { words } from "../../words/index.js";
import { MARGIN, type Fit } from "./fit.js";
import type { Lens } from "./lens.js";
import type { Place } from "./normals.js";
import type { ViewName, ViewScene } from "./viewScene.js";
import type { FacetMap, Spot } from "./visible.js";

/** Where names stood on the picture before this one, so that they move with the ground: see `seated`. */
export type NameSeats = Map<string, readonly [number, number]>;

interface Looking {
  lens: Lens;
  fit: Fit;
  map: FacetMap;
}

/** mm of the letters' body. */
const SIZE = { work: 3, limit: 2.6, height: 2.1 } as const;
const FACES: Readonly<Record<ViewName["of"], Face>> = { work: "strong", limit: "text" };

const LEADER: Pen = { width: 0.15, color: "#26323a" };
const TAG = { paper: "#fffdf6", pen: { width: 0.12, color: "#26323a" }, above: 0.25 };
const CONTOUR_INK = "#6f4a1f";

/** mm² that a line of a work costs under a name: names stand clear of the works where they can. */
const LINE_WEIGHT = 40;

/** mm after which the height of a contour is written again. */
const AGAIN = 45;

/** m that a place may lie behind what is seen there and still count as seen. */
const SLACK = 0.4;

const says = words.pictures.view;

/** The layers of names and of contours' heights; what finds no room is left out. */
export function nameMarks(
  scene: ViewScene,
  looking: Looking,
  lines: readonly (readonly [Spot, Spot])[],
  seats?: NameSeats,
): Mark[] {
  const { fit } = looking;
  const under = (weight: number): Obstacle[] =>
    lines.flatMap((line) => lineObstacles(line, 0.2, weight));
  const room = { left: MARGIN, top: MARGIN, width: fit.width, height: fit.height };
  const wishes = nameWishes(scene, looking, seats);
  const names = placeLabels(wishes, under(LINE_WEIGHT), room).placed;
  if (seats !== undefined) keepSeats(seats, wishes, names);
  const leaders = names.flatMap(({ leader }) => (leader === null ? [] : [leader]));
  const tags = names.flatMap(({ marks }) => marks.map(cornersOf));
  const taken: Obstacle[] = [
    ...under(Infinity),
    ...leaders.flatMap((leader) => lineObstacles(leader, 0.2, Infinity)),
    ...tags.map((quad) => ({ quad, weight: Infinity })),
  ];
  const heights = placeLabels(heightWishes(scene, looking), taken, room).placed;
  return [
    layer(
      says.heights,
      heights.flatMap(({ marks }) => marks),
    ),
    layer(says.names, [
      ...(leaders.length === 0
        ? []
        : [{ kind: "path", lines: leaders, closed: false, pen: LEADER } as const]),
      ...names.flatMap(({ marks }) =>
        marks.flatMap((mark) => [tagOf(mark), { ...mark, text: mark.text.trim() }]),
      ),
    ]),
  ];
}

type Wish = Parameters<typeof placeLabels>[0][number];
type Obstacle = Parameters<typeof placeLabels>[1][number];
type Placed = ReturnType<typeof placeLabels>["placed"][number];

/** The paper that a name stands on; it reaches as far as the blanks about the name. */
function tagOf(mark: Placed["marks"][number]): Mark {
  const lines = [cornersOf(mark)];
  return { kind: "path", lines, closed: true, fill: { color: TAG.paper }, pen: TAG.pen };
}

function cornersOf(mark: Placed["marks"][number]): [Spot, Spot, Spot, Spot] {
  const half = textWidth(mark.text, mark.face, mark.size) / 2;
  const [x, y] = mark.at;
  const [top, bottom] = [y - 0.76 * mark.size - TAG.above, y + 0.22 * mark.size + TAG.above];
  return [
    [x - half, top],
    [x + half, top],
    [x + half, bottom],
    [x - half, bottom],
  ];
}

function nameWishes(scene: ViewScene, looking: Looking, seats?: NameSeats): Wish[] {
  return scene.names.flatMap(({ name, at, of }, i): Wish[] => {
    const spot = spotOf(at, looking);
    // A limit behind the hill is not named; a work is, since it is what the picture is of.
    if (spot === null || (of === "limit" && !isSeen(at, looking))) return [];
    const seat = seats?.get(String(i));
    return [
      {
        ...{ id: String(i), lines: [` ${name} `], face: FACES[of], size: SIZE[of] },
        ...{ priority: (of === "work" ? 2000 : 1000) - i, at: spot, gap: 1.8 },
        reach: of === "work" ? 60 : 16,
        ...(seat !== undefined && {
          spots: [{ middle: [spot[0] + seat[0], spot[1] + seat[1]] as const }],
        }),
      },
    ];
  });
}

function heightWishes(scene: ViewScene, looking: Looking): Wish[] {
  const written: { text: string; spot: Spot }[] = [];
  return scene.contours.heights.flatMap(({ text, at, on }, i): Wish[] => {
    const [spot, next] = [spotOf(at, looking), spotOf(on, looking)];
    if (spot === null || next === null) return [];
    const [dx, dy] = [next[0] - spot[0], next[1] - spot[1]];
    const long = Math.hypot(dx, dy);
    if (long === 0) return [];
    // Of a level that is written near by already, or beside which something stands, nothing more.
    const half = textWidth(text, "text", SIZE.height) / 2 / long;
    const isFree = [-half, 0, half].every((share) => isSeen(between(at, on, share), looking));
    const isTold = written.some((other) => other.text === text && apart(other.spot, spot) < AGAIN);
    if (!isFree || isTold) return [];
    written.push({ text, spot });
    const way = dx < 0 ? -1 : 1;
    const turn = (Math.atan2(way * dy, way * dx) * 180) / Math.PI;
    // Above its line, as one reads it.
    const up = (0.75 * SIZE.height) / long;
    const middle = [spot[0] + way * dy * up, spot[1] - way * dx * up] as const;
    return [
      {
        ...{ id: `height ${i}`, lines: [text], face: "text", size: SIZE.height, gap: 0 },
        ...{ priority: 0, at: spot, reach: 0, color: CONTOUR_INK },
        ...{ spots: [{ middle, turn }], onlySpots: true },
      },
    ];
  });
}

const between = (a: Place, b: Place, share: number): Place => [
  a[0] + (b[0] - a[0]) * share,
  a[1] + (b[1] - a[1]) * share,
  a[2] + (b[2] - a[2]) * share,
];

const apart = (a: Spot, b: Spot): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** Where names stand from the places they name, for the next picture. */
function keepSeats(seats: NameSeats, wishes: readonly Wish[], names: readonly Placed[]): void {
  seats.clear();
  for (const { id, marks, leader } of names) {
    const at = wishes.find((wish) => wish.id === id)?.at;
    const mark = marks[0];
    // One with a line to its place is sought anew, since a seat has none.
    if (at === undefined || mark === undefined || leader !== null) continue;
    seats.set(id, [mark.at[0] - at[0], mark.at[1] - 0.27 * mark.size - at[1]]);
  }
}

/** Where a place shows; null outside the picture. */
function spotOf(at: Place, { lens, fit }: Looking): Spot | null {
  const [place] = lens.inFront([at]);
  if (place === undefined) return null;
  const { x, y } = fit.at(lens.show(place));
  const isIn = x > MARGIN && x < MARGIN + fit.width && y > MARGIN && y < MARGIN + fit.height;
  return isIn ? [x, y] : null;
}

/** Whether nothing nearer hides a place. */
function isSeen(at: Place, { lens, fit, map }: Looking): boolean {
  const from = fit.at(lens.show(at));
  const to = { ...from, x: from.x + 0.02 };
  return map.hiddenOf({ from, to, slack: SLACK * lens.perMetre(from.near) }).length === 0;
}
