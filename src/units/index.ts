/**
 * Units: SI inside, what people write and read outside. Nothing else converts.
 *
 * Every kind of quantity is a `Measure`:
 *
 *     length.parse(`6'4 1/2"`, "us")            // { ok: true, value: 1.9431 }   (m)
 *     length.parse("six", "us")                 // { ok: false, text: "“six” was not understood: …" }
 *     length.parse("300", "us", { bareUnit: "mm" })
 *     length.print(1.9431, "us")                // "6′ 4½″"
 *     length.print(1.9431, "us", { digits: 2 }) // "6.38 ft"
 *     elevation.print(735, "us")                // "2,411.42 ft"
 *     earthVolume.print(40, "us")               // "52.3 yd³";  { unit: "ft³", digits: 0 } "1,413 ft³"
 *     earthVolume.unitLabel("metric")           // "m³"
 *     earthVolume.toSystem(40, "us")            // 52.318… for axes and sliders; fromSystem goes back
 *     pipeSlope.print(1 / 48, "us")             // "2.1%";  { slope: "per-foot" } "¼ in per ft"
 *     wallSlope.print(1.5, "us")                // "1½ : 1";  0 is "vertical"
 *     bearing.print(135, "us", { bearing: "quadrant" })  // "S 45°00′ E"
 *     money("USD").print(1234.6, "us")          // "$1,235"
 *     hours.print(9.4, "us"), days.print(2, "us")        // "9.4 h", "2.0 d" (values in h and d)
 *
 * Kinds and what the value is: length, distance (signed), elevation (signed), size: m · area, land:
 * m² · earthVolume, liquidVolume: m³ · flow, dailyFlow, digRate: m³/s · head: m of water · pressure:
 * Pa · mass, haulMass: kg · density: kg/m³ · velocity: m/s · power: W · minutes: s · hours: h ·
 * days: d · pipeSlope: rise per run · wallSlope: run per 1 of rise · bearing: degrees · money(code).
 *
 * Any unit of the kind is accepted in either system; a number without a unit is in `unitLabel`.
 * Decimal comma: see `readNumber` in reading.ts (`1,9 m` is 1.9 and `1,900 mm` is 1900 on both). "ton" is 2000 lb on a US site and refused on a metric one.
 */
export {
  area,
  dailyFlow,
  days,
  density,
  digRate,
  distance,
  earthVolume,
  elevation,
  flow,
  haulMass,
  head,
  hours,
  land,
  length,
  liquidVolume,
  mass,
  minutes,
  power,
  pressure,
  size,
  velocity,
} from "./kinds.js";
export { distanceAtLeast, distanceAtMost } from "./cautious.js";
export { pipeSlope, wallSlope } from "./slope.js";
export { bearing } from "./bearing.js";
export { markLength, printMarked } from "./marked.js";
export type { MarkedKind } from "./marked.js";
export { money } from "./money.js";
export { plainNumber } from "./measure.js";
export { plainText, readNumber } from "./reading.js";
export type { Measure, Parsed, ParseOptions, PrintOptions, UnitSystem } from "./measure.js";
export { ticks } from "./ticks.js";
export type { Tick } from "./ticks.js";
export { FOOT, US_SURVEY_FOOT } from "./table.js";
export type { UnitSymbol } from "./table.js";
