export { useDesk } from "./siteStore.js";
export { LEAVES } from "./deskState.js";
export type { DeskState, DragStep, Keeping, Leaf, Picked, Unopened } from "./deskState.js";
export { examples } from "./examples.js";
export { fiveFigures } from "./figures.js";
export type { Figures } from "./figures.js";
export {
  GRAVITY_PIPE,
  pipeChoices,
  pipeSize,
  PRESSURE_PIPE,
  tankBody,
  tankChoices,
} from "./placed.js";
export type { PlaceKind } from "./placed.js";
