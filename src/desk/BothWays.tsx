import type { ReactNode } from "react";
import type { MaterialKind, Site } from "../site/index.js";
import { materialsOf } from "../site/index.js";
import type { Estimate } from "../estimate/index.js";
import { earthVolume, plainNumber } from "../units/index.js";
import { words } from "../words/index.js";
import { useSite } from "./useSite.js";

/** m³ under which nothing is said. */
const WORTH_TELLING = 0.1;

/** Earth that the lot itself gives; dug gravel is bedding of a work before. */
const NATURAL: ReadonlySet<MaterialKind> = new Set(["topsoil", "soil", "rippable", "rock"]);

/** How much of each dug material is fit to go back: "topsoil none, weathered rock 70%". */
function shares(cut: Estimate["cut"], site: Site): string {
  return Object.entries(cut)
    .filter(([, volume]) => volume > 0)
    .flatMap(([id]) => materialsOf(site).get(id) ?? [])
    .filter((material) => material.reusable < 1 && NATURAL.has(material.kind))
    .map(({ name, reusable }) => {
      const share = reusable === 0 ? "none" : `${plainNumber(reusable * 100, 0)}%`;
      return `${name.toLowerCase()} ${share}`;
    })
    .join(", ");
}

/** Why earth is left over while other earth or gravel is bought; nothing unless both are so. */
export function BothWays(): ReactNode {
  const { site, estimate } = useSite();
  if (estimate === null) return null;
  const { surplusBank } = estimate.earth;
  const brought = estimate.cost.loads.imports.reduce((sum, load) => sum + load.placed, 0);
  if (surplusBank < WORTH_TELLING || brought < WORTH_TELLING) return null;
  const fit = shares(estimate.cut, site);
  const print = (volume: number): string => earthVolume.print(volume, site.units);
  const topsoil = estimate.cost.loads.imports.some(
    (load) => materialsOf(site).get(load.material)?.kind === "topsoil",
  );
  return (
    <p className="says">
      {words.desk.overBoughtOnlyPart(print(surplusBank), print(brought))}
      {fit !== "" && ` (${fit})`}
      {words.desk.gravelSandFillCome}
      {topsoil && words.desk.topsoilKeptAsideClean}
    </p>
  );
}
