import { amountMeasure } from "./amount.js";
import type { Measure } from "./measure.js";

/** A size, depth or width, m, not below zero. `6′ 4½″` (to ⅛ in) or `1.90 m`. */
export const length: Measure = amountMeasure({
  kind: "length",
  dimension: "length",
  held: "m",
  shown: { us: "ft", metric: "m" },
  digits: { us: 2, metric: 2 },
  signed: false,
  feetInches: 8,
  examples: { us: `6' 4 1/2", 76 in or 6.33 ft`, metric: "1.9 m, 190 cm or 1,900 mm" },
});

/** A distance, coordinate or offset, m, either sign. `62.3 ft` or `19.00 m`. */
export const distance: Measure = amountMeasure({
  kind: "distance",
  dimension: "length",
  held: "m",
  shown: { us: "ft", metric: "m" },
  digits: { us: 1, metric: 2 },
  signed: true,
  examples: { us: `62.5 ft, 62' 6" or 19 m`, metric: "19 m, 1,900 cm or 62.5 ft" },
});

/** An elevation, m, either sign. `2,411.35 ft` or `735.00 m`. */
export const elevation: Measure = amountMeasure({
  kind: "elevation",
  dimension: "length",
  held: "m",
  shown: { us: "ft", metric: "m" },
  digits: { us: 2, metric: 2 },
  signed: true,
  examples: { us: `2,411.35 ft, 2411' 4" or 735 m`, metric: "735 m, 735.12 or -1.5 m" },
});

/** A small size such as a pipe's bore, m, not below zero; bare numbers are inches or mm. */
export const size: Measure = amountMeasure({
  kind: "size",
  dimension: "length",
  held: "m",
  shown: { us: "in", metric: "mm" },
  digits: { us: 2, metric: 0 },
  signed: false,
  inches: 8,
  examples: { us: "4 in, 1 1/2 in or 100 mm", metric: "100 mm, 10 cm or 4 in" },
});

/** An area, m². `1,250 ft²` or `116.1 m²`. */
export const area: Measure = amountMeasure({
  kind: "area",
  dimension: "area",
  held: "m²",
  shown: { us: "ft²", metric: "m²" },
  digits: { us: 0, metric: 1 },
  signed: false,
  examples: { us: "1,250 sq ft or 0.5 acre", metric: "116 m² or 0.2 ha" },
});

/** Land, m² inside. `2.50 ac` or `1.01 ha`. */
export const land: Measure = amountMeasure({
  kind: "land area",
  dimension: "area",
  held: "m²",
  shown: { us: "ac", metric: "ha" },
  digits: { us: 2, metric: 2 },
  signed: false,
  examples: { us: "2.5 acres or 43,560 sq ft", metric: "1.2 ha or 900 m²" },
});

/** Earth, rock and gravel, m³ (the caller says bank, loose or compacted). `52.4 yd³`, `40.1 m³`. */
export const earthVolume: Measure = amountMeasure({
  kind: "volume",
  dimension: "volume",
  held: "m³",
  shown: { us: "yd³", metric: "m³" },
  digits: { us: 1, metric: 1 },
  signed: false,
  examples: { us: "50 yd³, 1,350 cu ft or 40 m³", metric: "40 m³ or 50 yd³" },
});

/** Water and effluent, m³ inside. `1,200 gal` or `4,542 L`. */
export const liquidVolume: Measure = amountMeasure({
  kind: "liquid volume",
  dimension: "volume",
  held: "m³",
  shown: { us: "gal", metric: "L" },
  digits: { us: 0, metric: 0 },
  signed: false,
  examples: { us: "1,200 gal, 160 cu ft or 4,500 L", metric: "4,500 L, 4.5 m³ or 1,200 gal" },
});

/** Flow in a pipe, m³/s. `14.0 gpm` or `0.88 L/s`. */
export const flow: Measure = amountMeasure({
  kind: "flow",
  dimension: "flow",
  held: "m³/s",
  shown: { us: "gpm", metric: "L/s" },
  digits: { us: 1, metric: 2 },
  signed: false,
  examples: { us: "14 gpm, 450 gpd or 0.9 L/s", metric: "0.9 L/s, 54 L/min or 14 gpm" },
});

/** Wastewater in a day, m³/s inside. `450 gal/d` or `1,703 L/d`. */
export const dailyFlow: Measure = amountMeasure({
  kind: "daily flow",
  dimension: "flow",
  held: "m³/s",
  shown: { us: "gal/d", metric: "L/d" },
  digits: { us: 0, metric: 0 },
  signed: false,
  examples: { us: "450 gpd or 1,700 L/d", metric: "1,700 L/d, 1.7 m³/d or 450 gpd" },
});

/** Earth moved in an hour, m³/s inside. `25.0 yd³/h` or `19.1 m³/h`. */
export const digRate: Measure = amountMeasure({
  kind: "digging rate",
  dimension: "flow",
  held: "m³/s",
  shown: { us: "yd³/h", metric: "m³/h" },
  digits: { us: 1, metric: 1 },
  signed: false,
  examples: { us: "25 yd³/h or 19 m³/h", metric: "19 m³/h or 25 yd³/h" },
});

/** Pumping head, m of water, either sign; psi and kPa are read as columns of water. `18.2 ft`. */
export const head: Measure = amountMeasure({
  kind: "head",
  dimension: "pressure",
  held: "m",
  shown: { us: "ft", metric: "m" },
  digits: { us: 1, metric: 2 },
  signed: true,
  examples: { us: "18 ft or 8 psi", metric: "5.5 m or 54 kPa" },
});

/** Pressure, Pa, either sign (gauge). `12.5 psi` or `86.2 kPa`. */
export const pressure: Measure = amountMeasure({
  kind: "pressure",
  dimension: "pressure",
  held: "Pa",
  shown: { us: "psi", metric: "kPa" },
  digits: { us: 1, metric: 1 },
  signed: true,
  examples: { us: "8 psi or 18 ft", metric: "54 kPa, 0.54 bar or 5.5 m" },
});

/** A weight to lift, kg. `12,500 lb` or `5,670 kg`. */
export const mass: Measure = amountMeasure({
  kind: "weight",
  dimension: "mass",
  held: "kg",
  shown: { us: "lb", metric: "kg" },
  digits: { us: 0, metric: 0 },
  signed: false,
  examples: { us: "12,500 lb, 6.25 tons or 5,670 kg", metric: "5,670 kg, 5.67 t or 12,500 lb" },
});

/** Earth and gravel by weight, kg inside. `62.5 ton` (short, 2000 lb) or `56.7 t`. */
export const haulMass: Measure = amountMeasure({
  kind: "load weight",
  dimension: "mass",
  held: "kg",
  shown: { us: "ton", metric: "t" },
  digits: { us: 1, metric: 1 },
  signed: false,
  examples: { us: "62 tons or 56 t", metric: "56 t, 56,000 kg or 62 short tons" },
});

/** Weight of earth by volume, kg/m³. `3,100 lb/yd³` or `1,839 kg/m³`. */
export const density: Measure = amountMeasure({
  kind: "density",
  dimension: "density",
  held: "kg/m³",
  shown: { us: "lb/yd³", metric: "kg/m³" },
  digits: { us: 0, metric: 0 },
  signed: false,
  examples: { us: "3,100 lb/yd³ or 115 lb/ft³", metric: "1,840 kg/m³ or 1.84 t/m³" },
});

/** Speed of water, m/s. `2.31 ft/s` or `0.70 m/s`. */
export const velocity: Measure = amountMeasure({
  kind: "velocity",
  dimension: "speed",
  held: "m/s",
  shown: { us: "ft/s", metric: "m/s" },
  digits: { us: 2, metric: 2 },
  signed: false,
  examples: { us: "2.3 ft/s or 0.7 m/s", metric: "0.7 m/s or 2.3 ft/s" },
});

/** Power of a pump or machine, W. `0.50 hp` or `0.37 kW`. */
export const power: Measure = amountMeasure({
  kind: "power",
  dimension: "power",
  held: "W",
  shown: { us: "hp", metric: "kW" },
  digits: { us: 2, metric: 2 },
  signed: false,
  examples: { us: "1/2 hp or 370 W", metric: "0.37 kW, 370 W or 1/2 hp" },
});

/** A short time, s inside, in minutes: a pump's run. `4.5 min`. */
export const minutes: Measure = amountMeasure({
  kind: "time",
  dimension: "time",
  held: "s",
  shown: { us: "min", metric: "min" },
  digits: { us: 1, metric: 1 },
  signed: false,
  examples: { us: "5 min, 90 s or 1 h 30 min", metric: "5 min, 90 s or 1 h 30 min" },
});

/** Machine or labour hours; the value is HOURS (as in the estimate), not seconds. `9.4 h`. */
export const hours: Measure = amountMeasure({
  kind: "time",
  dimension: "time",
  held: "h",
  shown: { us: "h", metric: "h" },
  digits: { us: 1, metric: 1 },
  signed: false,
  examples: { us: "9.5 h, 45 min or 2 h 30 min", metric: "9.5 h, 45 min or 2 h 30 min" },
});

/** Working days; the value is DAYS. Not converted to hours: a working day is the user's own. */
export const days: Measure = amountMeasure({
  kind: "number of days",
  dimension: "days",
  held: "d",
  shown: { us: "d", metric: "d" },
  digits: { us: 1, metric: 1 },
  signed: false,
  examples: { us: "3 d or 1/2 day", metric: "3 d or 1/2 day" },
});
