/** What a finding says, whatever its figures: so that a reason given for one covers no other. */
import { parted } from "./parted.js";

/** Feet and inches as printed: 5′ 0″, ¾″, 70′ 10½″. */
const FEET_INCHES = /(?:(?:\d[\d.,]*)?\s?[½¼¾⅛⅜⅝⅞]?\s?[′″]\s?)+/gu;

/** A figure with its unit; counts and ratios without one are left as they are. */
const AMOUNT =
  /(?:\d[\d.,]*)\s?[½¼¾⅛⅜⅝⅞]?\s?(?:ft²|ft³|ft|in(?! \d)|yd³|m²|m³|mm|cm|km|m|ac|ha|lb|kg|tons?|t|gal|L|%|°)(?![\p{L}²³])\.?/gu;

/** The first sentence of a finding with every amount taken out; alike in either system of units. */
export function gistOf(text: string): string {
  return parted(text)[0]
    .replace(FEET_INCHES, "# ")
    .replace(AMOUNT, "# ")
    .replace(/\s+/g, " ")
    .replace(/# (?=[,;:.)])/g, "#")
    .trim();
}
