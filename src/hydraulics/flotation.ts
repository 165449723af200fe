import { GRAVITY } from "./friction.js";

/** kg/m³. */
export const WATER_DENSITY = 1000;

export interface FlotationAsk {
  /** Outside sizes of the body, m. */
  length: number;
  width: number;
  height: number;
  /** kg, empty. */
  emptyMass: number;
  /** m of groundwater over the underside. */
  water: number;
  /** m of soil over the top; negative counts as none. */
  cover: number;
  /** kg/m³ of the soil moist; in water it weighs less by as much as water. */
  soilDensity: number;
  /** kg that hold it down besides, weighed in water. */
  anchor: number;
  /** Least weight ÷ uplift that is wanted. */
  factor: number;
}

export interface Flotation {
  /** N, all of them. */
  uplift: number;
  tank: number;
  soil: number;
  anchor: number;
  /** Weight ÷ uplift; infinite where no water stands. */
  factor: number;
  /** What brings the factor to the wanted one, each alone: m of soil more, kg in water more; 0: none. */
  coverMore: number;
  anchorMore: number;
}

/**
 * An empty tank in groundwater: uplift is the weight of the water displaced, held by the tank, the
 * soil straight above it (submerged where the water stands over it; friction on its sides is left
 * out) and an anchor. Source of the method: Archimedes' principle; factor and soil weight are the
 * person's.
 */
export function flotation(ask: FlotationAsk): Flotation {
  const plan = ask.length * ask.width;
  const cover = Math.max(0, ask.cover);
  const drowned = Math.min(cover, Math.max(0, ask.water - ask.height));
  const uplift = plan * Math.min(Math.max(0, ask.water), ask.height) * WATER_DENSITY * GRAVITY;
  const soilMass = plan * (cover * ask.soilDensity - drowned * WATER_DENSITY);
  const weights = {
    tank: ask.emptyMass * GRAVITY,
    soil: soilMass * GRAVITY,
    anchor: ask.anchor * GRAVITY,
  };
  const weight = weights.tank + weights.soil + weights.anchor;
  const short = Math.max(0, ask.factor * uplift - weight);
  // Soil added on top may stand in water too: the lighter figure is used once the cover is drowned.
  const wet = ask.water > ask.height + cover ? WATER_DENSITY : 0;
  return {
    uplift,
    ...weights,
    factor: uplift > 0 ? weight / uplift : Infinity,
    coverMore: short / (plan * (ask.soilDensity - wet) * GRAVITY),
    anchorMore: short / GRAVITY,
  };
}
