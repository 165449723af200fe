import { boreArea, GRAVITY } from "./friction.js";

/**
 * Coefficient of a hole drilled in plastic pipe: that of q = 11.79 d² √h (gpm, in, ft; recalled) in
 * q = C A √(2 g h).
 */
export const ORIFICE_COEFFICIENT = ((): number => {
  const gallonsPerMinute = 3.785411784e-3 / 60;
  const inch = 0.0254;
  const foot = 0.3048;
  return (11.79 * gallonsPerMinute) / (boreArea(inch) * Math.sqrt(2 * GRAVITY * foot));
})();

/**
 * Flow out of a hole, m³/s: C A √(2 g h). `diameter` m, `head` m of water inside over outside. None
 * at or below no head: a hole that lies in air lets air in, it does not suck.
 */
export function orificeFlow(diameter: number, head: number, coefficient: number): number {
  if (head <= 0) return 0;
  return coefficient * boreArea(diameter) * Math.sqrt(2 * GRAVITY * head);
}

/** The head, m, at which a hole gives `flow`, m³/s. */
export function orificeHead(diameter: number, flow: number, coefficient: number): number {
  return (flow / (coefficient * boreArea(diameter))) ** 2 / (2 * GRAVITY);
}
