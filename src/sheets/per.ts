import type { CostLine } from "../estimate/index.js";
import type { Site } from "../site/index.js";
import { earthVolume, haulMass, length, liquidVolume } from "../units/index.js";
import { words } from "../words/index.js";

/** What a price is for, as this site's people buy it. */
export interface Per {
  words: string;
  /** Whether “one” goes before it: one gallon, but all of it. */
  counted: boolean;
  /** How many of the price list's own unit (1,000 kg, m³, m, litre) one of it is. */
  size: number;
}

const KG_IN_TONNE = 1000;
const LITRES_IN_CUBIC_METRE = 1000;

/** A unit that prices are for. On a US site: the short ton, the cubic yard, the foot, the gallon. */
export function perOf(per: CostLine["per"], units: Site["units"]): Per {
  const us = units === "us";
  switch (per) {
    case "t":
      return {
        words: us ? words.costLeaf.per.ton : words.costLeaf.per.tonne,
        counted: true,
        size: haulMass.fromSystem(1, units) / KG_IN_TONNE,
      };
    case "m3":
      return {
        words: us ? words.costLeaf.per.yard : words.costLeaf.per.cubicMetre,
        counted: true,
        size: earthVolume.fromSystem(1, units),
      };
    case "m":
      return {
        words: us ? words.costLeaf.per.foot : words.costLeaf.per.metre,
        counted: true,
        size: length.fromSystem(1, units),
      };
    case "L": {
      const size = liquidVolume.fromSystem(1, units) * LITRES_IN_CUBIC_METRE;
      return {
        words: us ? words.costLeaf.per.gallon : words.costLeaf.per.litre,
        counted: true,
        size,
      };
    }
    default:
      return { words: words.costLeaf.per[per], counted: per !== "each" && per !== "lump", size: 1 };
  }
}

/** How many of the price list's own unit a line's quantity is. */
export function countOf(line: CostLine): number {
  const { value } = line.quantity;
  if (line.per === "t") return value / KG_IN_TONNE;
  return line.per === "L" ? value * LITRES_IN_CUBIC_METRE : value;
}
