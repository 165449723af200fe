export { besideLines, estimate, groundOf, schemeOf, surveyProblem } from "./estimate.js";
export { contours, groundAt, groundSlopeAt, lotEdge, surveyTriangles } from "./lookup.js";
export { hollowsOf, lineOnGround, waterFrom } from "./water.js";
export type { Pool, WaterWay, WorkRunoff } from "../runoff/index.js";
export { STREAM_REACH } from "../runoff/index.js";
export { stageContours } from "./stageContours.js";
export type { ContourLabel, LabelledContour, StageContours } from "./stageContours.js";
export { bedCourses } from "./bedCourses.js";
export type { BedCourse } from "./bedCourses.js";
export { columnAt, sectionAlong } from "./section.js";
export type { Column, ColumnPart, Section } from "./section.js";
export type { GroundKind, SectionArea } from "./sectionTypes.js";
export type { PipeAcross, PipeAlong } from "./pipesAcross.js";
export { heightOn } from "./heightOn.js";
export { layersAt, profileEvents } from "./profileReading.js";
export type { LayerAt, ProfileEvent } from "./profileReading.js";
export { foundLayers } from "./foundLayers.js";
export type { FoundArea, FoundLayers } from "./foundLayers.js";
export { hasCome, STAGE_NAMES, STAGES } from "./stages.js";
export { fiveFigures, isRock } from "./figures.js";
export type { Figures } from "./figures.js";
export { looseOf } from "./looseOf.js";
export { stageMesh } from "./stageMesh.js";
export { stagePatch } from "./stagePatch.js";
export type { StagePatch } from "./stagePatch.js";
export { foundPicture, foundShape } from "./foundPicture.js";
export type { FoundPicture, FoundShape } from "./foundPicture.js";
export { craneAtWork, diggerAtWork } from "./machinePlaces.js";
export type { CraneAtWork, DiggerAtWork } from "./machinePlaces.js";
export { changeBetween } from "./change.js";
export type { SchemeChange } from "./change.js";
export { shieldChange, withShield } from "./shield.js";
export type { ShieldChange } from "./shield.js";
export { deliveryCautions } from "../safety/index.js";
export type { HoleLayer, HoleReport, Ladder } from "../safety/index.js";
export { FACE } from "./types.js";
export type { ContourLine, Estimate, GroundMesh, Stage } from "./types.js";
export type { WorkQuantities } from "../dig/index.js";
export { listedPrice, pipeRowOf } from "../cost/index.js";
export type { CostLine, CostResult } from "../cost/index.js";
export { putInOf } from "./putIn.js";
export type { PutIn } from "./putIn.js";
export { unpricedOf } from "./unpriced.js";
export type { FabricCover, PieceKind, Unpriced, UnpricedPiece } from "./unpriced.js";
export {
  boreSize,
  FLOW_SETTINGS,
  flowRules,
  holesIn,
  joinedEnds,
  levelToMeet,
  partingsOf,
  pumpRows,
  soldSize,
} from "../flow/index.js";
export type { FlowResult, PipeCheck, PressureResult, StaticLift } from "../flow/index.js";
export { fittingRows, sizingTables } from "../hydraulics/index.js";
export { listedDays } from "../machines/index.js";
export type { MachinesResult, Range } from "../machines/index.js";
export { contourChoices, contourStep, foundContours } from "./foundContours.js";
export type { FoundContours } from "./foundContours.js";
export { groundTaken, makeGround, makePicture, takeGround, takePicture } from "./groundAhead.js";
export type { GroundAhead, PictureAhead } from "./groundAhead.js";
export {
  catalogueCranes,
  catalogueDiggers,
  chartRow,
  firstPlaces,
  insideRings,
  liftRules,
  placesBeside,
} from "../machines/index.js";
export type {
  ChartRow,
  Crane,
  Digger,
  HoleBeside,
  LiftCrane,
  LiftResult,
} from "../machines/index.js";
export { keptLonger, lineClearance } from "../machines/index.js";
export { PERMIT_ITEMS } from "../permit/index.js";
export type { Checklist, ChecklistItem } from "../permit/index.js";
export { aroundRings, bareGround } from "./planZones.js";
export { besideLine, pipeLength } from "../dig/index.js";
export type { Areas } from "../dig/index.js";
export { steepGround } from "./steepGround.js";
export type { SteepGround } from "./steepGround.js";
export {
  nearestLimits,
  publishedSetbacks,
  setbackBands,
  setbackField,
  isKeptOffWater,
  setbacksAsked,
  setbackLines,
  setbacksOf,
  setbackTables,
} from "../safety/index.js";
export {
  alongPath,
  invertLine,
  pathLength,
  rectangle,
  spoilCone,
  strip,
  subdivide,
  workCorners,
  workMiddle,
  workOutline,
  workPlace,
} from "./workShapes.js";
export type { Cone, InvertLine } from "./workShapes.js";
export type {
  SetbackBand,
  SetbackField,
  SetbackKept,
  SetbackLine,
  SetbackTable,
} from "../safety/index.js";
export { earthColour, materialColour, soilColour, soilShade } from "./earthColours.js";
export type { SoilShade } from "./earthColours.js";
export { signedArea } from "../ground/index.js";
