/** Sizes of a section, from the site's own figures. */
import { heightOn } from "../../estimate/index.js";
import { words } from "../../words/index.js";
import type { CutAsk } from "./cutAsk.js";
import type { Span } from "./dimensionRows.js";

type Asked = Pick<CutAsk, "data" | "site">;

/** Sizes upright, from below to above. */
export function uprightSpans({ data, site }: Asked): Span[] {
  const { work, floor } = data.cut;
  const { size } = words.sheetsSections.cut;
  const named = (from: number, to: number, name: string): Span => ({ from, to, name });
  if (work.kind === "tank") {
    const { base, body, bedding } = work;
    const top = base + body.height;
    const ground = heightOn(data.finished.surface, (floor[0] + floor[1]) / 2);
    return [
      ...(bedding.depth > 0 ? [named(base - bedding.depth, base, size.bedding)] : []),
      named(base, top, size.tank),
      ...(ground !== null && ground > top ? [named(top, ground, size.overTank)] : []),
    ];
  }
  const beds = site.schemes
    .find(({ id }) => id === data.finished.scheme)
    ?.works.filter((each) => data.finished.standing.some(({ work: id }) => id === each.id));
  const bed = work.kind === "bed" ? work : beds?.find((each) => each.kind === "bed");
  const course =
    work.kind === "pad" && work.course && work.course.depth > 0
      ? [named(work.top - work.course.depth, work.top, size.course)]
      : [];
  return bed?.kind === "bed"
    ? [...course, named(bed.base, bed.base + bed.height, size.bed)]
    : course;
}

/** Sizes across, in rows from the ground down. */
export function acrossSpans({ data }: Asked): Span[][] {
  const { work, floor, changed, way } = data.cut;
  const { size } = words.sheetsSections.cut;
  const [left, right] = floor;
  const opening: Span[] =
    work.kind === "bed" || changed[1] - changed[0] <= right - left + 0.01
      ? []
      : [
          {
            from: changed[0],
            to: changed[1],
            name: work.kind === "tank" ? size.opening : size.changed,
          },
        ];
  if (work.kind !== "tank") {
    const name = work.kind === "bed" ? size.bed : size.pad;
    return [[{ from: left, to: right, name }], ...(opening.length > 0 ? [opening] : [])];
  }
  const [near, far] = [left + work.overdig, right - work.overdig];
  const long = way === "along" ? size.tankLong : size.tankWide;
  const floors: Span[] =
    work.overdig > 0
      ? [
          { from: left, to: near, name: "" },
          { from: near, to: far, name: long },
          { from: far, to: right, name: "" },
        ]
      : [{ from: near, to: far, name: long }];
  return [
    floors,
    [{ from: left, to: right, name: size.floor }],
    ...(opening.length > 0 ? [opening] : []),
  ];
}
