import type { Estimate, Stage, StagePatch } from "../estimate/index.js";
import type { History, Mark, PlanPoint, Site, SiteProblem, Thing } from "../site/index.js";
import type { Figures } from "../estimate/index.js";
import type { PlaceKind } from "./placed.js";

/** The six steps of the job, each a leaf of the book. */
export const LEAVES = ["survey", "dig", "flow", "machines", "cost", "handover"] as const;
export type Leaf = (typeof LEAVES)[number];

/** What is picked in the scene or a leaf. */
export interface Picked {
  kind: "work" | "probe" | "point" | "limit";
  id: string;
}

/** One step of a drag: `by` is the whole offset in m since it began; `turnTo` a bearing, degrees. */
export interface DragStep {
  selection: Picked;
  by: PlanPoint;
  corner?: number;
  /** A new corner is dragged out of a side, from where it was pressed, m. */
  onSide?: { side: number; at: PlanPoint };
  turnTo?: number;
  /** m that the thing is raised, when its raising handle is dragged. */
  raise?: number;
}

/** How the keeping of the site in this browser stands. */
export type Keeping =
  | { state: "kept" }
  | { state: "waiting" }
  /** An example as it came: it is kept from the first edit on. */
  | { state: "example" }
  /** `isFull` when the browser has no more room. */
  | { state: "failed"; text: string; isFull: boolean };

/**
 * Who may change the open site: this page; another page of this browser, since before this one; or
 * another page that took it over from this one.
 */
export type Turn = "here" | "elsewhere" | "moved";

/** A file that could not be opened, and why. */
export interface Unopened {
  file: string;
  problems: readonly SiteProblem[];
  /** Its text, when it was kept in this browser and would be lost otherwise. */
  text?: string;
}

/** A long job away from the page, and how far it is. */
export interface LongJob {
  /** What it is about: a site, or a file. */
  name: string;
  /** How many points its survey has, once that is known. */
  points: number | null;
  step: "reading" | "joining" | "drawing";
  /** 0 to 1. */
  share: number;
}

/** What is drawn of a site with a large survey: it follows the document when it has been worked out. */
export interface Drawn {
  /** The site that the figures and the ground are of. */
  site: Site;
  schemeId: string;
  stage: Stage;
  patch: StagePatch;
}

/** What a drag does to what it holds; `side` puts a new corner into a side. */
export type Dragging = "body" | "corner" | "side" | "turn" | "raise";

export interface DeskState {
  /** `opening` until what was kept is read; `empty` when there is nothing to show. */
  status: "opening" | "open" | "empty";
  history: History | null;
  /** Key of the open site on this device; empty when there is none. */
  siteId: string;
  turn: Turn;
  /** What this page has of the open site beyond what is kept, after another page took it over. */
  unsaved: boolean;
  schemeId: string;
  estimate: Estimate | null;
  /** Why there is no estimate, when the engine failed on this site. */
  fault: string | null;
  /** The five figures now, and as they were before the last edit (or before the drag). */
  figures: Figures | null;
  before: Figures | null;
  /** How often undo or redo was used; fields let go of what was typed when it grows. */
  steps: number;
  /** The edit that `before` is compared over. */
  lastEdit: string | null;
  /** What the leaf shows and a drag holds; `also` has what else is picked with it. */
  selected: Picked | null;
  also: readonly Picked[];
  /** A tap adds to what is picked or takes away: for fingers, which have no Shift key. */
  several: boolean;
  /** How often the view was asked to turn to what is selected; the scene answers when it grows. */
  frameAsked: number;
  placing: { kind: PlaceKind; what?: string } | null;
  /** Whether places drawn or dragged in the scene are held by what is near and by round numbers. */
  snapping: boolean;
  /** Ends of the section's line as far as it is drawn: none, one or two; null when there is none. */
  section: readonly PlanPoint[] | null;
  /** Taps measure; the places are kept by the scene alone. */
  measuring: boolean;
  /** Taps show where water runs; the ways are kept by the scene alone. */
  watering: boolean;
  /** The slope that drains to the picked work is shown. */
  draining: boolean;
  stage: Stage;
  view: "orbit" | "plan" | "walk";
  theme: "light" | "dark" | "system";
  leaf: Leaf;
  /** The leaf for a site of one's own lies open over the page. */
  starting: boolean;
  keeping: Keeping;
  /** Sites that have left the desk and could not be kept. */
  setAside: readonly Site[];
  unopened: Unopened | null;
  /** A site whose ground is being made away from the page. */
  waiting: LongJob | null;
  /** What is drawn of a large survey; null for others, which are worked out in the same turn. */
  drawn: Drawn | null;
  /** What has been asked for is not drawn yet, or could not be worked out. */
  working: { fault: string | null } | null;
  /** One line that tells what just happened; empty when there is nothing to tell. */
  notice: string;
}

export interface DeskActions {
  /** Opens what was kept, else the first example, else nothing. */
  begin: () => Promise<void>;
  /** One named edit of the document. */
  edit: (name: string, change: (site: Site) => Site) => void;
  /** Marks where a drag begins; its step is named after what it does, moving unless said. */
  dragBegin: (selection: Picked, doing?: Dragging) => void;
  dragMove: (step: DragStep) => void;
  dragEnd: (cancelled: boolean) => void;
  undo: () => void;
  redo: () => void;
  /** Goes straight to a step of the history, by its index in `stepsOf`. */
  stepTo: (index: number) => void;
  /** Picks something, turns the view to it and opens the leaf it belongs to. */
  flyTo: (picked: Picked, leaf: Leaf) => void;
  select: (selection: Picked | null) => void;
  /** `what` is the kind of a limit, or the id of the building that an outlet is for. */
  startPlacing: (kind: PlaceKind, what?: string) => void;
  stopPlacing: () => void;
  place: (at: readonly PlanPoint[]) => void;
  /** Begins a section (its ends are set by the next two taps), or shows one along a line. */
  startSection: (line?: readonly [PlanPoint, PlanPoint]) => void;
  /** Sets the next end of the section that is being drawn. */
  tapSection: (at: PlanPoint) => void;
  /** Moves the section's ends. */
  moveSection: (line: readonly [PlanPoint, PlanPoint]) => void;
  stopSection: () => void;
  duplicateSelected: () => void;
  removeSelected: () => void;
  /** Takes one corner of an outline or bend of a path away, or tells why it stays. */
  removeCorner: (picked: Picked, corner: number) => void;
  /** Copies the picked works to another scheme, at the same places. */
  copyToScheme: (schemeId: string) => void;
  /** Moves what is picked by m east and north. */
  nudge: (by: PlanPoint) => void;
  /** Raises what is picked by m; lowers it when negative. */
  raise: (by: number) => void;
  /** Moves what is picked by m east, north and up, in one step. */
  moveBy: (by: readonly [east: number, north: number, up: number]) => void;
  /** A tap on a thing or on nothing (null); with `add`, or when several are picked, it adds or takes away. */
  pick: (thing: Picked | null, add: boolean) => void;
  /** Picks these things, with `add` along with what is picked. */
  pickThese: (things: readonly Picked[], add: boolean) => void;
  /** Picks all works of the scheme that are drawn. */
  pickAll: () => void;
  setSeveral: (on: boolean) => void;
  /** Locks, unlocks, hides or shows things: those that are picked, unless others are named. */
  mark: (mark: Mark, on: boolean, things?: readonly Thing[]) => void;
  /** Shows all that is hidden in this scheme and its ground. */
  showAll: () => void;
  show: (
    part: Partial<
      Pick<
        DeskState,
        | "stage"
        | "view"
        | "snapping"
        | "measuring"
        | "watering"
        | "draining"
        | "theme"
        | "leaf"
        | "starting"
      >
    >,
  ) => void;
  chooseScheme: (schemeId: string) => void;
  /**
   * Reads a site file's text; a damaged one leaves the open site untouched. True when opened, or
   * when it is so long that it is read away from the page: then it opens in a while.
   */
  openText: (text: string, file: string) => boolean;
  /** Fetches an example and puts it on the desk as it came; true when it is there. */
  openExample: (id: string) => Promise<boolean>;
  /** Puts a site of the list on the desk. Resolves to true when it is there. */
  openKept: (id: string) => Promise<boolean>;
  /** Puts on the desk what comes next when the open site was deleted. */
  openNext: () => Promise<void>;
  /** Keys of the sites that other pages of this browser have. */
  sitesElsewhere: () => Promise<ReadonlySet<string>>;
  /** Makes this page the one that changes the open site, though another page has it. */
  workHere: () => Promise<void>;
  /** Puts a copy of the open site, as it is on the desk, on the list and works on that. */
  workOnCopy: () => Promise<void>;
  /**
   * Puts a new site on the desk and on the list. Resolves to true when it is there, to false when it
   * was given up or no ground could be made of it.
   */
  startSite: (site: Site) => Promise<boolean>;
  /** The open site as file text with its file name, or null when none is open. */
  siteFile: () => { name: string; text: string } | null;
  /** Keeps the site in this browser at once; how that went is in `keeping`. */
  keepNow: () => Promise<void>;
  tell: (notice: string) => void;
  /** Tells the person that something could not be kept. */
  keepFailed: (fault: unknown) => void;
  /** Lets go of a site that could not be kept. */
  dropSetAside: (site: Site) => void;
  dismissUnopened: () => void;
  /** Gives up the site that waits for its ground; what is on the desk stays. */
  stopWaiting: () => void;
  /** Works out again what could not be worked out. */
  workAgain: () => void;
}

export type DeskStore = DeskState & DeskActions;
