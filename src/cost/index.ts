/** Quantities to money: priced lines with low, likely and high, and truckloads. Pure. */
export { listedPrice } from "./listed.js";
export { ownPumpPrices } from "./pumpLines.js";
export { costOf } from "./cost.js";
export { leftEarthFindings } from "./leftEarth.js";
export { cataloguePrices, cataloguePipes, pipeRowOf, priceRow } from "./catalogue.js";
export type { PipeRow, PriceRow } from "./catalogue.js";
export {
  boughtMaterials,
  DEFAULT_TRUCK_VOLUME,
  importLoads,
  loadsOf,
  massInPlace,
  SHORTFALL_MATERIAL,
} from "./loads.js";
export type { CostLine, CostResult, ImportLoads, Loads, PriceUnit } from "./types.js";
