import type { ScreenPoint } from "./dragging.js";
import { shortTurn } from "./gliding.js";

/** Degrees that two fingers turn before it is meant: a pinch is never quite straight. */
const MEANT = 7;

/** Two fingers on the screen, turning about each other. */
export interface Twist {
  /** Direction from the first finger to the second as last seen, degrees clockwise from upwards. */
  last: number;
  /** Degrees turned so far; the view follows once they are more than are made by accident. */
  turned: number;
  follows: boolean;
}

export function beginTwist(a: ScreenPoint, b: ScreenPoint): Twist {
  return { last: wayBetween(a, b), turned: 0, follows: false };
}

/** The twist with the fingers moved, and by how many degrees clockwise the picture is to turn. */
export function stepTwist(
  twist: Twist,
  a: ScreenPoint,
  b: ScreenPoint,
): { twist: Twist; by: number } {
  const last = wayBetween(a, b);
  const by = shortTurn(twist.last, last);
  const turned = twist.turned + by;
  if (twist.follows) return { twist: { ...twist, last, turned }, by };
  const follows = Math.abs(turned) > MEANT;
  // What was needed to be sure is not made up for: the picture would jump.
  return { twist: { last, turned, follows }, by: 0 };
}

function wayBetween(a: ScreenPoint, b: ScreenPoint): number {
  return (Math.atan2(b.left - a.left, a.top - b.top) * 180) / Math.PI;
}

/** Calls `turn` with the degrees clockwise that two fingers on the element twist the picture by. */
export function listenForTwist(element: HTMLElement, turn: (degrees: number) => void): () => void {
  const fingers = new Map<number, ScreenPoint>();
  let twist: Twist | null = null;
  const pair = (): [ScreenPoint, ScreenPoint] | null => {
    const [a, b, more] = [...fingers.values()];
    return a === undefined || b === undefined || more !== undefined ? null : [a, b];
  };
  const put = (event: PointerEvent): void => {
    fingers.set(event.pointerId, { left: event.clientX, top: event.clientY });
  };
  const renew = (): void => {
    const now = pair();
    twist = now && beginTwist(...now);
  };
  const ends = new AbortController();
  const { signal } = ends;
  element.addEventListener(
    "pointerdown",
    (event) => {
      if (event.pointerType !== "touch") return;
      // The first finger of a gesture: whatever was left of another is gone.
      if (event.isPrimary) fingers.clear();
      put(event);
      renew();
    },
    { signal },
  );
  const { ownerDocument } = element;
  ownerDocument.addEventListener(
    "pointermove",
    (event) => {
      if (!fingers.has(event.pointerId)) return;
      put(event);
      const now = pair();
      if (now === null || twist === null) return;
      const step = stepTwist(twist, ...now);
      twist = step.twist;
      if (step.by !== 0) turn(step.by);
    },
    { signal },
  );
  for (const gone of ["pointerup", "pointercancel"] as const) {
    ownerDocument.addEventListener(
      gone,
      (event) => {
        if (fingers.delete(event.pointerId)) renew();
      },
      { signal },
    );
  }
  return () => ends.abort();
}
