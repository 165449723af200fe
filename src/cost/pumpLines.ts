import { chosenPrice } from "../machines/index.js";
import type { Scheme } from "../site/index.js";
import { priceRow } from "./catalogue.js";
import type { PriceRow } from "./catalogue.js";
import { costLine, countOf } from "./line.js";
import type { Pricing } from "./line.js";
import type { CostLine } from "./types.js";

/** The line of the price list that stands for the set of any pump. */
const ANY_SET = "pump-set";

/** Price id of the set with this pump, which no price list has: it is the person's own. */
export const pumpPriceId = (pumpId: string): string => `${ANY_SET}-${pumpId}`;

/** Every price id that the pumps of a scheme may have. */
export function pumpPriceIds(scheme: Scheme): string[] {
  const systems = scheme.flow?.pressure ?? [];
  return systems.flatMap(({ pumps }) => pumps.map(({ id }) => pumpPriceId(id)));
}

/** A price row for each pump that the person has priced, as the simulation draws it. */
export function ownPumpPrices(scheme: Scheme): PriceRow[] {
  const own = new Set(scheme.prices?.map(({ id }) => id));
  const row = priceRow(ANY_SET);
  const ids = new Set(pumpPriceIds(scheme).filter((id) => own.has(id)));
  return [...ids].map((id) => ({ ...row, id }));
}

/**
 * A line for each pressure system, by the pump that it uses. Until that pump has a price of its own,
 * the price of any set stands, and the source says so.
 */
export function pumpLines(pricing: Pricing, scheme: Scheme): CostLine[] {
  const any = priceRow(ANY_SET);
  return (scheme.flow?.pressure ?? []).map((system) => {
    const pump = system.pumps.find(({ id }) => id === system.pump);
    const name = pump?.name ?? system.pump;
    const priceId = pumpPriceId(system.pump);
    const priced = pricing.choices?.some(({ id }) => id === priceId) === true;
    const set = chosenPrice(any.id, any, any.source, pricing.choices);
    const row = {
      ...any,
      ...set.price,
      id: priceId,
      source: `no price yet for this pump; ${set.source}`,
    };
    const line = costLine(pricing, row, {
      id: `${ANY_SET}:${system.id}`,
      name: `${any.name}: ${name}`,
      where: [system.tank],
      quantity: countOf(
        1,
        system.alternating === true
          ? `one set for ${system.name}, with two pumps that take turns: its price is to hold both`
          : `one set for ${system.name}`,
        "lump",
      ),
    });
    return priced ? line : { ...line, unpriced: true, own: set.own };
  });
}
