import type { ReactNode } from "react";
import type { PressureResult, StaticLift } from "../parts.js";
import { addPressure } from "../../site/index.js";
import type { Scheme } from "../../site/index.js";
import { elevation, head, length } from "../../units/index.js";
import { words } from "../../words/index.js";
import { Empty, PlaceButton } from "../Empty.js";
import { Findings, findingsAt } from "../Findings.js";
import { useEdit, useSite } from "../useSite.js";
import { QuantityWorking, Working } from "../Working.js";
import { FlotationSection } from "./FlotationSection.js";
import { FlowLine } from "./FlowLine.js";
import { newSystem } from "./newSystem.js";
import { PipeSection } from "./PipeSection.js";
import { PressureSection } from "./PressureSection.js";
import { RulesSection } from "./RulesSection.js";
import { SizingSection } from "./SizingSection.js";
import { TankHeight } from "./TankHeight.js";
import { useScheme } from "./useFlow.js";

function LiftSection({ lift }: { lift: StaticLift }): ReactNode {
  const { units } = useSite().site;
  return (
    <Working
      text={words.flowLeaf.liftAtRest(lift.name)}
      amount={head.print(lift.lift.value, units)}
    >
      <table className="table">
        <tbody>
          <tr>
            <th scope="row">{words.flowLeaf.waterWhenPumpStops}</th>
            <td>{elevation.print(lift.lowWater, units)}</td>
          </tr>
          <tr>
            <th scope="row">{words.flowLeaf.farEnd}</th>
            <td>{elevation.print(lift.outlet, units)}</td>
          </tr>
          <tr>
            <th scope="row">{words.flowLeaf.highestWay}</th>
            <td>{elevation.print(lift.highest, units)}</td>
          </tr>
        </tbody>
      </table>
      <QuantityWorking quantity={lift.lift} />
    </Working>
  );
}

/** Lifts that no pressure system serves yet, each with a way to give it a pump. */
function Unserved({ lifts, scheme }: { lifts: readonly StaticLift[]; scheme: Scheme }): ReactNode {
  const { schemeId } = useSite();
  const edit = useEdit();
  return lifts.map((lift) => (
    <section key={lift.pipe} aria-label={words.flowLeaf.lift(lift.name)}>
      <LiftSection lift={lift} />
      <button
        type="button"
        className="link"
        onClick={() =>
          edit(words.flowLeaf.pumpForEdit(lift.name), (site) =>
            addPressure(site, schemeId, newSystem(scheme, lift)),
          )
        }
      >
        {words.flowLeaf.choosePumpLaterals(lift.name)}
      </button>
    </section>
  ));
}

function Joints(): ReactNode {
  const { estimate, site, schemeId } = useSite();
  const flow = estimate?.flow;
  const works = site.schemes.find((scheme) => scheme.id === schemeId)?.works ?? [];
  if (flow === undefined || flow.joints.length + flow.outlets.length === 0) return null;
  const pipeName = (id: string): string => flow.pipes.find((one) => one.id === id)?.name ?? id;
  const off = (metres: number): string =>
    Math.abs(metres) < 0.0005
      ? words.flowLeaf.meetsItsInvert
      : words.flowLeaf.itsInvert(
          length.print(Math.abs(metres), site.units, { digits: 2 }),
          metres > 0 ? words.flowLeaf.above : words.flowLeaf.below,
        );
  return (
    <>
      <h2>{flow.outlets.length === 0 ? words.flowLeaf.jointsAtTanks : words.joined.title}</h2>
      {flow.outlets.map((joint) => (
        <p key={`${joint.pipe} ${joint.outlet}`}>
          {words.joined.at(pipeName(joint.pipe), joint.name, off(joint.off))}
        </p>
      ))}
      {flow.joints.map((joint) => (
        <p key={`${joint.pipe} ${joint.tank} ${joint.side}`}>
          {words.flowLeaf.jointAtTank(
            pipeName(joint.pipe),
            works.find((work) => work.id === joint.tank)?.name ?? joint.tank,
            joint.side,
            off(joint.off),
          )}
        </p>
      ))}
    </>
  );
}

/**
 * The way of the water in one drawing; each pump with its chart, floats and laterals; each pipe with
 * its profile, fall and what would mend it; sizes, groundwater, and the limits used.
 */
export function FlowLeaf(): ReactNode {
  const { estimate } = useSite();
  const scheme = useScheme();
  const flow = estimate?.flow;
  if (flow === undefined || scheme === undefined)
    return <p className="says">{words.flowLeaf.thereNoEstimateRead}</p>;
  const systems = scheme.flow?.pressure ?? [];
  const served = new Set(systems.flatMap((system) => system.main));
  const results = new Map<string, PressureResult>(flow.pressure.map((one) => [one.id, one]));
  const tanks = scheme.works.filter((work) => work.kind === "tank").map((tank) => tank.id);
  return (
    <>
      {flow.pipes.length === 0 && (
        <Empty title={words.book.empty.flowTitle} text={words.book.empty.flow}>
          <PlaceButton kind="trench" text={words.book.empty.placeTrench} />
        </Empty>
      )}
      <FlowLine pipes={flow.pipes} pressure={flow.pressure} outlets={flow.outlets} />
      {systems.map((system) => (
        <PressureSection key={system.id} system={system} result={results.get(system.id)} />
      ))}
      <Unserved lifts={flow.lifts.filter((lift) => !served.has(lift.pipe))} scheme={scheme} />
      {flow.pipes.map((check) => (
        <PipeSection key={check.id} check={check} />
      ))}
      <Joints />
      {flow.highest.map((highest) => (
        <TankHeight key={highest.tank} highest={highest} />
      ))}
      <Findings
        findings={findingsAt(estimate?.findings, tanks).filter((one) =>
          /^(pipe\.|lift\.|tank\.little-drop)/.test(one.code),
        )}
      />
      <SizingSection />
      <FlotationSection />
      <RulesSection />
    </>
  );
}
