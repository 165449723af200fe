import type { ReactNode } from "react";
import type { PressureResult } from "../parts.js";
import { removePressure } from "../../site/index.js";
import type { PressureSystem } from "../../site/index.js";
import { flow, head, liquidVolume, minutes, plainNumber, velocity } from "../../units/index.js";
import { Findings, findingsAt } from "../Findings.js";
import { words } from "../../words/index.js";
import { useEdit, useSite } from "../useSite.js";
import { QuantityWorking, Working } from "../Working.js";
import { BranchFields } from "./BranchFields.js";
import { FloatDiagram } from "./FloatDiagram.js";
import { DoseFields, MainFields } from "./PressureFields.js";
import { PumpChart } from "./PumpChart.js";
import { PumpTable } from "./PumpTable.js";
import { Rows } from "./Rows.js";

/** Findings of a pressure system start with one of these words. */
const OWN = /^(pump|main|laterals|beds|dose|chamber|pressure)\./;

/** A pressure system: whether its pump serves, why, and everything that can be changed about it. */
export function PressureSection(props: {
  system: PressureSystem;
  result: PressureResult | undefined;
}): ReactNode {
  const { system, result } = props;
  const { estimate, schemeId } = useSite();
  const edit = useEdit();
  const own = findingsAt(estimate?.findings, [system.tank]).filter((one) => OWN.test(one.code));
  return (
    <section
      aria-label={system.name}
      data-pressure={system.id}
      data-flow={result?.flow.value}
      data-lift={result?.lift.value}
      data-head={result?.head.value}
      data-run={result?.dose?.runTime?.value}
    >
      <h2>
        {system.name}
        {result !== undefined && <Verdict result={result} />}
      </h2>
      {result !== undefined && <Duty result={result} />}
      <Findings findings={own} />
      {result !== undefined && <PumpChart result={result} />}
      {result !== undefined && <PumpTable system={system} result={result} />}
      <MainFields system={system} />
      <h3>{words.flowLeaf.beds}</h3>
      {system.branches.map((branch) => (
        <BranchFields
          key={branch.id}
          system={system}
          branch={branch}
          result={result?.branches.find((one) => one.id === branch.id)}
        />
      ))}
      <h3>{words.flowLeaf.dosesAndFloats}</h3>
      {result !== undefined && <FloatDiagram result={result} />}
      {result !== undefined && <DoseFigures result={result} />}
      <DoseFields system={system} />
      <div className="tools">
        <button
          type="button"
          className="link"
          onClick={() =>
            edit(words.flowLeaf.removeEdit(system.name), (site) =>
              removePressure(site, schemeId, system.id),
            )
          }
        >
          {words.flowLeaf.removePumpLaterals}
        </button>
      </div>
    </section>
  );
}

function Verdict({ result }: { result: PressureResult }): ReactNode {
  const used = result.pumps.find((pump) => pump.id === result.pump);
  const good = used?.outcome === "runs" && used.meets;
  const says = good
    ? words.flowLeaf.pumpStrongEnough
    : used?.outcome === "no-flow"
      ? words.flowLeaf.cannotLiftHigh
      : used?.outcome === "off-curve"
        ? words.flowLeaf.runsOffCurve
        : words.flowLeaf.tooWeak;
  return <span className={`verdict ${good ? "runs" : "wrong"}`}>{says}</span>;
}

function Duty({ result }: { result: PressureResult }): ReactNode {
  const { units } = useSite().site;
  const { parts } = result;
  const pieces = [
    [words.flowLeaf.liftLastHoles, parts.lift],
    [words.flowLeaf.lostRiserMain, parts.main],
    [words.flowLeaf.lostBranchLaterals, parts.beyond],
    [words.flowLeaf.leftLastHole, parts.last],
  ] as const;
  return (
    <>
      <Working text={words.flowLeaf.runsAt} amount={flow.print(result.flow.value, units)}>
        <QuantityWorking quantity={result.flow} decimal />
      </Working>
      <Working text={words.flowLeaf.againstHead} amount={head.print(result.head.value, units)}>
        <p>{words.terms.head.says}</p>
        <Rows rows={pieces.map(([name, value]) => [name, head.print(value, units)])} />
        <QuantityWorking quantity={result.head} decimal />
      </Working>
      <Working text={words.flowLeaf.liftAtRestLabel} amount={head.print(result.lift.value, units)}>
        <QuantityWorking quantity={result.lift} decimal />
      </Working>
      <Working
        text={words.flowLeaf.wantedLabel}
        amount={words.flowLeaf.flowAtHead(
          flow.print(result.wanted.flow.value, units),
          head.print(result.wanted.head.value, units),
        )}
      >
        <QuantityWorking quantity={result.wanted.flow} decimal />
      </Working>
      <Working
        text={words.flowLeaf.speedMain}
        amount={velocity.print(result.velocity.value, units)}
      >
        <QuantityWorking quantity={result.velocity} decimal />
        <p>{words.flowLeaf.stoppedOnceAddsPressure(head.print(result.surge.value, units))}</p>
        <QuantityWorking quantity={result.surge} decimal />
      </Working>
    </>
  );
}

function DoseFigures({ result }: { result: PressureResult }): ReactNode {
  const { units } = useSite().site;
  const { dose } = result;
  if (dose === null) return null;
  const rows: readonly (readonly [string, string])[] = [
    [words.flowLeaf.drawnEachTimeWith, liquidVolume.print(dose.plan.drawn, units)],
    [words.flowLeaf.freeOverAlarm, liquidVolume.print(dose.plan.reserve, units)],
    [
      words.flowLeaf.withoutPowerHolds,
      words.flowLeaf.hOfFlow(plainNumber(dose.plan.hoursWithoutPower, 0)),
    ],
  ];
  return (
    <>
      <Working text={words.flowLeaf.oneDose} amount={liquidVolume.print(dose.volume.value, units)}>
        <p>{words.terms.dose.says}</p>
        <QuantityWorking quantity={dose.volume} liquid decimal />
      </Working>
      {dose.runTime !== null && (
        <Working text={words.flowLeaf.pumpRuns} amount={minutes.print(dose.runTime.value, units)}>
          <QuantityWorking quantity={dose.runTime} liquid decimal />
        </Working>
      )}
      <Working
        text={words.flowLeaf.runsBackAfterEach}
        amount={liquidVolume.print(result.drainBack.value, units)}
      >
        <p>{words.terms.drainBack.says}</p>
        <QuantityWorking quantity={result.drainBack} liquid decimal />
      </Working>
      <Rows rows={rows} />
      <p className="soft">{words.flowLeaf.freeIs(words.flowLeaf.freeTo[dose.plan.freeTo])}</p>
    </>
  );
}
