import { GRAVITY } from "./friction.js";
import { WATER_DENSITY } from "./flotation.js";

/** Elastic modulus of the water, Pa (recalled: 2.07 GPa at 10 °C). */
const WATER_STIFFNESS = 2.07e9;

/** Short-term elastic modulus of rigid PVC, Pa (recalled: 400,000 psi, ASTM D1784 class 12454). */
export const PVC_STIFFNESS = 2.758e9;

/**
 * Speed of a pressure wave in a full pipe, m/s: √(K/ρ) ÷ √(1 + K d / (E t)), with bore `d` and wall
 * `t` in m and the pipe's modulus `E` in Pa. Source: Korteweg (1878), as in handbooks on water hammer.
 */
export function waveSpeed(inside: number, wall: number, stiffness: number): number {
  const rigid = Math.sqrt(WATER_STIFFNESS / WATER_DENSITY);
  return rigid / Math.sqrt(1 + (WATER_STIFFNESS * inside) / (stiffness * wall));
}

/**
 * Rise of head, m, when a flow at `velocity` (m/s) is stopped faster than the wave runs to the end
 * and back: a v / g. Source: Joukowsky (1898).
 */
export function surgeHead(speed: number, velocity: number): number {
  return (speed * velocity) / GRAVITY;
}

/** Power that lifts water, W: ρ g Q H. */
export function waterPower(flow: number, head: number): number {
  return WATER_DENSITY * GRAVITY * flow * head;
}

/**
 * Energy in a year, kWh, of a pump taking `watts` at `flow` (m³/s) for as long as it needs to move a
 * mean flow of `daily` (m³/s over the day).
 */
export function yearlyEnergy(watts: number, daily: number, flow: number): number {
  const hoursInYear = 8766;
  return (watts / 1000) * hoursInYear * (daily / flow);
}
