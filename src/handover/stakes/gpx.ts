import XMLBuilder from "fast-xml-builder";
import type { PlanPoint } from "../../site/index.js";
import { headLines, standingLines } from "../standing.js";
import { words } from "../../words/index.js";
import { cutWords, earthOf, faults, plainMetres, workName } from "./stakeTable.js";
import type { StakeOut } from "./stakeTable.js";
import type { Stake, StakeGroup } from "./stake.js";

/** The media type of GPX. */
export const GPX_TYPE = "application/gpx+xml";

/**
 * Stakes as waypoints, outlines and centre lines as tracks: GPX 1.1 (topografix, the schema's order of
 * elements). Elevations are the ground's, m, in the survey's own datum. Null where the site is not
 * placed on the earth.
 */
export function gpxOf(out: StakeOut): string | null {
  const { job, groups } = out;
  if (job.site.place === undefined) return null;
  const stakes = groups.flatMap((group) => group.stakes);
  const tree = {
    "?xml": { "@version": "1.0", "@encoding": "UTF-8" },
    gpx: {
      "@version": "1.1",
      "@creator": "Bankyard",
      "@xmlns": "http://www.topografix.com/GPX/1/1",
      metadata: {
        name: plain(`${job.site.name}: ${headLines(job)[1]![1]}`),
        desc: plain(
          [words.stakes.receiver, words.stakes.gpxHeights, ...standingLines(job).map(said)].join(
            "\n",
          ),
        ),
        time: job.madeAt,
      },
      wpt: stakes.map((stake) => waypoint(out, stake)),
      trk: groups.filter(isTrack).map((group) => track(out, group)),
    },
  };
  const builder = new XMLBuilder({
    ignoreAttributes: false,
    attributeNamePrefix: "@",
    format: true,
  });
  return builder.build(tree);
}

const said = ([label, text]: readonly [string, string]): string =>
  label === "" ? text : `${label}: ${text}`;

/** Signs that XML 1.0 cannot hold are left out. */
const plain = (text: string): string =>
  text.replace(/[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]/g, "");

const isTrack = ({ kind, stakes }: StakeGroup): boolean =>
  ["floor", "top", "centre", "corner"].includes(kind) && stakes.length > 1;

function place({ job }: StakeOut, at: PlanPoint): { "@lat": string; "@lon": string } {
  const earth = earthOf(job, at);
  if (earth === null) throw new Error("gpx: got a site that is not placed on the earth");
  return { "@lat": earth.latitude.toFixed(8), "@lon": earth.longitude.toFixed(8) };
}

const height = ({ ground }: Stake): { ele?: string } =>
  ground === null ? {} : { ele: plainMetres(ground) };

function waypoint(out: StakeOut, stake: Stake): object {
  const { job } = out;
  const texts = [
    words.stakes.described(workName(job, stake.work), words.stakes.kinds[stake.kind]),
    cutWords(job, stake),
    ...faults(out, stake),
  ].filter((text) => text !== "");
  return {
    ...place(out, stake.at),
    ...height(stake),
    name: stake.name,
    desc: plain(texts.join("; ")),
    type: words.stakes.kinds[stake.kind],
  };
}

function track(out: StakeOut, { work, kind, closed, stakes }: StakeGroup): object {
  const ring = closed ? [...stakes, stakes[0]!] : stakes;
  const name = words.stakes.trackName(
    workName(out.job, work),
    words.stakes.kinds[kind].toLowerCase(),
  );
  return {
    name: plain(name),
    trkseg: { trkpt: ring.map((stake) => ({ ...place(out, stake.at), ...height(stake) })) },
  };
}
