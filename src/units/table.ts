/**
 * The one table of units: every conversion in the app comes from here.
 *
 * Sources. NIST Special Publication 811 (2008), *Guide for the Use of the International System of
 * Units*, Appendix B: international foot 0.3048 m exactly, inch 0.0254 m exactly, avoirdupois pound
 * 0.453 592 37 kg exactly, short ton 2000 lb, US liquid gallon 231 in³ = 3.785 411 784 L exactly,
 * acre of 43,560 ft² (international feet here; the survey acre is 4 parts in a million larger),
 * pound-force per square inch 6.894 757 E+03 Pa, conventional foot of water 2.989 067 E+03 Pa,
 * horsepower (550 ft·lbf/s) 7.456 999 E+02 W. The last three are computed from the exact constants
 * and checked against those rounded figures in the tests. (Figures recalled, not re-read.)
 *
 * US survey foot: 1200/3937 m exactly; retired after 2022 by NIST and NOAA, Federal Register notice
 * of 5 October 2020 (recalled), yet older surveys and state plane coordinates are in it.
 */

/** m: the international foot, exact. */
export const FOOT = 0.3048;
/** m: the US survey foot, exact as a fraction; for old surveys and state plane coordinates. */
export const US_SURVEY_FOOT = 1200 / 3937;

const INCH = FOOT / 12;
const YARD = FOOT * 3;
const GALLON = 231 * INCH ** 3;
const LITRE = 1e-3;
const POUND = 0.45359237;
const STANDARD_GRAVITY = 9.80665;
const MINUTE = 60;
const HOUR = 3600;
const DAY = 86400;
/** Pa under 1 m of water of conventional density (1000 kg/m³) and standard gravity. */
const METRE_OF_WATER = 1000 * STANDARD_GRAVITY;

/** One unit: how it is printed, its size in the SI unit of its dimension, and how people write it. */
export interface UnitRow {
  readonly symbol: string;
  readonly size: number;
  /** Lower case; the printed symbol is accepted as well. */
  readonly names: readonly string[];
  /** Names that mean this only on a site in US units ("ton"); refused on a metric one. */
  readonly usNames?: readonly string[];
}

/** Units by dimension; `size` in m, m², m³, m³/s, Pa, kg, kg/m³, m/s, W and s. */
export const UNITS = {
  length: [
    { symbol: "m", size: 1, names: ["metre", "metres", "meter", "meters"] },
    { symbol: "cm", size: 0.01, names: ["centimetre", "centimetres", "centimeter", "centimeters"] },
    {
      symbol: "mm",
      size: 0.001,
      names: ["millimetre", "millimetres", "millimeter", "millimeters"],
    },
    { symbol: "km", size: 1000, names: ["kilometre", "kilometres", "kilometer", "kilometers"] },
    { symbol: "ft", size: FOOT, names: ["'", "ft.", "foot", "feet"] },
    { symbol: "in", size: INCH, names: ['"', "in.", "inch", "inches"] },
    { symbol: "yd", size: YARD, names: ["yd.", "yard", "yards"] },
    { symbol: "mi", size: 5280 * FOOT, names: ["mile", "miles"] },
  ],
  area: [
    { symbol: "m²", size: 1, names: ["m2", "m^2", "sq m", "square metres", "square meters"] },
    {
      symbol: "ft²",
      size: FOOT ** 2,
      names: ["ft2", "ft^2", "sq ft", "sq. ft", "sq. ft.", "sf", "square feet", "square foot"],
    },
    { symbol: "yd²", size: YARD ** 2, names: ["yd2", "yd^2", "sq yd", "sy", "square yards"] },
    { symbol: "in²", size: INCH ** 2, names: ["in2", "in^2", "sq in", "square inches"] },
    { symbol: "mm²", size: 1e-6, names: ["mm2", "mm^2", "sq mm"] },
    { symbol: "ac", size: 43560 * FOOT ** 2, names: ["acre", "acres"] },
    { symbol: "ha", size: 1e4, names: ["hectare", "hectares"] },
  ],
  volume: [
    { symbol: "m³", size: 1, names: ["m3", "m^3", "cu m", "cubic metres", "cubic meters"] },
    {
      symbol: "yd³",
      size: YARD ** 3,
      names: ["yd3", "yd^3", "cu yd", "cu. yd.", "cy", "cubic yards", "cubic yard", "yd", "yards"],
    },
    {
      symbol: "ft³",
      size: FOOT ** 3,
      names: ["ft3", "ft^3", "cu ft", "cu. ft.", "cf", "cubic feet", "cubic foot"],
    },
    { symbol: "gal", size: GALLON, names: ["gal.", "gallon", "gallons", "us gal"] },
    { symbol: "L", size: LITRE, names: ["litre", "litres", "liter", "liters"] },
  ],
  flow: [
    { symbol: "m³/s", size: 1, names: ["m3/s", "m^3/s"] },
    { symbol: "gpm", size: GALLON / MINUTE, names: ["gal/min", "gallons per minute"] },
    { symbol: "L/s", size: LITRE, names: ["lps", "litres per second", "liters per second"] },
    { symbol: "L/min", size: LITRE / MINUTE, names: ["lpm", "litres per minute"] },
    { symbol: "gal/d", size: GALLON / DAY, names: ["gpd", "gal/day", "gallons per day"] },
    { symbol: "gal/h", size: GALLON / HOUR, names: ["gph", "gal/hr", "gallons per hour"] },
    { symbol: "L/d", size: LITRE / DAY, names: ["l/day", "litres per day", "liters per day"] },
    { symbol: "m³/h", size: 1 / HOUR, names: ["m3/h", "m^3/h", "m³/hr", "m3/hr"] },
    { symbol: "m³/d", size: 1 / DAY, names: ["m3/d", "m³/day", "m3/day"] },
    { symbol: "ft³/s", size: FOOT ** 3, names: ["cfs", "ft3/s"] },
    {
      symbol: "yd³/h",
      size: YARD ** 3 / HOUR,
      names: ["yd3/h", "yd³/hr", "yd3/hr", "cy/h", "cy/hr", "yards per hour"],
    },
  ],
  pressure: [
    { symbol: "Pa", size: 1, names: ["pascal", "pascals"] },
    { symbol: "kPa", size: 1000, names: [] },
    { symbol: "bar", size: 1e5, names: ["bars"] },
    { symbol: "psi", size: (POUND * STANDARD_GRAVITY) / INCH ** 2, names: ["lb/in²", "lbf/in²"] },
    {
      symbol: "m",
      size: METRE_OF_WATER,
      names: ["m head", "m of head", "m of water", "metres", "meters"],
    },
    {
      symbol: "ft",
      size: FOOT * METRE_OF_WATER,
      names: ["'", "feet", "foot", "ft head", "ft of head", "ft of water", "feet of head"],
    },
  ],
  mass: [
    { symbol: "kg", size: 1, names: ["kilogram", "kilograms", "kilo", "kilos"] },
    { symbol: "lb", size: POUND, names: ["lb.", "lbs", "lbs.", "pound", "pounds"] },
    {
      symbol: "ton",
      size: 2000 * POUND,
      names: ["short ton", "short tons", "us ton", "us tons"],
      usNames: ["ton", "tons"],
    },
    { symbol: "t", size: 1000, names: ["tonne", "tonnes", "metric ton", "metric tons"] },
  ],
  density: [
    { symbol: "kg/m³", size: 1, names: ["kg/m3", "kg per m³", "kg per m3"] },
    {
      symbol: "lb/yd³",
      size: POUND / YARD ** 3,
      names: ["lb/yd3", "lb/cy", "lb per yd³", "lb per cubic yard"],
    },
    {
      symbol: "lb/ft³",
      size: POUND / FOOT ** 3,
      names: ["lb/ft3", "pcf", "lb per ft³", "lb per cubic foot"],
    },
    { symbol: "t/m³", size: 1000, names: ["t/m3", "t per m³"] },
  ],
  speed: [
    { symbol: "m/s", size: 1, names: ["metres per second", "meters per second"] },
    { symbol: "ft/s", size: FOOT, names: ["fps", "feet per second", "ft/sec"] },
  ],
  power: [
    { symbol: "W", size: 1, names: ["watt", "watts"] },
    { symbol: "kW", size: 1000, names: ["kilowatt", "kilowatts"] },
    { symbol: "hp", size: 550 * FOOT * POUND * STANDARD_GRAVITY, names: ["horsepower"] },
  ],
  time: [
    { symbol: "s", size: 1, names: ["sec", "second", "seconds"] },
    { symbol: "min", size: MINUTE, names: ["mins", "minute", "minutes"] },
    { symbol: "h", size: HOUR, names: ["hr", "hrs", "hour", "hours"] },
  ],
  days: [{ symbol: "d", size: 1, names: ["day", "days", "working day", "working days"] }],
} as const satisfies Record<string, readonly UnitRow[]>;

/** A dimension of the table. */
export type Dimension = keyof typeof UNITS;
/** The printed symbol of a unit, such as "ft", "yd³" or "kPa". */
export type UnitSymbol = (typeof UNITS)[Dimension][number]["symbol"];

/** The row of a unit in a dimension; throws when that dimension has no such unit. */
export function unitRow(dimension: Dimension, symbol: UnitSymbol): UnitRow {
  const rows: readonly UnitRow[] = UNITS[dimension];
  const row = rows.find((unit) => unit.symbol === symbol);
  if (row === undefined) throw new Error(`no unit "${symbol}" for ${dimension}`);
  return row;
}
