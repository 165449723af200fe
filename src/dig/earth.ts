/** The site's own earth as a whole: what comes out, what goes back, what is left over. */
import { NATIVE, type Material, type Scheme } from "../site/index.js";
import { planHaul, type Haul, type Heap } from "./haul.js";
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
 * - What strips took off is kept apart (`topsoil`): it goes back where it came from or is left over.
 * - `surplus`: what is left over; `importCompacted`: what must come in because too little is fit.
 */
export function balanceEarth(
  works: readonly WorkQuantities[],
  materials: ReadonlyMap<string, Material>,
): Earth {
  const strips = works.filter((work) => work.kind === "strip");
  const others = works.filter((work) => work.kind !== "strip");
  const apart = topsoilApart(strips, materials);
  const earth = balance(others, materials);
  if (!apart) return earth;
  return {
    bank: earth.bank + apart.stripped,
    loose: earth.loose + apart.strippedLoose,
    reusedBank: earth.reusedBank + apart.putBack,
    surplusBank: earth.surplusBank + apart.left,
    surplusLoose: earth.surplusLoose + apart.leftLoose,
    surplusMass: earth.surplusMass + apart.leftMass,
    importCompacted: earth.importCompacted,
    left: together(earth.left, apart.leftBy),
    topsoil: {
      stripped: apart.stripped,
      putBack: apart.putBack,
      left: apart.left,
      leftLoose: apart.leftLoose,
    },
  };
}

/** What strips took off and put back. It is kept for its own use and never goes into backfill. */
function topsoilApart(strips: readonly WorkQuantities[], materials: ReadonlyMap<string, Material>) {
  if (strips.length === 0) return null;
  const leftBy: Record<string, number> = {};
  const total = {
    ...{ stripped: 0, strippedLoose: 0, putBack: 0, left: 0, leftLoose: 0, leftMass: 0 },
    leftBy,
  };
  for (const strip of strips) {
    const rows = Object.entries(strip.cut).map(([id, bank]) => ({
      bank,
      material: id === NATIVE ? null : materialFor(materials, id),
    }));
    const bank = sumOf(rows, (row) => row.bank);
    const compacted = sumOf(rows, (row) => row.bank * (row.material?.compacted ?? 1));
    const placed = Object.values(strip.fill).reduce((sum, volume) => sum + volume, 0);
    const share = compacted > 0 ? Math.min(1, placed / compacted) : 0;
    const loose = sumOf(rows, (row) => row.bank * (row.material?.loose ?? 1));
    for (const [id, cut] of Object.entries(strip.cut)) {
      leftBy[id] = (leftBy[id] ?? 0) + (1 - share) * cut;
    }
    total.stripped += bank;
    total.strippedLoose += loose;
    total.putBack += share * bank;
    total.left += (1 - share) * bank;
    total.leftLoose += (1 - share) * loose;
    total.leftMass += (1 - share) * sumOf(rows, (row) => row.bank * (row.material?.density ?? 0));
  }
  return total;
}

function balance(
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
    left: {
      ...Object.fromEntries(left.map(({ material, bank }) => [material.id, bank])),
      ...(redugLeft > 0 && { [NATIVE]: redugLeft }),
    },
  };
}

/** The sum of two, material by material. */
function together(a: ByMaterial, b: ByMaterial): ByMaterial {
  const sum: Record<string, number> = { ...a };
  for (const [id, volume] of Object.entries(b)) sum[id] = (sum[id] ?? 0) + volume;
  return sum;
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

/**
 * Which cut's earth goes to which fill of native earth, or to which pile, with the least Σ volume ×
 * distance in plan between centres of mass. m³ in the bank: fills are measured compacted, so each
 * takes more in the bank by the mean factor of the fit materials; piles share what is left.
 */
export function haulPlan(
  works: readonly WorkQuantities[],
  scheme: Scheme,
  materials: ReadonlyMap<string, Material>,
): Haul[] {
  const others = works.filter((work) => work.kind !== "strip");
  const cuts = others.flatMap((work) => heapAt(work.id, work.cutCentre, sumOfRecord(work.cut)));
  const cut = totalCut(others);
  const rows = Object.entries(cut)
    .filter(([id]) => id !== NATIVE)
    .map(([id, bank]) => ({ bank, material: materialFor(materials, id) }));
  const fit = sumOf(rows, ({ bank, material }) => bank * material.reusable);
  const { compacted } = meanFactors(rows, fit);
  const bankOf = (native: number): number => (compacted > 0 ? native / compacted : 0);
  const fills = others.flatMap((work) =>
    heapAt(work.id, work.fillCentre, bankOf(work.fill[NATIVE] ?? 0)),
  );
  const moved = sumOf(cuts, (heap) => heap.volume);
  const spare = Math.max(0, moved - sumOf(fills, (heap) => heap.volume));
  const piles = scheme.works.flatMap((work) =>
    work.kind === "pile" && !(materials.get(work.material)?.kind === "topsoil")
      ? [{ id: work.id, at: work.at }]
      : [],
  );
  const heaps = piles.map((pile) => ({ ...pile, volume: spare / piles.length }));
  return planHaul(cuts, [...fills, ...heaps]);
}

function heapAt(
  id: string,
  centre: readonly [number, number, number] | undefined,
  volume: number,
): Heap[] {
  return centre && volume > 0 ? [{ id, at: [centre[0], centre[1]], volume }] : [];
}

function sumOfRecord(record: ByMaterial): number {
  return Object.values(record).reduce((sum, volume) => sum + volume, 0);
}
