/**
 * Drives the pure machines of the scene without a page: pointer and keys in, calls out. It joins them
 * as the pointer's hand does, with the ground taken as a plane seen from above, 100 px to the metre.
 */
import type { Corners as ThingCorners, PlanPoint } from "../site/index.js";
import { placeAimed } from "./placeAimed.js";
import {
  IDLE,
  stepDrag,
  type DragCall,
  type DragEvent,
  type DragState,
  type Grip,
} from "./dragging.js";
import { dragHold } from "./dragSnap.js";
import {
  NOTHING_PLACED,
  stepPlacing,
  type Corners,
  type FixedLeg,
  type PlacingEvent,
  type PlacingState,
} from "./placing.js";
import { actOfKey, type PlacingKey } from "./placingKeys.js";
import type { Placing, Selection } from "./props.js";
import type { SnapContours, SnapTarget } from "./snap.js";

/** What the driver's site holds; all else is empty ground. */
export interface DrivenScene {
  targets?: SnapTarget[];
  contours?: SnapContours | null;
  snapping?: boolean;
}

export type DrivenCall = DragCall | { call: "place"; at: Corners } | { call: "cancel placing" };

/** px to a metre. */
const PX = 100;
/** m within which something holds: 10 px. */
const REACH = 0.1;
const STEP = 0.05;

export class SceneDriver {
  readonly calls: DrivenCall[] = [];
  state: PlacingState = NOTHING_PLACED;
  drag: DragState = IDLE;
  private placing: Placing | null = null;
  private time = 0;

  constructor(private readonly scene: DrivenScene = {}) {}

  /** Begins placing, as a button of the desk does. */
  place(placing: Placing): this {
    this.placing = placing;
    this.state = NOTHING_PLACED;
    return this;
  }

  isPlacing(): boolean {
    return this.placing !== null;
  }

  /** The pointer over a site place, or off the ground. */
  hover(at: PlanPoint | null, alt = false): this {
    const aim = this.aim(at, alt);
    return this.send({ type: "hover", at: aim?.at ?? null, holds: aim?.holds ?? [] });
  }

  /** A click `after` ms from the last, with the pointer moved there first. */
  click(at: PlanPoint | null, { alt = false, after = 1000 } = {}): this {
    this.time += after;
    this.hover(at, alt);
    const screen = { left: (at?.[0] ?? -9) * PX, top: -(at?.[1] ?? -9) * PX };
    return this.send({ type: "tap", at: this.aim(at, alt)?.at ?? null, screen, time: this.time });
  }

  /** Two clicks at once, and the browser's own double click after them. */
  doubleClick(at: PlanPoint): this {
    return this.click(at).click(at, { after: 120 }).send({ type: "double" });
  }

  /** A length or bearing typed into the hint's fields. */
  type(fixed: FixedLeg): this {
    return this.send({ type: "fix", fixed });
  }

  /** Enter in one of these fields. */
  set(): this {
    return this.send({ type: "set" });
  }

  /** A key, while placing or while dragging. */
  key(key: string, on: PlacingKey["on"] = "scene"): this {
    if (this.drag.phase !== "idle") {
      return key === "Escape" ? this.sendDrag({ type: "cancel" }) : this;
    }
    if (this.placing === null) return this;
    const ground = { step: STEP, middle: [0, 0] as PlanPoint };
    const act = actOfKey(this.placing, this.state, { key, shift: false, on }, ground);
    if (act?.type === "cancel") {
      this.placing = null;
      this.calls.push({ call: "cancel placing" });
    } else if (act !== null && act.type !== "type") this.send(act);
    return this;
  }

  /** A press on a thing, one of its corners or one of its sides. */
  press(
    selection: Selection,
    grip: Grip,
    place: PlanPoint,
    own: { corners?: ThingCorners; grabbed?: PlanPoint; movable?: boolean } = {},
  ): this {
    const { corners = null, grabbed = place, movable = true } = own;
    const screen = { left: grabbed[0] * PX, top: -grabbed[1] * PX };
    const press = { selection, grip, place, grabbed, screen, movable, threshold: 4 };
    const snapping = { targets: [], contours: null, ...this.scene, reach: REACH, step: STEP };
    this.hold = dragHold(press, corners, corners?.places ?? [place], snapping);
    return this.sendDrag({ type: "press", press });
  }

  private hold: ReturnType<typeof dragHold> | null = null;

  /** The pointer dragged over a site place, or off the ground. */
  move(at: PlanPoint | null, alt = false): this {
    const screen = at === null ? { left: -999, top: 0 } : { left: at[0] * PX, top: -at[1] * PX };
    const free = alt || this.scene.snapping === false;
    const hold = free ? null : this.hold;
    return this.sendDrag({ type: "move", at, screen, step: free ? 0 : STEP, turnStep: 5, hold });
  }

  release(): this {
    return this.sendDrag({ type: "release" });
  }

  private aim(at: PlanPoint | null, alt: boolean) {
    if (at === null || this.placing === null) return null;
    if (alt || this.scene.snapping === false) return { at, holds: [] };
    const { targets = [], contours = null } = this.scene;
    const ground = { targets, contours, reach: REACH, step: STEP };
    return placeAimed(at, this.placing, this.state.corners, ground);
  }

  private send(event: PlacingEvent): this {
    if (this.placing === null) return this;
    const next = stepPlacing(this.placing, this.state, event);
    this.state = next.state;
    if (next.placed === null) return this;
    // The desk puts it down and stops placing.
    this.calls.push({ call: "place", at: next.placed });
    this.placing = null;
    return this;
  }

  private sendDrag(event: DragEvent): this {
    const next = stepDrag(this.drag, event);
    this.drag = next.state;
    this.calls.push(...next.calls);
    return this;
  }
}
