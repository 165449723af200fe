import { useMemo, useState, type ReactNode } from "react";
import { words } from "../../words/index.js";
import type { HighestTank } from "../parts.js";
import { estimate as reckon } from "../../estimate/index.js";
import type { Estimate } from "../../estimate/index.js";
import { findWork, materialsOf } from "../../site/index.js";
import type { Site } from "../../site/index.js";
import { earthVolume, length, money } from "../../units/index.js";
import { useEdit, useSite } from "../useSite.js";
import { withTankRaised } from "./raised.js";

/** m: a move smaller than this is none. */
const NOTICED = 0.001;

/** How high a tank can stand under its drain, and what standing there does to the dig. */
export function TankHeight({ highest }: { highest: HighestTank }): ReactNode {
  const { site, schemeId, estimate } = useSite();
  const [open, setOpen] = useState(false);
  const tank = findWork(site, schemeId, highest.tank);
  if (tank === null || estimate === null) return null;
  const { units } = site;
  const drain = estimate.flow.pipes.find((pipe) => pipe.id === highest.drain);
  const amount = length.print(Math.abs(highest.rise), units);
  const can =
    Math.abs(highest.rise) < NOTICED
      ? words.flowLeaf.highCan
      : `${amount} ${highest.rise > 0 ? "higher" : "lower"}`;
  return (
    <details
      className="working"
      data-highest={highest.tank}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>
        <span className="text">{words.flowLeaf.highDrainAllows(tank.name)}</span>
        <span className="amount">{can}</span>
      </summary>
      <div className="inside">
        <p>{words.flowLeaf.thenFallsJustLeast(drain?.name ?? words.flowLeaf.itsDrain)}</p>
        {open && Math.abs(highest.rise) >= NOTICED && <Raise highest={highest} />}
      </div>
    </details>
  );
}

function rockIn(answer: Estimate, site: Site): number {
  const materials = materialsOf(site);
  return Object.entries(answer.cut)
    .filter(([id]) => ["rippable", "rock"].includes(materials.get(id)?.kind ?? ""))
    .reduce((sum, [, volume]) => sum + volume, 0);
}

/** The dig now and with the tank there, and the button that puts it there. */
function Raise({ highest }: { highest: HighestTank }): ReactNode {
  const { site, schemeId, estimate } = useSite();
  const edit = useEdit();
  const { units, currency } = site;
  const raised = useMemo(
    () => withTankRaised(site, schemeId, highest, estimate?.flow.joints ?? []),
    [site, schemeId, highest, estimate],
  );
  const after = useMemo(() => reckon(raised, schemeId), [raised, schemeId]);
  if (estimate === null) return null;
  const rows = [
    [words.flowLeaf.cut, (one: Estimate) => earthVolume.print(one.earth.bank, units)],
    [words.flowLeaf.ofItRock, (one: Estimate) => earthVolume.print(rockIn(one, site), units)],
    [words.flowLeaf.cost, (one: Estimate) => money(currency).print(one.cost.total.likely, units)],
  ] as const;
  return (
    <>
      <table className="table">
        <thead>
          <tr>
            <th scope="col">
              <span className="unseen">{words.forms.figure}</span>
            </th>
            <th scope="col">{words.flowLeaf.now}</th>
            <th scope="col">{words.flowLeaf.there}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(([name, print]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{print(estimate)}</td>
              <td>{print(after)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <div className="tools">
        <button
          type="button"
          className="link"
          onClick={() =>
            edit(words.flowLeaf.tankDrainEdit, (now) =>
              withTankRaised(now, schemeId, highest, estimate.flow.joints),
            )
          }
        >
          {words.flowLeaf.putTherePipesWith}
        </button>
      </div>
    </>
  );
}
