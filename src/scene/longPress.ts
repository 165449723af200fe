import type { ScreenPoint } from "./dragging.js";

/** ms that a finger rests before it means more than a tap. */
export const LONG_PRESS_MS = 500;
/** px that it may waver meanwhile. */
const REACH = 8;

/** Watches one finger: fires when it has rested long enough where it came down. */
export class LongPress {
  private at: ScreenPoint | null = null;
  private timer: ReturnType<typeof setTimeout> | undefined;

  /** A finger has come down; `fire` is called once if it rests. */
  begin(at: ScreenPoint, fire: () => void): void {
    this.end();
    this.at = at;
    this.timer = setTimeout(() => {
      this.at = null;
      fire();
    }, LONG_PRESS_MS);
  }

  move(at: ScreenPoint): void {
    if (this.at === null) return;
    if (Math.hypot(at.left - this.at.left, at.top - this.at.top) > REACH) this.end();
  }

  /** The finger has gone, or another came. */
  end(): void {
    clearTimeout(this.timer);
    this.at = null;
  }
}
