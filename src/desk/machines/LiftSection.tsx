import type { ReactNode } from "react";
import { freshId } from "../../site/index.js";
import type { Lift, Tank } from "../../site/index.js";
import { distance } from "../../units/index.js";
import { PlaceFields } from "../dig/PlaceFields.js";
import { NameField } from "../fields/NameField.js";
import { Findings } from "../Findings.js";
import { useScheme } from "../flow/useFlow.js";
import { useSite } from "../useSite.js";
import { Working } from "../Working.js";
import { CraneFields } from "./CraneFields.js";
import { TankStands } from "./LiftStands.js";
import { newLift, nextPlace } from "./newLift.js";
import { useLiftChange, useMachinesChange } from "./useMachines.js";

/** The crane that sets the tanks: which one, from where, and whether anything speaks against it. */
export function LiftSection(): ReactNode {
  const { estimate } = useSite();
  const scheme = useScheme();
  const tanks = (scheme?.works ?? []).filter((work) => work.kind === "tank");
  const lift = scheme?.machines?.lift;
  return (
    <section
      aria-label="Crane lift"
      data-lift={lift === undefined ? "none" : "set"}
      data-best={estimate?.lift?.best ?? ""}
    >
      <h2>Setting the tank</h2>
      {lift === undefined ? <NoLift tanks={tanks} /> : <LiftSet lift={lift} tanks={tanks} />}
    </section>
  );
}

function NoLift({ tanks }: { tanks: readonly Tank[] }): ReactNode {
  const { site, estimate } = useSite();
  const change = useMachinesChange();
  const [tank] = tanks;
  if (tank === undefined) return <p className="says">There is no tank to set in this scheme.</p>;
  return (
    <>
      <p className="says">
        A concrete tank is set by the truck that brings it or by a crane. The chart of that crane,
        where it can stand, the edge of the hole and overhead lines say whether it reaches.
      </p>
      <div className="tools">
        <button
          type="button"
          className="link"
          onClick={() => {
            const lift = newLift(site, estimate?.works ?? [], tank);
            change("set the tank with a crane truck", () => ({ lift }));
          }}
        >
          Set the tank with a crane truck
        </button>
      </div>
    </>
  );
}

function LiftSet({ lift, tanks }: { lift: Lift; tanks: readonly Tank[] }): ReactNode {
  const { estimate } = useSite();
  const change = useMachinesChange();
  const result = estimate?.lift ?? null;
  const said = (estimate?.findings ?? []).filter(({ code }) => code.startsWith("lift."));
  const stops = said.filter(({ level }) => level === "stop");
  const others = said.filter(({ level }) => level !== "stop");
  return (
    <>
      <p className="says">
        To plan with, not to lift by. The operator decides, with the chart in the cab and the ground
        in view.
      </p>
      <Findings findings={stops} />
      <CraneFields lift={lift} crane={result?.crane ?? null} />
      {tanks.length === 0 && <p className="says">There is no tank to set in this scheme.</p>}
      {result?.tanks.map((tank) => (
        <TankStands key={tank.tank} tank={tank} />
      ))}
      <Findings findings={others} />
      <Places lift={lift} tank={tanks[0]} />
      <div className="tools">
        <button
          type="button"
          className="link"
          onClick={() => change("set the tank without a crane", () => ({ lift: undefined }))}
        >
          Do without a crane
        </button>
      </div>
    </>
  );
}

/** The places where the crane might stand. */
function Places({ lift, tank }: { lift: Lift; tank: Tank | undefined }): ReactNode {
  const { site, estimate } = useSite();
  const change = useLiftChange();
  const { stands } = lift;
  function add(): void {
    const taken = stands.map(({ id }) => id);
    const id = freshId(site, "stand", taken);
    const spread = estimate?.lift?.crane.outriggers ?? 0;
    const at: [number, number] =
      tank === undefined ? [0, 0] : nextPlace(estimate?.works ?? [], tank, stands, spread);
    change("add a place for the crane", {
      stands: [...stands, { id, name: `Place ${stands.length + 1}`, at }],
    });
  }
  return (
    <>
      <h3>Places for the crane</h3>
      {stands.length === 0 && <p className="says">None yet: add where it might stand.</p>}
      {stands.map((stand) => (
        <PlaceOfCrane key={stand.id} stand={stand} stands={stands} />
      ))}
      <div className="tools">
        <button type="button" className="link" onClick={add}>
          + Another place
        </button>
      </div>
    </>
  );
}

type Stand = Lift["stands"][number];

function PlaceOfCrane(props: { stand: Stand; stands: readonly Stand[] }): ReactNode {
  const { stand, stands } = props;
  const { units } = useSite().site;
  const change = useLiftChange();
  const put = (what: string, next: Stand | null): void =>
    change(what, {
      stands: stands.flatMap((one) => (one.id !== stand.id ? [one] : next === null ? [] : [next])),
    });
  const [east, north] = stand.at;
  return (
    <div data-stand={stand.id}>
      <Working
        text={stand.name}
        amount={`${distance.print(east, units)} E, ${distance.print(north, units)} N`}
      >
        <NameField
          label="Name"
          name="stand-name"
          value={stand.name}
          onCommit={(name) => put(`rename ${stand.name}`, { ...stand, name })}
        />
        <PlaceFields
          at={stand.at}
          onMove={(at) => put(`move ${stand.name}`, { ...stand, at: [at[0], at[1]] })}
        />
        <div className="tools">
          <button type="button" className="link" onClick={() => put(`remove ${stand.name}`, null)}>
            Remove this place
          </button>
        </div>
      </Working>
    </div>
  );
}
