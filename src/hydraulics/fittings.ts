import fittings from "../../shared/catalogue/fittings.json" with { type: "json" };
import { GRAVITY, boreArea, frictionSlope, type FrictionLaw } from "./friction.js";

/** A fitting as the catalogue has it: the length of its own pipe that loses as much. */
export interface FittingRow {
  id: string;
  name: string;
  /** m of pipe by inside diameter, m, smallest first. */
  rows: readonly { inside: number; length: number }[];
}

/** Fittings that can be named, and where their lengths come from. */
export function fittingRows(): { rows: readonly FittingRow[]; source: string } {
  return { rows: fittings.fittings, source: fittings.source };
}

/**
 * Length of straight pipe, m, that loses as much as one fitting of this kind and bore, m: between two
 * rows of the table in proportion to the bore, beyond the ends in proportion to the nearest row.
 * Undefined for a kind that the catalogue lacks.
 */
export function fittingLength(id: string, inside: number): number | undefined {
  const rows = fittings.fittings.find((row) => row.id === id)?.rows;
  const first = rows?.[0];
  const last = rows?.at(-1);
  if (rows === undefined || first === undefined || last === undefined) return undefined;
  if (inside <= first.inside) return (first.length * inside) / first.inside;
  for (let i = 1; i < rows.length; i += 1) {
    const [below, above] = [rows[i - 1]!, rows[i]!];
    if (inside > above.inside) continue;
    const share = (inside - below.inside) / (above.inside - below.inside);
    return below.length + share * (above.length - below.length);
  }
  return (last.length * inside) / last.inside;
}

/** Head lost in a fitting or valve, m: K v² / 2g. */
export function minorLoss(k: number, flow: number, inside: number): number {
  return (k * (flow / boreArea(inside)) ** 2) / (2 * GRAVITY);
}

/** The coefficient K that loses as much as a length of pipe, m, does at a flow, m³/s. */
export function coefficientOf(
  length: number,
  law: FrictionLaw,
  flow: number,
  inside: number,
): number {
  return (frictionSlope(law, flow, inside) * length) / minorLoss(1, flow, inside);
}

/**
 * Loss coefficient of a valve open by a share from 0 (shut) to 1: K of the open valve ÷ share². That
 * is the law of a valve whose flow at one loss grows in proportion to its opening ("linear
 * characteristic", control-valve practice); a real ball or gate valve differs. Infinite when shut.
 */
export function valveCoefficient(openLoss: number, open: number): number {
  return openLoss / (open * open);
}

/** The opening, 0 to 1, at which a valve has this K; 1 when even open it has more. */
export function valveOpening(openLoss: number, k: number): number {
  return k <= openLoss ? 1 : Math.sqrt(openLoss / k);
}
