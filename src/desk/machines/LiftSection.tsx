import type { ReactNode } from "react";
import { freshId } from "../../site/index.js";
import type { Lift, Tank } from "../../site/index.js";
import { distance } from "../../units/index.js";
import { words } from "../../words/index.js";
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
      aria-label={words.machinesLeaf.craneLift}
      data-lift={lift === undefined ? "none" : "set"}
      data-best={estimate?.lift?.best ?? ""}
    >
      <h2>{words.machinesLeaf.settingTheTank}</h2>
      {lift === undefined ? <NoLift tanks={tanks} /> : <LiftSet lift={lift} tanks={tanks} />}
    </section>
  );
}

function NoLift({ tanks }: { tanks: readonly Tank[] }): ReactNode {
  const { site, estimate } = useSite();
  const change = useMachinesChange();
  const [tank] = tanks;
  if (tank === undefined) return <p className="says">{words.machinesLeaf.thereNoTankSet}</p>;
  return (
    <>
      <p className="says">{words.machinesLeaf.concreteTankSetTruck}</p>
      <div className="tools">
        <button
          type="button"
          className="link"
          onClick={() => {
            const lift = newLift(site, estimate?.works ?? [], tank);
            change(words.machinesLeaf.setTankWithCraneEdit, () => ({ lift }));
          }}
        >
          {words.machinesLeaf.setTankWithCrane}
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
      <p className="says">{words.machinesLeaf.planWithNotLift}</p>
      <Findings findings={stops} />
      <CraneFields lift={lift} crane={result?.crane ?? null} />
      {tanks.length === 0 && <p className="says">{words.machinesLeaf.thereNoTankSet}</p>}
      {result?.tanks.map((tank) => (
        <TankStands key={tank.tank} tank={tank} />
      ))}
      <Findings findings={others} />
      <Places lift={lift} tank={tanks[0]} />
      <div className="tools">
        <button
          type="button"
          className="link"
          onClick={() =>
            change(words.machinesLeaf.setTankWithoutCraneEdit, () => ({ lift: undefined }))
          }
        >
          {words.machinesLeaf.doWithoutCrane}
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
      tank === undefined ? [0, 0] : nextPlace(site, estimate?.works ?? [], tank, stands, spread);
    change(words.machinesLeaf.addPlaceCraneEdit, {
      stands: [...stands, { id, name: words.machinesLeaf.place(stands.length + 1), at }],
    });
  }
  return (
    <>
      <h3>{words.machinesLeaf.placesCrane}</h3>
      {stands.length === 0 && <p className="says">{words.machinesLeaf.noneYetAddWhere}</p>}
      {stands.map((stand) => (
        <PlaceOfCrane key={stand.id} stand={stand} stands={stands} />
      ))}
      <div className="tools">
        <button type="button" className="link" onClick={add}>
          {words.machinesLeaf.anotherPlace}
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
        amount={words.machinesLeaf.eastNorth(
          distance.print(east, units),
          distance.print(north, units),
        )}
      >
        <NameField
          label={words.machinesLeaf.name}
          name="stand-name"
          value={stand.name}
          onCommit={(name) => put(words.machinesLeaf.renameEdit(stand.name), { ...stand, name })}
        />
        <PlaceFields
          at={stand.at}
          onMove={(at) =>
            put(words.machinesLeaf.moveEdit(stand.name), { ...stand, at: [at[0], at[1]] })
          }
        />
        <div className="tools">
          <button
            type="button"
            className="link"
            onClick={() => put(words.machinesLeaf.removeEdit(stand.name), null)}
          >
            {words.machinesLeaf.removeThisPlace}
          </button>
        </div>
      </Working>
    </div>
  );
}
