/** Marks put elsewhere on the paper. */
import type { Mark, Spot } from "./paper.js";

/** The marks moved right by `dx` and down by `dy`, mm. */
export function movedMarks(marks: readonly Mark[], dx: number, dy: number): Mark[] {
  const moved = ([x, y]: Spot): Spot => [x + dx, y + dy];
  return marks.map((mark): Mark => {
    switch (mark.kind) {
      case "path":
        return { ...mark, lines: mark.lines.map((line) => line.map(moved)) };
      case "circle":
      case "text":
        return { ...mark, at: moved(mark.at) };
      case "group": {
        const { clip } = mark;
        const marksInside = movedMarks(mark.marks, dx, dy);
        if (clip === undefined) return { ...mark, marks: marksInside };
        return {
          ...mark,
          marks: marksInside,
          clip: [clip[0] + dx, clip[1] + dy, clip[2], clip[3]],
        };
      }
    }
  });
}
