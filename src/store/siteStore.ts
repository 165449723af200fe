import { create } from "zustand";
import type { DeskState, DeskStore } from "./deskState.js";
import { copying } from "./copying.js";
import { cornering } from "./cornering.js";
import { deskTools } from "./deskTools.js";
import type { DeskTools } from "./deskTools.js";
import { editing } from "./editing.js";
import { opening } from "./opening.js";
import { lettingGo } from "./picks.js";
import { placing } from "./placing.js";
import { sectioning } from "./sectioning.js";
import { changing, picking } from "./several.js";
import { rememberCost } from "./stepCosts.js";

const beginning: DeskState = {
  status: "opening",
  history: null,
  siteId: "",
  turn: "here",
  unsaved: false,
  schemeId: "",
  estimate: null,
  fault: null,
  figures: null,
  before: null,
  lastEdit: null,
  steps: 0,
  selected: null,
  also: [],
  several: false,
  frameAsked: 0,
  placing: null,
  snapping: true,
  section: null,
  measuring: false,
  watering: false,
  draining: false,
  stage: "dug",
  view: "orbit",
  theme: "system",
  leaf: "dig",
  starting: false,
  keeping: { state: "kept" },
  setAside: [],
  unopened: null,
  waiting: null,
  drawn: null,
  working: null,
  notice: "",
};

/** Tells the keeper what has become of the desk. */
let follow: DeskTools["keeper"]["follow"] = () => undefined;

/** The desk's state: one document with its history, what is shown of it, and its estimate. */
export const useDesk = create<DeskStore>()((set, get) => {
  const tools = deskTools(get, (part) => set(lettingGo(get(), part)));
  follow = tools.keeper.follow;
  return {
    ...beginning,
    ...editing(tools),
    ...placing(tools),
    ...cornering(tools),
    ...copying(tools),
    ...picking(tools),
    ...changing(tools),
    ...sectioning(tools),
    ...opening(tools),
  };
});

useDesk.subscribe(rememberCost);
useDesk.subscribe((now, before) => follow(now, before));
