import type { PriceChoice } from "../site/index.js";
import type { Range } from "./types.js";

/** A price as it is used, with where it comes from. */
export interface ChosenPrice {
  price: Range;
  source: string;
  /** True when the scheme sets it, false when it is the catalogue's demo price. */
  own: boolean;
}

/**
 * The scheme's own price for a catalogue line if it sets one (low and high default to the price,
 * and are widened to hold it), else the catalogue's, which comes from `source`.
 */
export function chosenPrice(
  id: string,
  listed: Range,
  source: string,
  choices: readonly PriceChoice[] | undefined,
): ChosenPrice {
  const choice = choices?.find((c) => c.id === id);
  if (!choice) {
    const { low, likely, high } = listed;
    return { price: { low, likely, high }, source, own: false };
  }
  return {
    price: {
      low: Math.min(choice.low ?? choice.price, choice.price),
      likely: choice.price,
      high: Math.max(choice.high ?? choice.price, choice.price),
    },
    source: choice.source ?? "entered for this scheme",
    own: true,
  };
}
