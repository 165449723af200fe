/** Standard acceleration of free fall, m/s² (ISO 80000-3). */
export const GRAVITY = 9.80665;

/** How head is lost along a full pipe. */
export type FrictionLaw =
  | { by: "hazen-williams"; c: number }
  /** `roughness` in m, `viscosity` (kinematic) in m²/s. */
  | { by: "darcy"; roughness: number; viscosity: number };

/**
 * Hazen–Williams in SI, h/L = k (q/C)^1.852 / d^4.8655: the factor follows from the US form of
 * the standard formula (0.2083 ft per 100 ft, gpm, in), not from the rounded 10.67.
 */
const FOOT = 0.3048;
const GALLON_PER_MINUTE = 3.785411784e-3 / 60;
const FLOW_POWER = 1.852;
const BORE_POWER = 4.8655;
const HAZEN_WILLIAMS =
  (0.2083 / 100) * (100 / GALLON_PER_MINUTE) ** FLOW_POWER * (FOOT / 12) ** BORE_POWER;

/**
 * Head lost per m of pipe, m/m, with the sign of the flow (m³/s); `inside` is the bore, m.
 * Hazen–Williams: C 130 to 150 for plastic. Darcy–Weisbach: `darcyFactor`.
 * Throws on a bore that is not positive.
 */
export function frictionSlope(law: FrictionLaw, flow: number, inside: number): number {
  if (!(inside > 0)) throw new Error(`friction: got a bore of ${inside} m, expected more than 0`);
  const size = Math.abs(flow);
  if (size === 0) return 0;
  if (law.by === "hazen-williams") {
    return (Math.sign(flow) * HAZEN_WILLIAMS * (size / law.c) ** FLOW_POWER) / inside ** BORE_POWER;
  }
  const velocity = size / boreArea(inside);
  const reynolds = (velocity * inside) / law.viscosity;
  const factor = darcyFactor(reynolds, law.roughness / inside);
  return (Math.sign(flow) * factor * velocity * velocity) / (2 * GRAVITY * inside);
}

/** Area of a round bore, m². */
export function boreArea(inside: number): number {
  return (Math.PI / 4) * inside * inside;
}

const LAMINAR = 2000;
const TURBULENT = 4000;

/**
 * Darcy's friction factor: 64/Re where the flow is laminar (Re below 2000), the Colebrook–White
 * equation solved to rounding above 4000, and between them the power law that meets both, so that
 * the head lost rises all the way and a solver never sees a jump.
 * Source: Colebrook, Turbulent Flow in Pipes, J. Inst. Civil Engineers 11 (1939).
 */
export function darcyFactor(reynolds: number, relativeRoughness: number): number {
  if (!(reynolds > 0)) return Infinity;
  if (reynolds <= LAMINAR) return 64 / reynolds;
  if (reynolds >= TURBULENT) return colebrook(reynolds, relativeRoughness);
  return between(reynolds, relativeRoughness);
}

/**
 * Swamee and Jain's explicit formula (1976), good to about 1% of Colebrook for Re 5000 to 1e8 and
 * relative roughness 1e-6 to 0.05.
 */
export function swameeJain(reynolds: number, relativeRoughness: number): number {
  return 0.25 / Math.log10(relativeRoughness / 3.7 + 5.74 / reynolds ** 0.9) ** 2;
}

/** Newton's rule on x = 1/√f, from Swamee and Jain's value: three steps reach rounding. */
function colebrook(reynolds: number, relativeRoughness: number): number {
  const rough = relativeRoughness / 3.7;
  const viscous = 2.51 / reynolds;
  let x = 1 / Math.sqrt(swameeJain(reynolds, relativeRoughness));
  for (let step = 0; step < 20; step += 1) {
    const inner = rough + viscous * x;
    const off = x + (2 / Math.LN10) * Math.log(inner);
    const change = off / (1 + ((2 / Math.LN10) * viscous) / inner);
    x -= change;
    if (Math.abs(change) < 1e-14 * x) break;
  }
  return 1 / (x * x);
}

/**
 * f·Re² (which head lost is proportional to) from Re 2000 to 4000 on a straight line in log–log:
 * the power law through both ends, so it rises without a bend or a jump.
 */
function between(reynolds: number, relativeRoughness: number): number {
  const low = 64 * LAMINAR;
  const high = colebrook(TURBULENT, relativeRoughness) * TURBULENT * TURBULENT;
  const share = Math.log(reynolds / LAMINAR) / Math.log(TURBULENT / LAMINAR);
  return (low * (high / low) ** share) / (reynolds * reynolds);
}

/**
 * Kinematic viscosity of water, m²/s, 0 to 60 °C: dynamic viscosity by the Vogel form
 * 2.414e-5 × 10^(247.8 / (T − 140)) Pa·s with T in kelvin, over 1000 kg/m³ (recalled; within about 2.5%).
 */
export function waterViscosity(celsius: number): number {
  return (2.414e-5 * 10 ** (247.8 / (celsius + 273.15 - 140))) / 1000;
}
