export { Bands } from "./bands.js";
export { BoxIndex } from "./boxIndex.js";
export { adoptGround, baseGround, trusted } from "./base.js";
export type { BaseGround } from "./base.js";
export { BLOCK_SIZE, blocksIn, trianglesIn } from "./blocks.js";
export type { Blocks } from "./blocks.js";
export { areaOf, integrate, minus, surfaceOf } from "./cell.js";
export type { Cell, CellLayer } from "./cell.js";
export { groundContours, netOfGround } from "./cellContours.js";
export { checkGround } from "./check.js";
export { groundColumn } from "./column.js";
export type { ColumnLayer } from "./column.js";
export { placeLabels } from "./contourLabels.js";
export type { LabelPlace, LabelRoom } from "./contourLabels.js";
export { contourLines } from "./contours.js";
export type { Contour } from "./contours.js";
export { LayeredGround } from "./layered.js";
export type { Box } from "./cellGround.js";
export { insideOutline, outlineSurface, signedArea, tidyOutline, turn } from "./outline.js";
export type { Place } from "./outline.js";
export { packTin, unpackTin } from "./packed.js";
export type { PackedTin } from "./packed.js";
export type { SurveyProblem } from "./places.js";
export { cellAt, cellsAlong, profileAlong, valueAt } from "./profile.js";
export type { CellStretch, Stretch } from "./profile.js";
export { groundSection, groundSurface } from "./section.js";
export type { GroundSection, SectionPiece } from "./section.js";
export type { SectionPlace } from "./slabEdges.js";
export { thicknessAt } from "./probes.js";
export { waterTable } from "./waterTable.js";
export { Sum } from "./sum.js";
export { ABOVE, higherOf, level, lifted, lowerOf, plane } from "./surface.js";
export type { Surface } from "./surface.js";
export { Tally } from "./tally.js";
export type { Point } from "./tally.js";
export {
  BuildCancelled,
  buildTin,
  corners,
  elevationAt,
  slopeAt,
  triangleAt,
  WELD_TOLERANCE,
} from "./tin.js";
export type { BuildProgress, BuildStep, Tin } from "./tin.js";
