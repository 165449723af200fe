/** The crane lift of each tank from each place where the crane might stand. */
import type { DigResult } from "../dig/index.js";
import type { Finding, Lift, PlanPoint, Quantity, Scheme, Site, Tank } from "../site/index.js";
import { catalogueCranes, chartRow, liftRules } from "./cranes.js";
import type { ChartRow } from "./cranes.js";
import { edgeRoom, lineRoom, padPressure } from "./liftGround.js";
import { liftFindings } from "./liftFindings.js";
import { standWarnings } from "./liftWarnings.js";
import type { Barrier, LiftCrane, LiftJob, LiftResult, StandLift, TankLift } from "./liftTypes.js";
import type { GroundAt } from "./standing.js";
import type { Reason } from "./types.js";

/**
 * Every tank of the scheme lifted from every stand: load, radius, rating, hole's edge, overhead lines
 * and pads. The result is null when the scheme has no lift, or a crane that the catalogue lacks.
 * Distances are in plan. No result says that a lift is safe: the operator decides.
 */
export function checkLift(
  site: Pick<Site, "limits" | "units" | "rules">,
  scheme: Scheme,
  dig: Pick<DigResult, "works">,
  groundAt: GroundAt,
  barriers: readonly Barrier[] = [],
): { result: LiftResult | null; findings: Finding[] } {
  const lift = scheme.machines?.lift;
  if (lift === undefined) return { result: null, findings: [] };
  const crane = craneOf(lift.crane);
  if (crane === null) return { result: null, findings: [unknownCrane(lift)] };
  const job: LiftJob = { site, lift, crane, dig, groundAt, barriers };
  const tanks = scheme.works
    .filter((work) => work.kind === "tank")
    .map((tank) => tankLift(job, tank));
  const result = { crane, tanks, best: bestForAll(lift, tanks) };
  return { result, findings: liftFindings(job, result) };
}

function craneOf(crane: Lift["crane"]): LiftCrane | null {
  const { mass, block, outriggers, padArea } = crane;
  const given = {
    ...(mass !== undefined && { mass }),
    ...(block !== undefined && { block }),
    ...(outriggers !== undefined && { outriggers }),
    ...(padArea !== undefined && { padArea }),
  };
  if (crane.by === "table") {
    const source = crane.source ?? "chart entered in this scheme";
    return { name: crane.name, table: crane.table, ...given, source };
  }
  const row = catalogueCranes().find(({ id }) => id === crane.id);
  return row === undefined ? null : { ...row, ...given };
}

function unknownCrane({ crane }: Lift): Finding {
  const known = catalogueCranes().map(({ id }) => id);
  const wanted = crane.by === "catalogue" ? crane.id : crane.name;
  return {
    level: "caution",
    code: "lift.unknown-crane",
    where: "site",
    text: `The catalogue has no crane “${wanted}”, so no lift is worked out. Use one of ${known.join(", ")}, or enter the chart of the crane on offer.`,
    source: "the site file",
  };
}

function tankLift(job: LiftJob, tank: Tank): TankLift {
  const load = loadOf(job, tank);
  const stands = job.lift.stands.map((stand) => standLift(job, tank, stand, load));
  const works = stands.filter((stand) => stand.works);
  const best = works.reduce<StandLift | undefined>(
    (least, stand) => (least && shareOf(least) <= shareOf(stand) ? least : stand),
    undefined,
  );
  return { tank: tank.id, name: tank.name, load, stands, best: best?.stand ?? null };
}

function shareOf({ share }: StandLift): number {
  return share?.value ?? Infinity;
}

function bestForAll({ stands }: Lift, tanks: readonly TankLift[]): string | null {
  let best: { id: string; share: number } | null = null;
  for (const { id } of tanks.length === 0 ? [] : stands) {
    const lifts = tanks.flatMap((tank) => tank.stands.filter(({ stand }) => stand === id));
    if (!lifts.every(({ works }) => works)) continue;
    const share = Math.max(...lifts.map(shareOf));
    if (best === null || share < best.share) best = { id, share };
  }
  return best?.id ?? null;
}

/** kg on the hook: the ticket's weight, slings and block. Null without the ticket's weight. */
function loadOf({ lift, crane }: LiftJob, tank: Tank): Quantity | null {
  const { emptyMass } = tank.body;
  if (emptyMass === undefined) return null;
  const block = crane.block ?? 0;
  return {
    value: emptyMass + lift.rigging + block,
    unit: "kg",
    formula: "tank empty + rigging + hook block",
    inputs: [
      { name: "tank empty, by the ticket", value: emptyMass, unit: "kg" },
      { name: "rigging", value: lift.rigging, unit: "kg" },
      { name: "hook block", value: block, unit: "kg" },
    ],
    source: "block and slings count as load: WAC 296-24-24005",
  };
}

type Stand = Lift["stands"][number];

function standLift(job: LiftJob, tank: Tank, stand: Stand, load: Quantity | null): StandLift {
  const radius = radiusOf(stand.at, tank.at);
  const row = chartRow(job.crane.table, radius.value);
  const rated = row === null ? null : ratedOf(row, radius.value, job.crane);
  const share = load === null || rated === null ? null : sharedOf(load, rated);
  const edge = edgeRoom(job, tank, stand.at);
  const line = lineRoom(job, tank, stand.at, radius.value);
  const pad = load === null ? null : padPressure(job, load.value);
  const reasons: Reason[] = [];
  const against = (code: string, text: string, needs: number, has: number, unit: string) =>
    reasons.push({ code, work: tank.id, text, needs, has, unit });
  if (load === null) {
    against("no-weight", `no weight of ${tank.name} is entered`, 0, 0, "kg");
  }
  if (rated === null) {
    const longest = Math.max(...job.crane.table.map((each) => each.radius));
    against("beyond-table", "the chart ends at a shorter radius", radius.value, longest, "m");
  } else if (load !== null && load.value > rated.value) {
    against("over-rating", "the load is more than the rating", load.value, rated.value, "kg");
  }
  if (edge !== null && edge.distance.value < edge.needed.value) {
    const text = "a pad would stand too near the hole's edge";
    against("edge", text, edge.needed.value, edge.distance.value, "m");
  }
  if (line !== null && line.distance.value < line.needed.value) {
    const text = `boom or load could come too near ${line.name}`;
    against("line", text, line.needed.value, line.distance.value, "m");
  }
  const bearing = job.lift.groundBearing;
  if (pad !== null && bearing !== undefined && pad.value > bearing) {
    against("pad", "a pad presses harder than the ground may carry", pad.value, bearing, "Pa");
  }
  const unlevel = unlevelOf(job, stand.at);
  const { id, name } = stand;
  const works = reasons.length === 0;
  const warnings = standWarnings(job, stand.at, { share, line });
  return {
    stand: id,
    name,
    works,
    reasons,
    warnings,
    radius,
    rated,
    share,
    edge,
    line,
    pad,
    unlevel,
  };
}

function radiusOf(from: PlanPoint, to: PlanPoint): Quantity {
  const [east, north] = [to[0] - from[0], to[1] - from[1]];
  return {
    value: Math.hypot(east, north),
    unit: "m",
    formula: "distance in plan from the axis of rotation to the tank's centre",
    inputs: [
      { name: "tank east of the stand", value: east, unit: "m" },
      { name: "tank north of the stand", value: north, unit: "m" },
    ],
    source: "geometry; radius as in WAC 296-24-24005",
  };
}

function ratedOf(row: ChartRow, radius: number, { source }: LiftCrane): Quantity {
  return {
    value: row.load,
    unit: "kg",
    formula: "chart's load at the next longer radius that it lists",
    inputs: [
      { name: "radius", value: radius, unit: "m" },
      { name: "radius of the chart's row", value: row.radius, unit: "m" },
    ],
    source: `${source}; longer radius: US Navy NAVEDTRA 14081, quoted second hand`,
  };
}

function sharedOf(load: Quantity, rated: Quantity): Quantity {
  return {
    value: load.value / rated.value,
    unit: "",
    formula: "load ÷ rating",
    inputs: [
      { name: "load", value: load.value, unit: "kg" },
      { name: "rating", value: rated.value, unit: "kg" },
    ],
    source: `near its rating from ${liftRules().nearRating.value}: ${liftRules().nearRating.source}`,
  };
}

/** Difference of the ground under four pads at the corners of a square, sides north and east. */
function unlevelOf({ crane, groundAt }: LiftJob, [x, y]: PlanPoint): Quantity | null {
  if (crane.outriggers === undefined) return null;
  const half = crane.outriggers / 2;
  const heights = [-half, half].flatMap((dx) =>
    [-half, half].map((dy) => groundAt([x + dx, y + dy])),
  );
  const value = Math.max(...heights) - Math.min(...heights);
  if (Number.isNaN(value)) return null;
  return {
    value,
    unit: "m",
    formula: "highest less lowest ground at the corners of the outriggers' square",
    inputs: heights.map((z, i) => ({ name: `ground at pad ${i + 1}`, value: z, unit: "m" })),
    source: "the survey; ground as found",
  };
}
