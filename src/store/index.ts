export { useDesk } from "./siteStore.js";
export { LEAVES } from "./deskState.js";
export type {
  DeskState,
  DragStep,
  Keeping,
  Leaf,
  LongJob,
  Picked,
  Turn,
  Unopened,
} from "./deskState.js";
export { useLooks } from "./looks.js";
export type { Looks } from "./looks.js";
export { examples } from "./examples.js";
export type { Example } from "./examples.js";
export { fiveFigures } from "../estimate/index.js";
export type { Figures } from "../estimate/index.js";
export { jobInWords } from "./jobInWords.js";
export { guessedLayers, guessedNote, withMeasured } from "../site/index.js";
export { levelDistance, nextLevel } from "./levels.js";
export { withPlacedLimit } from "./placedLimit.js";
export { lowestSide, outletInvert } from "./newOutlet.js";
export { tankDepth, withDepthKept } from "./tankDepth.js";
export type { TankDepth } from "./tankDepth.js";
export { simplified } from "./simplified.js";
export { typicalOf } from "./typical.js";
export type { TypicalKey } from "./typical.js";
export { benchToPlace, coverToPlace, sizesToPlace } from "./sizes.js";
export {
  GRAVITY_PIPE,
  namedFor,
  nextPipeName,
  pipeChoices,
  pipeSize,
  PRESSURE_PIPE,
  stripOver,
  stripPlace,
  tankBody,
  tankChoices,
} from "./placed.js";
export type { PlaceKind } from "./placed.js";
export { CHANCE_RUNS, giveUpAtRest, simulate, simulateAtRest, useChance } from "./chanceDesk.js";
export type { ChanceState, Simulated } from "./chanceDesk.js";
export { listedSteps } from "./stepCosts.js";
export type { ListedStep } from "./stepCosts.js";
export { allPicked, picksIn, samePicked } from "./picks.js";
export { nameOfPicked } from "./moved.js";
export {
  bringBack,
  closeShelf,
  copyOnShelf,
  fileOnShelf,
  keepPictureOf,
  openFromShelf,
  openShelf,
  openZip,
  removeFromShelf,
  renameOnShelf,
  useShelf,
  zipOfShelf,
} from "./shelfDesk.js";
export type { ShelfSite } from "./shelfDesk.js";
export { isZip } from "./shelf/zip.js";
export { isLarge } from "./groundTalk.js";
export { GifDesk } from "./gifDesk.js";
export {
  cancelMaking,
  drawSheets,
  leaveOut,
  makeFiles,
  restSheets,
  setOut,
  useHandover,
} from "./handoverDesk.js";
export { stakesOf } from "./stakesKept.js";
export type { HandoverState } from "./handoverDesk.js";
export type { SheetSeen } from "./handoverTalk.js";
