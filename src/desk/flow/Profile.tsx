import { useMemo } from "react";
import type { ReactNode } from "react";
import { foundLayers, heightOn, layersAt, profileEvents } from "../../estimate/index.js";
import type { FoundLayers, ProfileEvent } from "../../estimate/index.js";
import { findWork } from "../../site/index.js";
import type { PlanPoint } from "../../site/index.js";
import { words } from "../../words/index.js";
import type { PipeCheck } from "../parts.js";
import { patternId } from "../../drawn/index.js";
import { nameOfMaterial } from "../../sheets/index.js";
import { useSite } from "../useSite.js";
import { ProfileDrawing } from "./ProfileDrawing.js";
import { EventTable, ProfileFigures } from "./ProfileTables.js";

/** m: ground before the trench is shown apart from the ground as found when it differs by more. */
const APART = 0.02;

/** Lowest and highest thing that a profile shows, m. */
interface Reach {
  lowest: number;
  highest: number;
}

function reachOf(check: PipeCheck, events: readonly ProfileEvent[]): Reach {
  const heights = [
    ...check.stations.flatMap((one) => [one.ground, one.invert]),
    ...events.flatMap((event) => (event.other === null ? [] : [event.other])),
  ].filter(Number.isFinite);
  const [lowest, highest] = [Math.min(...heights), Math.max(...heights)];
  const tall = Math.max(highest - lowest, 0.3);
  return { lowest: lowest - 0.25 * tall, highest: highest + 0.05 * tall };
}

/** What of this pipe the estimate leaves to the site file: its outside and its cleanouts. */
function usePipe(check: PipeCheck): { outside: number; cleanouts: readonly number[] } {
  const { site, schemeId } = useSite();
  const trench = findWork(site, schemeId, check.trench);
  const pipe =
    trench?.kind === "trench" ? trench.pipes.find((one) => one.id === check.id) : undefined;
  return { outside: pipe?.outside ?? check.inside, cleanouts: pipe?.cleanouts ?? [] };
}

function useEvents(check: PipeCheck, cleanouts: readonly number[]): ProfileEvent[] {
  const { site, schemeId, estimate } = useSite();
  const nameOf = (id: string): string => findWork(site, schemeId, id)?.name ?? id;
  const { joints = [], pipes = [] } = estimate?.flow ?? {};
  return profileEvents({ check, cleanouts, joints, pipes, nameOf });
}

/** Layers as found along the pipe's path, read anew only when path, ground or foot change. */
function useLayers(check: PipeCheck, datum: number): FoundLayers {
  const { site } = useSite();
  const path = JSON.stringify(check.stations.map((one) => one.at));
  return useMemo(
    () => foundLayers(site, JSON.parse(path) as PlanPoint[], datum),
    [site, path, datum],
  );
}

/** Materials as they follow from the top down. */
function materialsDown({ areas }: FoundLayers, check: PipeCheck): string[] {
  const down = check.stations.flatMap(({ station }) => layersAt(areas, station, check.length));
  return [...new Set([...down, ...areas].map((each) => each.material))];
}

/**
 * The pipe along its path, stretched upward so that the fall can be seen: ground, layers as found,
 * invert, and by number the cleanouts, bends, crossings and tanks along it; the figures behind it.
 * Nothing is drawn where the survey does not reach.
 */
export function Profile({ check }: { check: PipeCheck }): ReactNode {
  const { site } = useSite();
  const { outside, cleanouts } = usePipe(check);
  const events = useEvents(check, cleanouts);
  const reach = reachOf(check, events);
  const layers = useLayers(check, reach.lowest);
  const known = check.stations.filter((one) => Number.isFinite(one.ground));
  if (known.length < 2 || check.length <= 0) {
    return <p className="says">{words.flowLeaf.surveyDoesNotReach}</p>;
  }
  const materials = materialsDown(layers, check);
  const offs = known.map(
    ({ station, ground }) => ground - (heightOn(layers.surface, station) ?? ground),
  );
  const within = `profile-${check.id}`;
  return (
    <figure className="drawing" data-drawing="profile">
      <ProfileDrawing
        {...{ check, events, layers, materials, outside, reach, within }}
        foundApart={offs.some((off) => Math.abs(off) > APART)}
      />
      <figcaption>
        {materials.map((material) => (
          <span className="key" key={material}>
            <Swatch fill={`url(#${patternId(material, within)})`} />{" "}
            {nameOfMaterial(site, material)}
          </span>
        ))}
        {offs.some((off) => off > APART) && (
          <span className="key">
            <Swatch fill="var(--earth-fill)" /> {words.flowLeaf.placedOtherWorks}
          </span>
        )}
        {offs.some((off) => Math.abs(off) > APART) && (
          <span className="key">
            <svg width="22" height="12" aria-hidden="true">
              <path className="section-found" d="M0 6H22" />
            </svg>{" "}
            {words.flowLeaf.groundAsFound}
          </span>
        )}
        <EventTable events={events} />
        <ProfileFigures {...{ check, events, layers, materials, outside }} />
      </figcaption>
    </figure>
  );
}

function Swatch({ fill }: { fill: string }): ReactNode {
  return (
    <svg width="22" height="12" aria-hidden="true">
      <rect x="0.5" y="0.5" width="21" height="11" fill={fill} stroke="var(--ink)" />
    </svg>
  );
}
