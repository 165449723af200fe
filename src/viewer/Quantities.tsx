import type { ReactNode } from "react";
import { dugName, materialName, sumOf } from "../drawn/index.js";
import { looseOf, type Estimate } from "../estimate/index.js";
import type { Site } from "../site/index.js";
import { earthVolume, elevation, length } from "../units/index.js";
import { words } from "../words/index.js";

interface Props {
  site: Site;
  estimate: Estimate;
  /** Shows a work in the picture. */
  onWork: (id: string) => void;
}

type Row = readonly [key: string, name: string, ...figures: string[]];

function VolumeTable(props: { heads: readonly string[]; rows: readonly Row[] }): ReactNode {
  const { heads, rows } = props;
  return (
    <table className="table volumes">
      <thead>
        <tr>
          {heads.map((head) => (
            <th key={head} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(([key, name, ...figures]) => (
          <tr key={key} className={key === "" ? "sum" : undefined}>
            <th scope="row">{name}</th>
            {figures.map((figure, i) => (
              <td key={i}>{figure}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** What is dug and put in, by material and by work. */
export function Quantities({ site, estimate, onWork }: Props): ReactNode {
  const said = words.handoverLeaf;
  const unit = earthVolume.unitLabel(site.units);
  const print = (volume: number): string => earthVolume.print(volume, site.units, { bare: true });
  const cut = Object.entries(estimate.cut).filter(([, volume]) => volume > 0);
  const loose = cut.reduce((sum, [id, volume]) => sum + looseOf(site, estimate, id, volume), 0);
  const fill = Object.entries(fillOf(estimate)).filter(([, volume]) => volume > 0);
  return (
    <section aria-labelledby="quantities">
      <h2 id="quantities">{words.viewer.quantities}</h2>
      <VolumeTable
        heads={[said.dugByMaterial, `${said.bank} ${unit}`, `${said.loose} ${unit}`]}
        rows={[
          ...cut.map(([id, volume]): Row => {
            const figures = [print(volume), print(looseOf(site, estimate, id, volume))];
            return [id, dugName(site, id), ...figures];
          }),
          ["", said.dugInAll, print(sumOf(estimate.cut)), print(loose)],
        ]}
      />
      {fill.length > 0 && (
        <VolumeTable
          heads={[said.putIn, words.digLeaf.inPlace(unit)]}
          rows={fill.map(([id, volume]): Row => [id, materialName(site, id), print(volume)])}
        />
      )}
      <h3>{words.viewer.works}</h3>
      <WorksTable {...{ site, estimate, onWork }} />
    </section>
  );
}

function WorksTable({ site, estimate, onWork }: Props): ReactNode {
  const { units } = site;
  const said = words.handoverLeaf;
  const unit = earthVolume.unitLabel(units);
  const print = (volume: number): string =>
    volume > 0 ? earthVolume.print(volume, units, { bare: true }) : "–";
  return (
    <div className="wide-table" tabIndex={0} role="region" aria-label={words.viewer.works}>
      <table className="table">
        <thead>
          <tr>
            <th scope="col">{said.work}</th>
            <th scope="col">{`${words.digLeaf.cut} ${unit}`}</th>
            <th scope="col">{`${said.putIn} ${unit}`}</th>
            <th scope="col">{said.deepest}</th>
            <th scope="col">{said.floor}</th>
          </tr>
        </thead>
        <tbody>
          {estimate.works.map((work) => {
            const dug = sumOf(work.cut) > 0;
            return (
              <tr key={work.id}>
                <th scope="row">
                  <button
                    type="button"
                    className="link"
                    title={words.viewer.goTo(work.name)}
                    onClick={() => onWork(work.id)}
                  >
                    {work.name}
                  </button>
                </th>
                <td>{print(sumOf(work.cut))}</td>
                <td>{print(sumOf(work.fill))}</td>
                <td>{dug ? length.print(work.deepest, units) : "–"}</td>
                <td>{dug ? elevation.print(work.floor.lowest, units) : "–"}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}

/** Fills of all works together, m³ in place by material. */
function fillOf({ works }: Estimate): Record<string, number> {
  const all: Record<string, number> = {};
  for (const { fill } of works) {
    for (const [id, volume] of Object.entries(fill)) all[id] = (all[id] ?? 0) + volume;
  }
  return all;
}
