import type { ReactNode } from "react";
import { words } from "../../words/index.js";
import type { ByMaterial } from "../parts.js";
import { looseOf, type Estimate } from "../../estimate/index.js";
import { materialsOf } from "../../site/index.js";
import type { Work } from "../../site/index.js";
import { area, earthVolume, elevation, haulMass, length } from "../../units/index.js";
import { BothWays } from "../BothWays.js";
import { ColumnHeads, dugName, materialName, sumOf } from "../../drawn/index.js";
import { MaterialSwatch } from "../Swatch.js";
import { useSite } from "../useSite.js";
import { DigWorkings } from "./DigWorkings.js";
import { LandRows } from "./LandRows.js";
import { Term } from "../book/Term.js";

function CutTable({ cut, estimate }: { cut: ByMaterial; estimate: Estimate }): ReactNode {
  const { site } = useSite();
  const print = (volume: number): string => earthVolume.print(volume, site.units, { bare: true });
  const unit = earthVolume.unitLabel(site.units);
  const rows = Object.entries(cut).filter(([, volume]) => volume > 0);
  const loose = rows.reduce((sum, [id, volume]) => sum + looseOf(site, estimate, id, volume), 0);
  return (
    <table className="table volumes">
      <thead>
        <tr>
          <th scope="col">{words.digLeaf.dug}</th>
          <th scope="col">
            <Term id="bankVolume">{words.digLeaf.bank}</Term> {unit}
          </th>
          <th scope="col">
            <Term id="looseVolume">{words.digLeaf.loose}</Term> {unit}
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map(([id, volume]) => (
          <tr key={id} data-material={id} data-bank={volume}>
            <th scope="row">
              <MaterialSwatch material={id} />
              {dugName(site, id)}
            </th>
            <td>{print(volume)}</td>
            <td>{print(looseOf(site, estimate, id, volume))}</td>
          </tr>
        ))}
        <tr className="sum">
          <th scope="row">{words.digLeaf.cut}</th>
          <td>{print(sumOf(cut))}</td>
          <td>{print(loose)}</td>
        </tr>
      </tbody>
    </table>
  );
}

function FillTable({ fill }: { fill: ByMaterial }): ReactNode {
  const { site } = useSite();
  const unit = earthVolume.unitLabel(site.units);
  const rows = Object.entries(fill).filter(([, volume]) => volume > 0);
  if (rows.length === 0) return null;
  return (
    <table className="table volumes">
      <ColumnHeads
        names={[words.digLeaf.putIn, words.digLeaf.inPlace(unit), haulMass.unitLabel(site.units)]}
      />
      <tbody>
        {rows.map(([id, volume]) => {
          const material = materialsOf(site).get(id);
          const placed = material?.kind === "aggregate" ? material.density : undefined;
          return (
            <tr key={id} data-material={id} data-placed={volume}>
              <th scope="row">
                <MaterialSwatch material={id} />
                {materialName(site, id)}
              </th>
              <td>{earthVolume.print(volume, site.units, { bare: true })}</td>
              <td>
                {placed === undefined
                  ? ""
                  : haulMass.print(volume * placed, site.units, { bare: true })}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** Fills of all works together. */
function fillOfAll(works: readonly { fill: ByMaterial }[]): ByMaterial {
  const all: Record<string, number> = {};
  for (const { fill } of works) {
    for (const [id, volume] of Object.entries(fill)) all[id] = (all[id] ?? 0) + volume;
  }
  return all;
}

/** What one work (or, with none picked, the whole scheme) takes out and puts in. */
export function DigQuantities({ work }: { work: Work | null }): ReactNode {
  const { site, estimate } = useSite();
  if (estimate === null || estimate.works.length === 0) return null;
  const one = work === null ? null : estimate.works.find((each) => each.id === work.id);
  if (one === undefined) return null;
  const { units } = site;
  const cut = one?.cut ?? estimate.cut;
  const fill = one?.fill ?? fillOfAll(estimate.works);
  const { earth } = estimate;
  return (
    <>
      <h2>{one === null ? words.digLeaf.theWholeDig : words.digLeaf.itsDig}</h2>
      {sumOf(cut) > 0 && <CutTable cut={cut} estimate={estimate} />}
      <FillTable fill={fill} />
      {one !== null && sumOf(cut) > 0 && (
        <table className="table">
          <tbody>
            <tr>
              <th scope="row">{words.digLeaf.floor}</th>
              <td>
                {elevation.print(one.floor.lowest, units)}
                {one.floor.highest - one.floor.lowest > 0.005 &&
                  words.digLeaf.to(elevation.print(one.floor.highest, units))}
              </td>
            </tr>
            <tr>
              <th scope="row">{words.digLeaf.deepestCut}</th>
              <td>{length.print(one.deepest, units)}</td>
            </tr>
            <tr>
              <th scope="row">{words.digLeaf.tallestFace}</th>
              <td>{length.print(one.tallestFace, units)}</td>
            </tr>
            <tr>
              <th scope="row">
                <Term id="daylight">{words.digLeaf.openingGround}</Term>
              </th>
              <td>{area.print(one.daylight, units)}</td>
            </tr>
          </tbody>
        </table>
      )}
      {one === null && (
        <table className="table">
          <tbody>
            <tr>
              <th scope="row">{words.digLeaf.goesBackBank}</th>
              <td>{earthVolume.print(earth.reusedBank, units)}</td>
            </tr>
            <tr>
              <th scope="row">{words.digLeaf.leftOverBank}</th>
              <td>{earthVolume.print(earth.surplusBank, units)}</td>
            </tr>
            <tr>
              <th scope="row">
                <Term id="spoil">{words.digLeaf.leftOver}</Term>
                {words.digLeaf.looseAfter}
              </th>
              <td>{earthVolume.print(earth.surplusLoose, units)}</td>
            </tr>
            <tr>
              <th scope="row">{words.digLeaf.leftOverWeight}</th>
              <td>{haulMass.print(earth.surplusMass, units)}</td>
            </tr>
            <tr>
              <th scope="row">
                {words.digLeaf.toBringIn}{" "}
                <Term id="compactedVolume">{words.digLeaf.compacted}</Term>
              </th>
              <td>{earthVolume.print(earth.importCompacted, units)}</td>
            </tr>
          </tbody>
        </table>
      )}
      {one === null && <DigWorkings />}
      {one === null && <LandRows />}
      {one === null && <BothWays />}
    </>
  );
}
