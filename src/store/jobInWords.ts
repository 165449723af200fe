import type { LongJob } from "./deskState.js";

/** What is being done away from the page, in a sentence for the one who waits. */
export function jobInWords({ name, points, step }: LongJob): string {
  const of = points === null ? name : `${points.toLocaleString("en")} points of ${name}`;
  switch (step) {
    case "reading":
      return `Reading ${of}`;
    case "joining":
      return `Joining ${of} into ground`;
    case "drawing":
      return `Drawing the ground of ${of}`;
  }
}
