/** The site's own earth as a whole: what comes out, what goes back, what is left over. */
import { NATIVE, type Material } from "../site/index.js";
import type { ByMaterial, Earth, WorkQuantities } from "./types.js";

/**
 * Balances the earth, m³ and kg.
 *
 * - `bank` and `loose`: all that is cut, in the bank and heaped (× each material's `loose`).
 * - What goes back as "native" is measured compacted. From 1 m³ in the bank come `compacted` m³,
 *   of which the share `reusable` is fit. When more is fit than is needed, the same share of each
 *   material goes back, so the answer does not depend on the order of digging.
 * - Backfill that a later work digs out again ("native" in a cut) goes back first. In the bank it
 *   counts as it stands, so that `bank` is the sum of all cuts; loose and in mass it has the mean
 *   factors of the fit materials. `bank` = `reusedBank` + `surplusBank`.
 * - `surplus`: what is left over; `importCompacted`: what must come in because too little is fit.
 */
export function balanceEarth(
  works: readonly WorkQuantities[],
  materials: ReadonlyMap<string, Material>,
): Earth {
  const cut = totalCut(works);
  const wanted = works.reduce((sum, work) => sum + (work.fill[NATIVE] ?? 0), 0);
  const rows = Object.entries(cut)
    .filter(([id]) => id !== NATIVE)
    .map(([id, bank]) => ({ bank, material: materialFor(materials, id) }));
  const fitBank = sumOf(rows, ({ bank, material }) => bank * material.reusable);
  const fitCompacted = sumOf(
    rows,
    ({ bank, material }) => bank * material.reusable * material.compacted,
  );
  const redug = cut[NATIVE] ?? 0;
  const mean = meanFactors(rows, fitBank);
  const fromCut = Math.min(Math.max(0, wanted - redug), fitCompacted);
  const share = fitCompacted > 0 ? fromCut / fitCompacted : 0;
  const redugLeft = Math.max(0, redug - wanted);
  const left = rows.map(({ bank, material }) => ({
    material,
    bank: bank * (1 - share * material.reusable),
  }));
  return {
    bank: sumOf(rows, ({ bank }) => bank) + redug,
    loose:
      sumOf(rows, ({ bank, material }) => bank * material.loose) +
      (redug * mean.loose) / mean.compacted,
    reusedBank: share * fitBank + Math.min(redug, wanted),
    surplusBank: sumOf(left, ({ bank }) => bank) + redugLeft,
    surplusLoose:
      sumOf(left, ({ bank, material }) => bank * material.loose) +
      (redugLeft * mean.loose) / mean.compacted,
    surplusMass:
      sumOf(left, ({ bank, material }) => bank * material.density) +
      (redugLeft * mean.density) / mean.compacted,
    importCompacted: Math.max(0, wanted - redug - fitCompacted),
  };
}

/** All works' cuts together, m³ by material id. */
export function totalCut(works: readonly WorkQuantities[]): ByMaterial {
  const total: Record<string, number> = {};
  for (const work of works) {
    for (const [id, volume] of Object.entries(work.cut)) total[id] = (total[id] ?? 0) + volume;
  }
  return total;
}

interface Row {
  bank: number;
  material: Material;
}

function meanFactors(
  rows: readonly Row[],
  fitBank: number,
): { loose: number; compacted: number; density: number } {
  if (fitBank <= 0) return { loose: 1, compacted: 1, density: 0 };
  const mean = (pick: (material: Material) => number): number =>
    sumOf(rows, ({ bank, material }) => bank * material.reusable * pick(material)) / fitBank;
  return {
    loose: mean((material) => material.loose),
    compacted: mean((material) => material.compacted),
    density: mean((material) => material.density),
  };
}

function materialFor(materials: ReadonlyMap<string, Material>, id: string): Material {
  const material = materials.get(id);
  if (!material) throw new Error(`cut has material "${id}", expected one that the site names`);
  return material;
}

function sumOf<T>(rows: readonly T[], value: (row: T) => number): number {
  return rows.reduce((sum, row) => sum + value(row), 0);
}
