import type { ReactNode } from "react";
import { looseOf, type Estimate } from "../../estimate/index.js";
import { fiveFigures } from "../../store/index.js";
import {
  earthVolume,
  elevation,
  haulMass,
  head,
  hours,
  length,
  money,
  pipeSlope,
  plainNumber,
} from "../../units/index.js";
import { words } from "../../words/index.js";
import { FindingList, PermitOnPaper, ProjectLine } from "../permit/PermitOnPaper.js";
import { BothWays } from "../BothWays.js";
import { ColumnHeads, dugName, sumOf, UnpricedNote } from "../../drawn/index.js";
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
          <th scope="row">{words.handoverLeaf.cutBank}</th>
          <td>{earthVolume.print(five.cut, units)}</td>
          <th scope="row">{words.handoverLeaf.ofItRock}</th>
          <td>{earthVolume.print(five.rock, units)}</td>
        </tr>
        <tr>
          <th scope="row">{words.handoverLeaf.spoilMoveLoose}</th>
          <td>{earthVolume.print(five.spoil, units)}</td>
          <th scope="row">{words.handoverLeaf.workingDays}</th>
          <td>{words.handoverLeaf.withMachine(plainNumber(five.days, 0), five.digger.name)}</td>
        </tr>
        <tr>
          <th scope="row">{words.handoverLeaf.costLikely}</th>
          <td>{print(five.cost.likely)}</td>
          <th scope="row">{words.handoverLeaf.lowToHigh}</th>
          <td>{words.handoverLeaf.fromTo(print(five.cost.low), print(five.cost.high))}</td>
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
      <ColumnHeads
        names={[
          words.handoverLeaf.work,
          words.handoverLeaf.cutBankColumn,
          words.handoverLeaf.putIn,
          words.handoverLeaf.deepest,
          words.handoverLeaf.floor,
          words.handoverLeaf.machineHours,
        ]}
      />
      <tbody>
        {estimate.works.map((work) => {
          const time = estimate.machines.works.find((one) => one.id === work.id);
          const dug = sumOf(work.cut) > 0;
          return (
            <tr key={work.id}>
              <th scope="row">{work.name}</th>
              <td>{dug ? earthVolume.print(sumOf(work.cut), units) : "–"}</td>
              <td>{sumOf(work.fill) > 0 ? earthVolume.print(sumOf(work.fill), units) : "–"}</td>
              <td>{dug ? length.print(work.deepest, units) : "–"}</td>
              <td>{dug ? elevation.print(work.floor.lowest, units) : "–"}</td>
              <td>
                {time === undefined || time.hours.likely === 0
                  ? "–"
                  : hours.print(time.hours.likely, units)}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

function MaterialsTable({ estimate }: { estimate: Estimate }): ReactNode {
  const { site } = useSite();
  const cut = Object.entries(estimate.cut).filter(([, volume]) => volume > 0);
  const loose = cut.reduce((sum, [id, volume]) => sum + looseOf(site, estimate, id, volume), 0);
  return (
    <table>
      <ColumnHeads
        names={[
          words.handoverLeaf.dugByMaterial,
          words.handoverLeaf.bank,
          words.handoverLeaf.loose,
        ]}
      />
      <tbody>
        {cut.map(([id, volume]) => (
          <tr key={id}>
            <th scope="row">{dugName(site, id)}</th>
            <td>{earthVolume.print(volume, site.units)}</td>
            <td>{earthVolume.print(looseOf(site, estimate, id, volume), site.units)}</td>
          </tr>
        ))}
        <tr className="sum">
          <th scope="row">{words.handoverLeaf.dugInAll}</th>
          <td>{earthVolume.print(sumOf(estimate.cut), site.units)}</td>
          <td>{earthVolume.print(loose, site.units)}</td>
        </tr>
      </tbody>
    </table>
  );
}

const loadWords = (loads: number): string => words.counts.loads(loads, plainNumber(loads, 0));

/** What goes back, what is left over and what is brought in, with its truckloads. */
function EarthTable({ estimate }: { estimate: Estimate }): ReactNode {
  const { site, schemeId } = useSite();
  const { units } = site;
  const { earth, cost } = estimate;
  const works = site.schemes.find((scheme) => scheme.id === schemeId)?.works ?? [];
  const stays = works.some((work) => work.kind === "pile");
  return (
    <>
      <table>
        <ColumnHeads
          names={[
            words.handoverLeaf.earthAway,
            words.handoverLeaf.volume,
            words.handoverLeaf.weight,
            words.handoverLeaf.truckloads,
          ]}
        />
        <tbody>
          <tr>
            <th scope="row">{words.handoverLeaf.goesBackBank}</th>
            <td>{earthVolume.print(earth.reusedBank, units)}</td>
            <td />
            <td />
          </tr>
          <tr>
            <th scope="row">
              {words.handoverLeaf.leftOverLoose(stays ? words.handoverLeaf.staysPileLoadsOnly : "")}
            </th>
            <td>{earthVolume.print(earth.surplusLoose, units)}</td>
            <td>{haulMass.print(earth.surplusMass, units)}</td>
            <td>{loadWords(cost.loads.surplus.value)}</td>
          </tr>
          {cost.loads.imports.map((load) => (
            <tr key={load.material}>
              <th scope="row">{words.handoverLeaf.broughtPlace(load.name)}</th>
              <td>{earthVolume.print(load.placed, units)}</td>
              <td>{haulMass.print(load.mass.value, units)}</td>
              <td>{loadWords(load.loads.value)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <BothWays />
    </>
  );
}

function LiftsTable({ estimate }: { estimate: Estimate }): ReactNode {
  const { units } = useSite().site;
  const { lifts } = estimate.flow;
  if (lifts.length === 0) return null;
  return (
    <table>
      <ColumnHeads
        names={[
          words.handoverLeaf.pumpedLine,
          words.handoverLeaf.liftAtRest,
          words.handoverLeaf.waterWhenPumpStops,
          words.handoverLeaf.farEnd,
          words.handoverLeaf.highestWay,
        ]}
      />
      <tbody>
        {lifts.map((lift) => (
          <tr key={lift.pipe}>
            <th scope="row">{lift.name}</th>
            <td>{head.print(lift.lift.value, units)}</td>
            <td>{elevation.print(lift.lowWater, units)}</td>
            <td>{elevation.print(lift.outlet, units)}</td>
            <td>{elevation.print(lift.highest, units)}</td>
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
      <ColumnHeads
        names={[
          words.handoverLeaf.pipe,
          words.handoverLeaf.lengthInPlan,
          words.handoverLeaf.fromEndEnd,
          words.handoverLeaf.startInvert,
          words.handoverLeaf.endInvert,
          words.handoverLeaf.asLaid,
        ]}
      />
      <tbody>
        {estimate.flow.pipes.map((pipe) => (
          <tr key={pipe.id}>
            <th scope="row">{pipe.name}</th>
            <td>{length.print(pipe.length, units)}</td>
            <td>
              {pipe.fall < 0 ? words.handoverLeaf.rises : words.handoverLeaf.falls}{" "}
              {pipeSlope.print(Math.abs(pipe.fall), units)}
            </td>
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
  const fuel = useAmount(true);
  const { cost } = estimate;
  const print = (value: number): string => money(cost.currency).print(value, units);
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">{words.handoverLeaf.lineColumn}</th>
          <th scope="col">{words.handoverLeaf.quantity}</th>
          <th scope="col">{words.handoverLeaf.low}</th>
          <th scope="col">{words.handoverLeaf.likely}</th>
          <th scope="col">{words.handoverLeaf.high}</th>
          <th scope="col" className="from">
            {words.handoverLeaf.priceFrom}
          </th>
        </tr>
      </thead>
      <tbody>
        {cost.lines.map((line) => (
          <tr key={line.id}>
            <th scope="row">{line.name}</th>
            <td>
              {line.per === "lump" || line.quantity.unit === "lump"
                ? ""
                : (line.per === "L" ? fuel : amount)(line.quantity.value, line.quantity.unit)}
            </td>
            <td>{print(line.amount.low)}</td>
            <td>{print(line.amount.likely)}</td>
            <td>{print(line.amount.high)}</td>
            <td className="from">{line.source}</td>
          </tr>
        ))}
        <tr className="sum">
          <th scope="row">{words.handoverLeaf.total}</th>
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

/** The report of the estimate, for paper; `date` in words. */
export function ReportBody({ date }: { date: string }): ReactNode {
  const { site, schemeId, estimate } = useSite();
  const scheme = site.schemes.find((one) => one.id === schemeId);
  if (estimate === null) {
    return <div className="report">{words.handoverLeaf.thereNoEstimatePrint(site.name)}</div>;
  }
  const { machines } = estimate;
  return (
    <article className="report">
      <h1>{site.name}</h1>
      <p>
        {date} · {scheme?.name}{" "}
        {words.handoverLeaf.estimateEarthworkFromSpot(plainNumber(site.survey.points.length, 0))}{" "}
        {words.counts.probes(site.ground.probes.length, plainNumber(site.ground.probes.length, 0))}{" "}
        {words.handoverLeaf.madeWithBankyard}
      </p>
      <ProjectLine />
      <FiguresTable estimate={estimate} />
      <h2>{words.handoverLeaf.worksBuildingOrder}</h2>
      <WorksTable estimate={estimate} />
      <MaterialsTable estimate={estimate} />
      <EarthTable estimate={estimate} />
      <h2>{words.handoverLeaf.pipes}</h2>
      <PipesTable estimate={estimate} />
      <LiftsTable estimate={estimate} />
      <h2>{words.handoverLeaf.machine}</h2>
      <p>
        {words.handoverLeaf.likelyIn(
          machines.digger.name,
          machines.digger.reason,
          hours.print(machines.hours.likely, site.units),
        )}{" "}
        {words.counts.workingDays(machines.days.likely, plainNumber(machines.days.likely, 0))}{" "}
        {words.handoverLeaf.of(hours.print(machines.hoursPerDay, site.units))}
      </p>
      <h2>{words.handoverLeaf.cost}</h2>
      <CostTable estimate={estimate} />
      <p>{words.sheetsLists.rounded}</p>
      <UnpricedNote site={site} estimate={estimate} />
      <h2>{words.handoverLeaf.findings}</h2>
      <FindingList findings={estimate.findings} />
      <PermitOnPaper list={estimate.permit} />
      <h2>{words.handoverLeaf.cautions}</h2>
      <ul>
        {estimate.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </article>
  );
}
