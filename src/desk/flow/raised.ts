import { changePipe, changeWork } from "../../site/index.js";
import type { Pipe, Site } from "../../site/index.js";
import type { HighestTank, TankJoint } from "../parts.js";

/**
 * The site with a tank as high as its drains allow: its underside, the far ends of the drains that
 * enter it, and the near ends of the pipes that leave it, so that every joint still meets.
 */
export function withTankRaised(
  site: Site,
  schemeId: string,
  highest: HighestTank,
  joints: readonly TankJoint[],
): Site {
  const raised = changeWork(site, schemeId, highest.tank, (work) =>
    work.kind === "tank" ? { ...work, base: highest.base } : work,
  );
  return joints
    .filter((joint) => joint.tank === highest.tank)
    .reduce((now, joint) => {
      const to = joint.tankInvert + highest.rise;
      return changePipe(now, schemeId, joint.pipe, (pipe) =>
        joint.side === "inlet" ? endedAt(pipe, to, joint) : startedAt(pipe, to),
      );
    }, raised);
}

/** A drain whose far end lies at an elevation; one laid by cover stays as it is. */
function endedAt(pipe: Pipe, end: number, joint: TankJoint): Pipe {
  const { grade } = pipe;
  if (grade.by === "inverts") return { ...pipe, grade: { ...grade, end } };
  if (grade.by === "cover") return pipe;
  const drop = grade.start - joint.pipeInvert;
  const length = grade.fall === 0 ? 0 : drop / grade.fall;
  return length > 0
    ? { ...pipe, grade: { ...grade, fall: (grade.start - end) / length } }
    : { ...pipe, grade: { by: "inverts", start: grade.start, end } };
}

function startedAt(pipe: Pipe, start: number): Pipe {
  const { grade } = pipe;
  return grade.by === "cover" ? pipe : { ...pipe, grade: { ...grade, start } };
}

/** A pipe that falls evenly by so much, its near end as it is; null for one laid by cover. */
export function withFall(pipe: Pipe, fall: number, length: number): Pipe | null {
  const { grade } = pipe;
  if (grade.by === "fall") return { ...pipe, grade: { ...grade, fall } };
  if (grade.by === "cover") return null;
  return { ...pipe, grade: { ...grade, end: grade.start - fall * length } };
}
