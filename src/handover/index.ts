export { fileName } from "./job.js";
export type { HandoverFile, HandoverJob, HandoverMaker, MakeOptions, Progress } from "./job.js";
export type {
  HandoverChoices,
  LeftOut,
  MarkChoice,
  OrderChoices,
  PictureChoices,
  PictureKind,
  StakeChoices,
  ViewChoices,
} from "./choices.js";
export { LEFT_OUT } from "./choices.js";
export { copyWithout } from "./copy/copyWithout.js";
/** What writes GIFs, with the library that it brings. */
export const loadGifWriter = async () => (await import("./pictures/gif.js")).GifWriter;
/** What makes pictures of SVG, with the library that it brings; see `loadRaster`. */
export const loadRasterLoader = async () => (await import("./pictures/raster.js")).loadRaster;
export type { GifFrame } from "./pictures/gif.js";
export { HANDOVER_KINDS } from "./makers.js";
export type { HandoverKind } from "./makers.js";
export { countOf, perOf } from "../sheets/index.js";
export type { Per } from "../sheets/index.js";
export { orderItems, SUPPLIERS } from "./orders/orderItems.js";
export { messagesFor, orderText } from "./orders/orderText.js";
export type { MessageTo } from "./orders/orderText.js";
export type { OrderItem, SupplierKind } from "./orders/item.js";
export { markOffer, usablePair } from "./stakes/markOffer.js";
export type { MarkOffer } from "./stakes/markOffer.js";
export { FLATTEST } from "./stakes/marks.js";
export type { Mark, PairJudged } from "./stakes/marks.js";
export { amountText } from "./amountText.js";
export type { AmountKind } from "./amountText.js";
export { fromEach, loadingUnit, loadingWords, onEach, percolation } from "../sheets/index.js";
export { figureRows } from "./page/figureRows.js";
export type { FigureRow } from "./page/figureRows.js";
export { findingsShown, isWithout, leftOutLines } from "./page/leftOut.js";
export { madeDay } from "./page/madeDay.js";
export { pageOf } from "./page/pageOf.js";
export { isTemplate, templateOf } from "./page/template.js";
export type { TemplateParts } from "./page/template.js";
export { isSiteLink } from "./link/linkMark.js";
export { TooLongForLink } from "./link/makeLink.js";
export { viewSvg } from "./pictures/viewSvg.js";
export { linkOf } from "./link/linkOf.js";
export type { SiteLink } from "./link/linkOf.js";
export { siteOfLink } from "./link/siteOfLink.js";
