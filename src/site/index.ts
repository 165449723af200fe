export { NATIVE, siteSchema } from "./schema.js";
export type {
  Accepted,
  Access,
  Bed,
  Branch,
  Building,
  ChecklistAnswer,
  Flow,
  Layer,
  Lift,
  Limit,
  LocalRule,
  Material,
  MaterialKind,
  OwnDigger,
  OwnLine,
  Pad,
  Pile,
  Pipe,
  PlanPoint,
  PressureSystem,
  PriceChoice,
  Probe,
  PlanWindow,
  PrintedSheets,
  Project,
  Pump,
  Scheme,
  Setback,
  Site,
  Strip,
  SurveyPoint,
  Tank,
  Trench,
  Walls,
  Work,
} from "./schema.js";
export type { Finding, Quantity } from "./finding.js";
export { SITE_FILE_ENDING, siteFileName, siteFileStem } from "./fileName.js";
export { parted } from "./parted.js";
export { thingNamed } from "./thingNamed.js";
export type { NamedThing } from "./thingNamed.js";
export { isBuriedLine, LIMIT_KINDS, limitKind } from "./limitKinds.js";
export type { LimitKind, LimitKindId, LimitShape } from "./limitKinds.js";
export {
  acceptFinding,
  acceptanceOf,
  setLocalRule,
  setSetbacks,
  withdrawAcceptance,
} from "./ruleEdits.js";
export { catalogueName } from "./catalogueName.js";
export { isLocated, setLocate } from "./locateEdits.js";
export { answerChecklist, setProject } from "./projectEdits.js";
export { isLeftOut, printSheet, setPaper, setPlanWindow } from "./sheetsEdits.js";
export type { SheetSubjects } from "./sheetsEdits.js";
export { asksLessThanFederal, publishedRule, ruleOf, rulesOf } from "./ruleBook.js";
export type { Locality, Rule } from "./ruleBook.js";
export { moveStand } from "./standEdits.js";
export { classRun, layerClass, layerRun, runsByMaterial } from "./layerRun.js";
export { soilClass } from "./soilClass.js";
export type { SoilAnswers, SoilClass, SoilClassId } from "./soilClass.js";
export { onlyKnown } from "./onlyKnown.js";
export { problemLine } from "./problem.js";
export type { Outcome, SiteProblem, SiteProblemCode } from "./problem.js";
export {
  addLayer,
  addLimit,
  addPoint,
  addProbe,
  addWork,
  changeLimit,
  changePipe,
  changePoint,
  changeProbe,
  changeScheme,
  changeWork,
  findWork,
  freshId,
  moveLimit,
  moveWork,
  removeLayer,
  removeLimit,
  removePoint,
  removeProbe,
  removeWork,
  renameSite,
  renameWork,
  reorderWork,
  setDoubt,
  setLayer,
  setMaterial,
  setTolerance,
  setUnits,
  stripsOver,
  turnWork,
  withSurvey,
  workMovedBy,
} from "./edits.js";
export { copyWorksTo, duplicateWork, duplicateWorks, freshName } from "./copies.js";
export type { Copied } from "./copies.js";
export { hasMark, hiddenThings, locksBroken, setMark, showAll } from "./marks.js";
export type { Mark, Thing } from "./marks.js";
export {
  addCorner,
  cornerKept,
  cornersOf,
  cornersOfWork,
  moveOneCorner,
  removeCorner,
  sideCount,
} from "./corners.js";
export type { Corners } from "./corners.js";
export { findLimit, layLotLine, limitCorners, lotLinesOf } from "./limitEdits.js";
export { heightOf, raiseWork, workRaisedBy } from "./raising.js";
export {
  copyScheme,
  freshSchemeId,
  removeScheme,
  renameScheme,
  setCosts,
  leaveDiggerOpen,
  setMachines,
  setPrice,
  setPriceOfAll,
} from "./schemeEdits.js";
export { PRICE_UNITS } from "./costsSchema.js";
export { guessedLayers, guessedNote, withMeasured } from "./guessed.js";
export { without, withoutAbsent } from "./absent.js";
export type { Changes } from "./absent.js";
export {
  addPressure,
  changeBranch,
  changeFlow,
  changePressure,
  removePressure,
  setFlowRule,
} from "./flowEdits.js";
export {
  commit,
  mark,
  MOST_STEPS,
  pass,
  record,
  redo,
  redoName,
  restore,
  startHistory,
  stepsOf,
  stepTo,
  undo,
  undoName,
} from "./history.js";
export type { History, HistoryStep, NamedStep } from "./history.js";
export { catalogueMaterials, materialsOf } from "./catalogue.js";
export { checkSite, readSite, writeSite } from "./read.js";
export { DEFAULT_PIPE_NAME } from "./pipeNames.js";
export { areaOutline, centreOfArea, outlineProblem } from "./planShape.js";
export { siteJsonSchema } from "./jsonSchema.js";
export { staysInGround } from "./staysInGround.js";
