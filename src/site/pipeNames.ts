import type { Work } from "./schema.js";

/** Names that pipes come with: "Drain", "Lift line 2". */
export const DEFAULT_PIPE_NAME = /^(Drain|Lift line|Conduit|Field pipe)( \d+)?$/;

/**
 * The work by another name. The one pipe of a trench goes by the trench's name, unless a person gave
 * it its own: findings then speak of the trench that they know.
 */
export function workNamed(work: Work, name: string): Work {
  if (work.name === name) return work;
  if (work.kind !== "trench" || work.pipes.length !== 1) return { ...work, name };
  const pipes = work.pipes.map((pipe) =>
    DEFAULT_PIPE_NAME.test(pipe.name) || pipe.name === work.name ? { ...pipe, name } : pipe,
  );
  return { ...work, name, pipes };
}
