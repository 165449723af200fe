import type { ReactNode } from "react";
import { STREAM_REACH } from "../../estimate/index.js";
import type { Work } from "../../site/index.js";
import { useDesk } from "../../store/index.js";
import { area, distance, elevation, length } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { Runoff } from "../parts.js";
import { useSite } from "../useSite.js";
import { addDitch } from "./keepLine.js";
import { limitNames, meetNames } from "./meetNames.js";
import { planLength } from "./planLength.js";
import { useRunoffOf } from "./useDrains.js";

const says = words.water.work;

/** What of the ground's water comes to the picked work, shown on the ground, and the ditch above it. */
export function WorkWater({ work }: { work: Work }): ReactNode {
  const { site } = useSite();
  const runoff = useRunoffOf(work.id);
  const draining = useDesk((desk) => desk.draining);
  const { show } = useDesk.getState();
  if (runoff === null) return null;
  const { units } = site;
  const turned = runoff.undrained - runoff.area;
  const [first, last] = [runoff.longest[0], runoff.longest.at(-1)];
  return (
    <section className="work-water" aria-label={says.title}>
      <h3>{says.title}</h3>
      <p>{runoff.area > 0 ? says.drains(area.print(runoff.area, units)) : says.none}</p>
      {work.kind === "trench" && runoff.area > 0 && (
        <p>
          {says.together(area.print(runoff.gathered, units), distance.print(STREAM_REACH, units))}
        </p>
      )}
      {turned > 0 && <p>{says.turned(area.print(turned, units))}</p>}
      {turned < 0 && <p>{says.brought(area.print(-turned, units))}</p>}
      {first !== undefined && last !== undefined && (
        <p>
          {says.longest(
            distance.print(planLength(runoff.longest), units),
            distance.print(first[2] - last[2], units),
          )}
        </p>
      )}
      {runoff.standing > 0 && <p>{says.standing(length.print(runoff.standing, units))}</p>}
      {runoff.area > 0 && (
        <button
          type="button"
          className="button"
          aria-pressed={draining}
          onClick={() => show({ draining: !draining })}
        >
          {says.show}
        </button>
      )}
      {runoff.ditch !== null && (
        <DitchAbove
          work={work}
          ditch={runoff.ditch}
          meets={runoff.ditchMeets}
          limits={runoff.ditchLimits}
        />
      )}
    </section>
  );
}

interface DitchProps {
  work: Work;
  ditch: NonNullable<Runoff["ditch"]>;
  meets: Runoff["ditchMeets"];
  limits: Runoff["ditchLimits"];
}

/** What is said of the limits that a ditch meets, the worst first. */
const LIMITS = [
  ["off-lot", says.offLot],
  ["crosses", says.crosses],
  ["ends", says.ends],
  ["near", says.near],
  ["lets-go", says.letsGo],
] as const;

/** What the ditch that is offered would itself run into, so that it is known before it is added. */
function DitchMeets({ meets, limits }: Pick<DitchProps, "meets" | "limits">): ReactNode {
  const { site, schemeId } = useSite();
  if (meets.length === 0 && limits.length === 0) return <p>{says.clear}</p>;
  const named = (how: Runoff["ditchMeets"][number]["how"]): string =>
    meetNames(
      site,
      schemeId,
      meets.filter((one) => one.how === how),
    );
  const [through, into] = [named("crosses"), named("lets-go")];
  return (
    <>
      {through !== "" && <p className="wrong-note">{says.through(through)}</p>}
      {into !== "" && <p className="wrong-note">{says.into(into)}</p>}
      {LIMITS.map(([how, say]) => {
        const names = limitNames(site, limits, how);
        return (
          names !== "" && (
            <p key={how} className="wrong-note">
              {say(names)}
            </p>
          )
        );
      })}
    </>
  );
}

function DitchAbove({ work, ditch, meets, limits }: DitchProps): ReactNode {
  const { units } = useSite().site;
  const [high, low] = [ditch[0]?.[2], ditch.at(-1)?.[2]];
  if (high === undefined || low === undefined) return null;
  return (
    <>
      <p>
        {says.ditch(
          distance.print(planLength(ditch), units),
          distance.print(high - low, units),
          elevation.print(high, units),
          elevation.print(low, units),
        )}
      </p>
      <DitchMeets meets={meets} limits={limits} />
      <button type="button" className="button" onClick={() => addDitch(work.name, ditch)}>
        {says.add}
      </button>
      <p className="soft">{says.drawnOnly}</p>
    </>
  );
}
