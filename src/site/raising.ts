import { changeWork } from "./edits.js";
import type { Building, Pad, Pipe, Site, Trench, Work } from "./schema.js";

function raisedLevels({ levels }: Pad, by: number): Pick<Pad, "levels"> {
  if (levels === undefined) return {};
  return { levels: levels.map((level) => ({ ...level, top: level.top + by })) };
}

function raisedOutlets({ outlets }: Building, by: number): Pick<Building, "outlets"> {
  if (outlets === undefined) return {};
  return { outlets: outlets.map((outlet) => ({ ...outlet, invert: outlet.invert + by })) };
}

function raisedPipe(pipe: Pipe, by: number): Pipe {
  const { grade } = pipe;
  switch (grade.by) {
    case "inverts":
      return { ...pipe, grade: { ...grade, start: grade.start + by, end: grade.end + by } };
    case "fall":
      return { ...pipe, grade: { ...grade, start: grade.start + by } };
    case "cover":
      return pipe;
  }
}

function raisedTrench(trench: Trench, by: number): Trench {
  if (trench.pipes.every((pipe) => pipe.grade.by === "cover")) return trench;
  return { ...trench, pipes: trench.pipes.map((pipe) => raisedPipe(pipe, by)) };
}

/** The elevation that a work is raised by, m: its base, or a pad's top; null where it has none. */
export function heightOf(work: Work): number | null {
  switch (work.kind) {
    case "tank":
    case "bed":
    case "building":
      return work.base;
    case "pad":
      return work.top;
    case "trench":
    case "pile":
    case "strip":
      return null;
  }
}

/**
 * The same work raised by `by` metres: all levels of a pad, a building with its outlets, the pipes of
 * a trench that lie at elevations. What goes by the ground (a pipe laid by cover, a strip, a pile)
 * stays as it is.
 */
export function workRaisedBy(work: Work, by: number): Work {
  if (by === 0) return work;
  switch (work.kind) {
    case "tank":
    case "bed":
      return { ...work, base: work.base + by };
    case "building":
      return { ...work, base: work.base + by, ...raisedOutlets(work, by) };
    case "pad":
      return { ...work, top: work.top + by, ...raisedLevels(work, by) };
    case "trench":
      return raisedTrench(work, by);
    case "pile":
    case "strip":
      return work;
  }
}

/** Raises a work by `by` metres; lowers it when that is negative. */
export function raiseWork(site: Site, schemeId: string, workId: string, by: number): Site {
  return changeWork(site, schemeId, workId, (work) => workRaisedBy(work, by));
}
