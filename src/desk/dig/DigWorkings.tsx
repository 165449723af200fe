import type { ReactNode } from "react";
import { sumOf } from "../../drawn/index.js";
import { isRock, type Estimate } from "../../estimate/index.js";
import { materialsOf, type Site } from "../../site/index.js";
import { earthVolume, plainNumber } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { ByMaterial } from "../parts.js";
import { useSite } from "../useSite.js";
import { useAmount, Working } from "../Working.js";

const says = words.sums.workings;

/** What of each work's cut counts, m³ bank: works without any are left out. */
function byWork(
  estimate: Estimate,
  site: Site,
  schemeId: string,
  counts: (material: string) => boolean,
): { id: string; name: string; volume: number }[] {
  const works = site.schemes.find(({ id }) => id === schemeId)?.works ?? [];
  return estimate.works.flatMap(({ id, cut }) => {
    const kept: ByMaterial = Object.fromEntries(Object.entries(cut).filter(([of]) => counts(of)));
    const volume = sumOf(kept);
    const name = works.find((work) => work.id === id)?.name ?? id;
    return volume > 0 ? [{ id, name, volume }] : [];
  });
}

interface Row {
  id: string;
  name: string;
  volume: number;
}

/** One of the strip's figures with what it is the sum of; the strip leads here by `of`. */
function FigureWorking(props: {
  of: "cut" | "rock" | "spoil";
  title: string;
  value: number;
  rows: readonly Row[];
  children: ReactNode;
}): ReactNode {
  const { of, title, value, rows, children } = props;
  const { units } = useSite().site;
  // With more digits where they are small, so that they add up to what stands over them.
  const amount = useAmount();
  return (
    <div data-figure-home={of}>
      <Working text={title} amount={earthVolume.print(value, units)} forFigure>
        <p>{children}</p>
        <table className="table">
          <tbody>
            {rows.map(({ id, name, volume }) => (
              <tr key={id}>
                <th scope="row">{name}</th>
                <td>{amount(volume, "m³")}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Working>
    </div>
  );
}

/** The materials dug and what 1 in the bank is when heaped: "Sandy loam × 1.22". */
function factors(cut: ByMaterial, site: Site): string {
  return Object.entries(cut)
    .filter(([, volume]) => volume > 0)
    .flatMap(([id]) => materialsOf(site).get(id) ?? [])
    .map(({ name, loose }) => `${name} × ${plainNumber(loose, 2)}`)
    .join(", ");
}

/** How cut, rock and spoil of the whole dig, the first three figures of the strip, are reached. */
export function DigWorkings(): ReactNode {
  const { site, schemeId, estimate } = useSite();
  if (estimate === null) return null;
  const { earth } = estimate;
  const materials = materialsOf(site);
  const rockIn = (id: string): boolean => isRock(materials.get(id)?.kind);
  const rock = byWork(estimate, site, schemeId, rockIn);
  return (
    <>
      <FigureWorking
        of="cut"
        title={says.cut}
        value={sumOf(estimate.cut)}
        rows={byWork(estimate, site, schemeId, () => true)}
      >
        {says.cutSays}
      </FigureWorking>
      <FigureWorking
        of="rock"
        title={says.rock}
        value={rock.reduce((sum, { volume }) => sum + volume, 0)}
        rows={rock}
      >
        {rock.length === 0 ? says.noRock : says.rockSays}
      </FigureWorking>
      <FigureWorking
        of="spoil"
        title={says.spoil}
        value={earth.surplusLoose}
        rows={[
          { id: "bank", name: says.cutBank, volume: earth.bank },
          { id: "reused", name: says.backBank, volume: earth.reusedBank },
          { id: "left", name: says.leftBank, volume: earth.surplusBank },
          { id: "loose", name: says.leftLoose, volume: earth.surplusLoose },
        ]}
      >
        {says.spoilSays(factors(estimate.cut, site))}
      </FigureWorking>
    </>
  );
}
