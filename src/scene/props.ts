import type { Estimate, Stage, StagePatch, WorkRunoff } from "../estimate/index.js";
import type { TakePicture } from "./PictureTaker.js";
import type { SceneShooter } from "./shooter.js";
import type { PlanPoint, Site } from "../site/index.js";

/** What a person has picked in the scene or in a leaf. */
export type Selection = { kind: "work" | "probe" | "point" | "limit"; id: string };

/** From where the ground is looked at: from outside, straight from above, or on foot. */
export type ViewKind = "orbit" | "plan" | "walk";

/** What the next clicks in the scene will place. */
export interface Placing {
  kind:
    | "tank"
    | "bed"
    | "probe"
    | "pad"
    | "trench"
    | "field"
    | "building"
    | "strip"
    | "outlet"
    | "limit";
  /** The kind of limit, or the id of the building that an outlet is for. */
  what?: string;
}

/** One step of a drag. `by` is the whole offset in m from where the drag began. */
export interface DragMove {
  selection: Selection;
  by: PlanPoint;
  /** Index of the outline corner or path bend that is dragged; absent when the whole thing moves. */
  corner?: number;
  /** A new corner is dragged out of a side (from corner `side` to the next), from this place. */
  onSide?: { side: number; at: PlanPoint };
  /** New bearing in degrees clockwise from north, when the turning handle is dragged. */
  turnTo?: number;
  /** m that the thing is raised, when its raising grip is dragged. */
  raise?: number;
}

/** What a further probe would tell: a share for each place that was tried, and the best place. */
export interface ProbeWorth {
  places: readonly { at: PlanPoint; share: number }[];
  best: PlanPoint | null;
}

/** A place where the crane might stand. */
export interface CranePlace {
  /** Id and name of the stand. */
  id: string;
  name: string;
  /** Axis of rotation in plan. */
  at: PlanPoint;
  /** m from the axis to each tank. */
  radii: readonly number[];
  /** m between the outriggers' pads; 0 where it is not known. */
  spread: number;
  /** Whether it asks least of the crane. */
  isBest: boolean;
}

/** What of the scene is shown by the person's choice. */
export interface SceneLooks {
  /** Changed ground in the tones of its depth of cut or fill. */
  depths: boolean;
  /** The ground is seen through. */
  through: boolean;
  /** Digger and crane stand at their work. */
  machines: boolean;
  /** How far the setbacks reach, and in plan how far tanks and fields are off. */
  setbacks: boolean;
  /** Ground that is steep by the site's rule. */
  steep: boolean;
  /** m between contours; null for what suits the lot's relief. */
  contourStep: number | null;
  /** Heights at the survey's points: with the points, always, or never. */
  heights: "leaf" | "on" | "off";
}

/** Everything the scene is told and everything it says back: it holds no document of its own. */
export interface SiteSceneProps {
  /** True where the scene is looked at only: nothing in it can be moved or placed. */
  fixed?: boolean;
  site: Site;
  schemeId: string;
  estimate: Estimate | null;
  stage: Stage;
  /** What the stage changes of the ground, when it was made elsewhere; null to make it here. */
  patch: StagePatch | null;
  /** The ground that is wanted is not drawn yet, or could not be worked out. */
  working: { fault: string | null } | null;
  onWorkAgain: () => void;
  view: ViewKind;
  /** Leaves walking for the view from outside. */
  onStopWalking: () => void;
  /** How often the view was asked to turn to what is selected; it does so when this grows. */
  frameAsked: number;
  theme: "light" | "dark";
  reducedMotion: boolean;
  selected: Selection | null;
  /** What else is picked with it. */
  also: readonly Selection[];
  /** Every tap adds to what is picked, or takes away. */
  several: boolean;
  placing: Placing | null;
  /** Whether places are held by what is near them and by round numbers. */
  snapping: boolean;
  /** Ends of the section's line: with fewer than two, the next taps set them; null for no section. */
  section: readonly PlanPoint[] | null;
  looks: SceneLooks;
  /** False where shadows are to be left out, to spare the device. */
  shadows: boolean;
  /** True while taps measure. */
  measuring: boolean;
  onMeasureEnd: () => void;
  /** True while taps show where water runs. */
  watering: boolean;
  onWaterEnd: () => void;
  /** Keeps a way of water as a flood path, site coordinates, m. */
  onKeepWay: (path: readonly (readonly [number, number, number])[]) => void;
  /** The work whose slope is shown; null to leave that out. */
  drains: WorkRunoff | null;
  showProbes: boolean;
  showPoints: boolean;
  /** Where a further probe would tell most; null to leave that out. */
  probeWorth: ProbeWorth | null;
  /** Where the crane might stand; empty to leave them out. */
  cranePlaces: readonly CranePlace[];
  /** With `add` the thing is added to what is picked, or taken away. */
  onSelect: (selection: Selection | null, add: boolean) => void;
  /** All works within a rectangle that was drawn. */
  onSelectAll: (things: readonly Selection[], add: boolean) => void;
  /** Begins to pick several, this thing among them. */
  onGather: (thing: Selection) => void;
  /** One place for a tank, bed or probe; the corners for a pad, trench, building or strip. */
  onPlace: (at: readonly PlanPoint[]) => void;
  onCancelPlacing: () => void;
  /** A tap on the ground while the section's line is drawn. */
  onSectionTap: (at: PlanPoint) => void;
  /** A stand of the crane is put elsewhere. */
  onStandMove: (stand: string, at: PlanPoint) => void;
  onSectionMove: (line: readonly [PlanPoint, PlanPoint]) => void;
  onSectionAcross: (line: readonly [PlanPoint, PlanPoint]) => void;
  onSectionCancel: () => void;
  /** Given a way to take a small picture of the scene when there is one, and null when it goes. */
  onPictureReady: (take: TakePicture | null) => void;
  /** Given a way to take pictures beside the screen when there is one, and null when it goes. */
  onShooterReady?: (shooter: SceneShooter | null) => void;
  /** Marks the undo point; called once before the first `onDragMove` of a drag. */
  onDragBegin: (selection: Selection, doing: "body" | "corner" | "side" | "turn" | "raise") => void;
  /** Takes one corner of an outline, or one bend of a path, away. */
  onRemoveCorner: (selection: Selection, corner: number) => void;
  onDragMove: (move: DragMove) => void;
  /** Commits, or restores what stood at `onDragBegin` when `cancelled`. */
  onDragEnd: (cancelled: boolean) => void;
}
