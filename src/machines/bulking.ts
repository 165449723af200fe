/**
 * Bank, loose and compacted volume of the same earth, and truckloads. A volume in the bank is
 * ground as found; loose is in the bucket or the truck; compacted is as placed.
 */

/** m³ loose from m³ bank, by the material's `loose` (1 + swell). */
export function looseFromBank(bank: number, loose: number): number {
  return bank * loose;
}

/** m³ bank needed for m³ compacted, by the material's `compacted` (m³ compacted from 1 m³ bank). */
export function bankForCompacted(inPlace: number, compacted: number): number {
  return inPlace / compacted;
}

/** m³ loose that settle to m³ in place: through the bank and back. */
export function looseForCompacted(
  inPlace: number,
  material: { loose: number; compacted: number },
): number {
  return looseFromBank(bankForCompacted(inPlace, material.compacted), material.loose);
}

/** Volumes within this part of one load of a whole number of loads are that number. */
const LOAD_SLACK = 1e-9;

/**
 * Whole truckloads for m³ loose, each of `truckVolume` m³ loose (more than 0, else it throws).
 * The last load may be part full.
 */
export function truckLoads(loose: number, truckVolume: number): number {
  if (!(truckVolume > 0)) throw new Error(`truck volume: got ${truckVolume}, expected more than 0`);
  return Math.max(0, Math.ceil(loose / truckVolume - LOAD_SLACK));
}

/**
 * Compacted ÷ bank from a shrink percentage as the FHWA defines it: 1 ÷ (1 + percent ÷ 100), so
 * 25% is 0.8. FHWA Federal Lands Highway, Project Development and Design Manual, §9.4.C.
 */
export function compactedByFhwaShrink(percent: number): number {
  return 1 / (1 + percent / 100);
}

/**
 * Compacted ÷ bank from a shrink percentage as Nunnally defines it: 1 − percent ÷ 100, so 20% is
 * 0.8. Nunnally, Construction Methods and Management, ch. 2. Not the FHWA's percentage.
 */
export function compactedByNunnallyShrink(percent: number): number {
  return 1 - percent / 100;
}
