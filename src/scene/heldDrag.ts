import { cornersOf, type PlanPoint } from "../site/index.js";
import type { DragCall } from "./dragging.js";
import { legsAt, type LegLength } from "./drawnFigures.js";
import type { Selection, SiteSceneProps } from "./props.js";
import type { SnapHold } from "./snap.js";

/** What a drag shows beside what it moves. */
export interface Held {
  /** Where it is held, site m; null while nothing holds it. */
  at: PlanPoint | null;
  holds: readonly SnapHold[];
  /** What is dragged. */
  selection: Selection;
  /** Lengths of the sides that meet at the dragged corner. */
  sides: readonly LegLength[];
}

/** A corner that was chosen: it can be taken away. */
export interface ChosenCorner {
  selection: Selection;
  index: number;
}

export interface HeldNow {
  drag: Held | null;
  corner: ChosenCorner | null;
}

const NOTHING: HeldNow = { drag: null, corner: null };

/** What holds the drag under way, and the corner that is chosen: a little store, read at once. */
export class HeldDrag {
  private now = NOTHING;
  private readonly listeners = new Set<() => void>();

  readonly read = (): HeldNow => this.now;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => void this.listeners.delete(listener);
  };

  private put(part: Partial<HeldNow>): void {
    this.now = { ...this.now, ...part };
    for (const listener of this.listeners) listener();
  }

  /** A step of a drag; `props` are those before it. */
  move(
    { site, schemeId }: Pick<SiteSceneProps, "site" | "schemeId">,
    { move, held }: Extract<DragCall, { call: "move" }>,
  ): void {
    const holds = held?.holds ?? [];
    const at = held === null || holds.length === 0 ? null : held.at;
    this.begun ??= cornersOf(site, schemeId, move.selection);
    const corners = this.begun;
    const sides = corners === null ? [] : legsAt(corners, move);
    this.put({ drag: { at, holds, sides, selection: move.selection } });
  }

  /** The corners as the drag began: each step is reckoned from them. */
  private begun: ReturnType<typeof cornersOf> = null;

  end(): void {
    this.begun = null;
    this.put({ drag: null });
  }

  choose(corner: ChosenCorner | null): void {
    if (corner !== this.now.corner) this.put({ corner });
  }
}
