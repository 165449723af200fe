import type { ReactNode } from "react";
import type { Estimate } from "../../estimate/index.js";
import { fiveFigures } from "../../store/index.js";
import {
  days,
  earthVolume,
  elevation,
  hours,
  length,
  money,
  pipeSlope,
  plainNumber,
} from "../../units/index.js";
import { dugName, looseOf, sumOf } from "../amounts.js";
import { useSite } from "../useSite.js";
import { useAmount } from "../Working.js";

function FiguresTable({ estimate }: { estimate: Estimate }): ReactNode {
  const { site } = useSite();
  const { units, currency } = site;
  const five = fiveFigures(estimate, site);
  const print = (value: number): string => money(currency).print(value, units);
  return (
    <table>
      <tbody>
        <tr>
          <th scope="row">Cut, in the bank</th>
          <td>{earthVolume.print(five.cut, units)}</td>
          <th scope="row">of it rock</th>
          <td>{earthVolume.print(five.rock, units)}</td>
        </tr>
        <tr>
          <th scope="row">Spoil to move, loose</th>
          <td>{earthVolume.print(five.spoil, units)}</td>
          <th scope="row">Machine days</th>
          <td>{days.print(five.days, units)}</td>
        </tr>
        <tr>
          <th scope="row">Cost, likely</th>
          <td>{print(five.cost.likely)}</td>
          <th scope="row">low to high</th>
          <td>
            {print(five.cost.low)} to {print(five.cost.high)}
          </td>
        </tr>
      </tbody>
    </table>
  );
}

function WorksTable({ estimate }: { estimate: Estimate }): ReactNode {
  const { site } = useSite();
  const { units } = site;
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">Work</th>
          <th scope="col">Cut, bank</th>
          <th scope="col">Put in</th>
          <th scope="col">Deepest</th>
          <th scope="col">Floor</th>
          <th scope="col">Machine hours</th>
        </tr>
      </thead>
      <tbody>
        {estimate.works.map((work) => {
          const time = estimate.machines.works.find((one) => one.id === work.id);
          const dug = sumOf(work.cut) > 0;
          return (
            <tr key={work.id}>
              <th scope="row">{work.name}</th>
              <td>{dug ? earthVolume.print(sumOf(work.cut), units) : "–"}</td>
              <td>{earthVolume.print(sumOf(work.fill), units)}</td>
              <td>{dug ? length.print(work.deepest, units) : "–"}</td>
              <td>{dug ? elevation.print(work.floor.lowest, units) : "–"}</td>
              <td>{time === undefined ? "–" : hours.print(time.hours.likely, units)}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

function MaterialsTable({ estimate }: { estimate: Estimate }): ReactNode {
  const { site } = useSite();
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">Dug, by material</th>
          <th scope="col">Bank</th>
          <th scope="col">Loose</th>
        </tr>
      </thead>
      <tbody>
        {Object.entries(estimate.cut).map(([id, volume]) => (
          <tr key={id}>
            <th scope="row">{dugName(site, id)}</th>
            <td>{earthVolume.print(volume, site.units)}</td>
            <td>{earthVolume.print(looseOf(site, id, volume), site.units)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function PipesTable({ estimate }: { estimate: Estimate }): ReactNode {
  const { units } = useSite().site;
  if (estimate.flow.pipes.length === 0) return null;
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">Pipe</th>
          <th scope="col">Length</th>
          <th scope="col">Fall</th>
          <th scope="col">Start invert</th>
          <th scope="col">End invert</th>
          <th scope="col">As laid</th>
        </tr>
      </thead>
      <tbody>
        {estimate.flow.pipes.map((pipe) => (
          <tr key={pipe.id}>
            <th scope="row">{pipe.name}</th>
            <td>{length.print(pipe.length, units)}</td>
            <td>{pipeSlope.print(pipe.fall, units)}</td>
            <td>{elevation.print(pipe.stations[0]?.invert ?? 0, units)}</td>
            <td>{elevation.print(pipe.stations.at(-1)?.invert ?? 0, units)}</td>
            <td>{pipe.verdict}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function CostTable({ estimate }: { estimate: Estimate }): ReactNode {
  const { units } = useSite().site;
  const amount = useAmount();
  const { cost } = estimate;
  const print = (value: number): string => money(cost.currency).print(value, units);
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">Line</th>
          <th scope="col">Quantity</th>
          <th scope="col">Low</th>
          <th scope="col">Likely</th>
          <th scope="col">High</th>
          <th scope="col" className="from">
            Price from
          </th>
        </tr>
      </thead>
      <tbody>
        {cost.lines.map((line) => (
          <tr key={line.id}>
            <th scope="row">{line.name}</th>
            <td>{amount(line.quantity.value, line.quantity.unit)}</td>
            <td>{print(line.amount.low)}</td>
            <td>{print(line.amount.likely)}</td>
            <td>{print(line.amount.high)}</td>
            <td className="from">{line.source}</td>
          </tr>
        ))}
        <tr className="sum">
          <th scope="row">Total</th>
          <td />
          <td>{print(cost.total.low)}</td>
          <td>{print(cost.total.likely)}</td>
          <td>{print(cost.total.high)}</td>
          <td />
        </tr>
      </tbody>
    </table>
  );
}

/** The report of the estimate, for paper. */
export function ReportBody(): ReactNode {
  const { site, schemeId, estimate } = useSite();
  const scheme = site.schemes.find((one) => one.id === schemeId);
  if (estimate === null) {
    return <div className="report">There is no estimate of {site.name} to print.</div>;
  }
  const { machines } = estimate;
  return (
    <article className="report">
      <h1>{site.name}</h1>
      <p>
        {scheme?.name} · estimate of the earthwork from {plainNumber(site.survey.points.length, 0)}{" "}
        spot heights and {plainNumber(site.ground.probes.length, 0)} probes · made with Bankyard
      </p>
      <FiguresTable estimate={estimate} />
      <h2>Works, in building order</h2>
      <WorksTable estimate={estimate} />
      <MaterialsTable estimate={estimate} />
      <h2>Pipes</h2>
      <PipesTable estimate={estimate} />
      <h2>Machine</h2>
      <p>
        {machines.digger.name}: {machines.digger.reason}
      </p>
      <h2>Cost</h2>
      <CostTable estimate={estimate} />
      <h2>Findings</h2>
      <ul>
        {estimate.findings.map((finding, index) => (
          <li key={`${finding.code} ${index}`}>
            {finding.text} <em>({finding.source})</em>
          </li>
        ))}
      </ul>
      <h2>Cautions</h2>
      <ul>
        {estimate.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </article>
  );
}
