/** Works moved into the ground's local frame. */
import type { Place } from "../ground/index.js";
import type { Pad, PlanPoint, Trench, Work } from "../site/index.js";

type Origin = readonly [number, number, number];

/**
 * The same work in local metres: plan places less the origin, elevations less its height. A strip
 * over a work has no places of its own and stays as it is.
 */
export function localWork(work: Work, origin: Origin): Work {
  const place = ([x, y]: PlanPoint): [number, number] => [x - origin[0], y - origin[1]];
  switch (work.kind) {
    case "tank":
    case "bed":
      return { ...work, at: place(work.at), base: work.base - origin[2] };
    case "building":
      return { ...work, outline: work.outline.map(place), base: work.base - origin[2] };
    case "pad":
      return {
        ...work,
        outline: work.outline.map(place),
        top: work.top - origin[2],
        ...localLevels(work, place, origin[2]),
      };
    case "pile":
      return { ...work, at: place(work.at) };
    case "trench":
      return { ...work, path: work.path.map(place), pipes: localPipes(work, origin[2]) };
    case "strip": {
      const { area } = work;
      if (area.by === "work") return work;
      return { ...work, area: { ...area, outline: area.outline.map(place) } };
    }
  }
}

function localLevels(
  { levels }: Pad,
  place: (at: PlanPoint) => [number, number],
  height: number,
): Pick<Pad, "levels"> {
  if (levels === undefined) return {};
  return {
    levels: levels.map((level) => ({
      ...level,
      outline: level.outline.map(place),
      top: level.top - height,
    })),
  };
}

function localPipes(trench: Trench, height: number): Trench["pipes"] {
  return trench.pipes.map((pipe) => {
    const { grade } = pipe;
    if (grade.by === "inverts") {
      return {
        ...pipe,
        grade: { ...grade, start: grade.start - height, end: grade.end - height },
      };
    }
    return grade.by === "fall"
      ? { ...pipe, grade: { ...grade, start: grade.start - height } }
      : pipe;
  });
}

/** Corners of a rectangle, counter-clockwise. `bearing` (degrees from north) is of its length. */
export function rectangle(
  at: Place,
  bearing: number,
  length: number,
  width: number,
): [Place, Place, Place, Place] {
  const angle = (bearing * Math.PI) / 180;
  const [ux, uy] = [(Math.sin(angle) * length) / 2, (Math.cos(angle) * length) / 2];
  const [vx, vy] = [(Math.cos(angle) * width) / 2, (-Math.sin(angle) * width) / 2];
  const [x, y] = at;
  return [
    [x - ux + vx, y - uy + vy],
    [x + ux + vx, y + uy + vy],
    [x + ux - vx, y + uy - vy],
    [x - ux - vx, y - uy - vy],
  ];
}
