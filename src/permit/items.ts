/** How each item of the list is found on a site. */
import { bodyShapes, distanceBetween, limitShapes } from "../safety/index.js";
import { isBuriedLine, ruleOf } from "../site/index.js";
import type { Limit, PlanPoint, Work } from "../site/index.js";
import { distance, land } from "../units/index.js";
import type { ItemFound, PermitGround } from "./found.js";

type Find = (ground: PermitGround) => ItemFound;

const present = (because: string): ItemFound => ({ state: "present", because });
const missing = (because: string): ItemFound => ({ state: "missing", because });
const notAsked = (because: string): ItemFound => ({ state: "not-applicable", because });

/** How an item stands on a site. Throws on an id that the list does not have. */
export function findItem(id: string, ground: PermitGround): ItemFound {
  const find = ITEMS[id];
  if (find === undefined) throw new Error(`permit list: got no "${id}", expected one of its items`);
  return find(ground);
}

const ITEMS: Readonly<Record<string, Find>> = {
  // Every plan and section sheet is drawn to a scale that it states, with a bar (src/sheets).
  scale: () => present("on each printed sheet that is drawn to scale"),
  north: () => present("drawn in every view of the ground"),
  owner: ({ site }) => particular(site.project?.owner, "the owner's name"),
  parcel: ({ site }) => particular(site.project?.parcel, "the parcel's number"),
  preparer: ({ site }) => particular(site.project?.preparer, "who measured and drew"),
  date: ({ site }) => particular(site.project?.date, "the date"),
  vicinity: () => missing("a small map of how to find the lot, on paper or from the county"),
  "lot-lines": lotLines,
  contours: ({ site }) =>
    present(`from ${site.survey.points.length} survey points, as found and at every stage`),
  benchmark,
  elevations,
  "cuts-fills": ({ works }) => {
    const cut = works.filter((work) => Object.keys(work.cut).length > 0).length;
    return cut > 0 ? present(`${counted(cut, "cut")} worked out`) : missing("nothing is dug yet");
  },
  buildings: (ground) =>
    either(
      counts(ground.scheme.works, "building") + limitsOf(ground, ["building"]).length,
      "building",
      "draw each building, or say that none stands within reach",
    ),
  access: (ground) => {
    const drawn = limitsOf(ground, ["drive"]).length;
    if (drawn > 0) return present(`${counted(drawn, "drive")} drawn`);
    return ground.scheme.machines?.access === undefined
      ? missing("draw the drive, or give the way in for machines")
      : present("the way in for machines is described");
  },
  wells,
  water: (ground) =>
    either(
      limitsOf(ground, ["watercourse", "seasonal-watercourse", "ditch", "spring"]).length,
      "stream, ditch or spring",
      "draw them, or say that there is none",
    ),
  flood: (ground) =>
    either(
      limitsOf(ground, ["flood-path"]).length,
      "flood path",
      "draw where floods run, or say what the flood map shows",
    ),
  wetlands: (ground) =>
    either(limitsOf(ground, ["wetland"]).length, "wetland", "draw them, or say that there is none"),
  easements: (ground) =>
    either(
      limitsOf(ground, ["easement"]).length,
      "easement",
      "draw them, or say what the deed shows",
    ),
  utilities: (ground) => {
    const lines = (ground.site.limits ?? []).filter(
      ({ kind }) => isBuriedLine(kind) || kind === "overhead-line",
    );
    return either(lines.length, "line", "draw them, or say what the locate call found");
  },
  trees: (ground) =>
    either(
      limitsOf(ground, ["tree"]).length,
      "tree",
      "draw those to keep, or say that there is none",
    ),
  pits: ({ site }) => {
    const dug = site.ground.probes.length;
    return dug > 0 ? present(`${counted(dug, "probe")}, each with its id`) : missing("add a probe");
  },
  "pit-at-tank": pitAtTank,
  bedrooms: ({ flow }) =>
    flow.sizing.daily === undefined
      ? missing("give bedrooms or a design flow on the Flow leaf")
      : present("a design flow is given"),
  tank: ({ scheme }) =>
    either(counts(scheme.works, "tank"), "tank", "place a tank on the Dig leaf"),
  pipes: ({ flow }) =>
    either(
      flow.pipes.length,
      "pipe",
      "lay a trench with a pipe on the Dig leaf",
      "with size and fall",
    ),
  field: ({ scheme }) => {
    const named = scheme.flow?.field?.length ?? 0;
    return either(named, "part of the field", "say on the Flow leaf what takes the water");
  },
  reserve: (ground) =>
    either(
      limitsOf(ground, ["reserve-field"]).length,
      "reserve area",
      "draw the ground kept for a second field",
    ),
  setbacks: ({ setbacks }) =>
    either(
      setbacks.filter(({ reserve }) => reserve !== true).length,
      "distance",
      "draw wells, water and lot lines",
      "measured and listed",
    ),
  pump: pumped((ground) =>
    present(`${counted(ground.flow.pressure.length, "pump")} with its chamber`),
  ),
  hydraulics: ({ flow }) => {
    if (flow.pressure.length === 0 && flow.pipes.length === 0) {
      return missing("lay the pipes first");
    }
    if (flow.sizing.daily === undefined) {
      return missing(
        "give bedrooms or a design flow on the Flow leaf: without it no flow is known",
      );
    }
    return flow.pressure.length > 0
      ? present("flow, head and friction worked out")
      : present("fall and flow of each drain worked out");
  },
  dose: pumped(({ flow }) =>
    flow.pressure.every(({ dose }) => dose !== null)
      ? present("dose and reserve worked out")
      : missing("give the dose on the Flow leaf"),
  ),
  alarm: pumped(({ flow }) =>
    flow.pressure.every(({ dose }) => typeof dose?.plan.alarm === "number")
      ? present("the alarm's level is worked out")
      : missing("there is no room for the alarm: see the Flow leaf"),
  ),
};

/** An item that is asked only where something is pumped. */
function pumped(find: Find): Find {
  return (ground) => {
    const wanted = ground.scheme.flow?.pressure?.length ?? 0;
    if (wanted === 0) return notAsked("nothing is pumped in this scheme");
    return ground.flow.pressure.length < wanted
      ? missing("the pumped system is not whole yet: see the Flow leaf")
      : find(ground);
  };
}

function particular(value: string | undefined, what: string): ItemFound {
  return value === undefined || value.trim() === "" ? missing(`enter ${what}`) : present(value);
}

function either(count: number, what: string, mend: string, how = "drawn"): ItemFound {
  return count > 0 ? present(`${counted(count, what)} ${how}`) : missing(mend);
}

function counted(count: number, what: string): string {
  if (count === 1) return `1 ${what}`;
  return `${count} ${what.replace(/^(\w+)( of| or|,|$)/, "$1s$2")}`;
}

function counts(works: readonly Work[], kind: Work["kind"]): number {
  return works.filter((work) => work.kind === kind).length;
}

function limitsOf({ site }: PermitGround, kinds: readonly string[]): Limit[] {
  return (site.limits ?? []).filter(({ kind }) => kinds.includes(kind));
}

function lotLines(ground: PermitGround): ItemFound {
  const lines = limitsOf(ground, ["lot-line"]).filter(({ path }) => (path?.length ?? 0) > 1);
  if (lines.length === 0) return missing("draw the lot lines, or type their bearings and lengths");
  const whole = lines.find(closesRound);
  if (whole === undefined) return missing("the lot lines do not close, so the area is not known");
  const area = Math.abs(areaOf(whole.path ?? []));
  return present(`closed; area ${land.print(area, ground.site.units)}`);
}

function closesRound({ closed, path = [] }: Limit): boolean {
  return closed === true || isClosed(path);
}

function isClosed(path: readonly PlanPoint[]): boolean {
  const [first, last] = [path[0], path[path.length - 1]];
  if (first === undefined || last === undefined || path.length < 4) return false;
  return Math.hypot(first[0] - last[0], first[1] - last[1]) < 0.01;
}

function areaOf(path: readonly PlanPoint[]): number {
  return path.reduce((sum, a, i) => {
    const b = path[(i + 1) % path.length]!;
    return sum + (a[0] * b[1] - b[0] * a[1]) / 2;
  }, 0);
}

function benchmark({ site }: PermitGround): ItemFound {
  const mark = site.project?.benchmark;
  const known = site.survey.points.some(({ id }) => id === mark?.point);
  if (mark === undefined) return missing("name the point that heights were carried from");
  if (mark.point !== undefined && !known) return missing(`no survey point is called ${mark.point}`);
  const words = [mark.point, mark.note].filter((word) => word !== undefined);
  return words.length === 0 ? missing("name its point") : present(words.join(": "));
}

/** Floors, inverts and undersides are in the file as soon as their works are. */
function elevations({ scheme, flow }: PermitGround): ItemFound {
  const lacks = [
    ...(counts(scheme.works, "tank") === 0 ? ["a tank"] : []),
    ...(flow.pipes.length === 0 ? ["a pipe"] : []),
  ];
  return lacks.length === 0
    ? present("of the tank, each pipe's ends and every floor")
    : missing(`needs ${lacks.join(" and ")}`);
}

/** Wells count on the lot and so far off it; where no lot line closes, wherever they are. */
function wells(ground: PermitGround): ItemFound {
  const { value } = ruleOf(ground.site, "wells-within");
  const lots = limitsOf(ground, ["lot-line"])
    .filter(closesRound)
    .map(({ path = [] }) => ({ points: path, closed: true }));
  const drawn = limitsOf(ground, ["well", "neighbour-well"]);
  const near = drawn.filter(
    (well) => lots.length === 0 || distanceBetween(limitShapes(well), lots) <= value,
  );
  const within = distance.print(value, ground.site.units);
  const far = drawn.length > near.length ? "what is drawn is farther off: " : "";
  return either(
    near.length,
    "well",
    `${far}draw each well on the lot and within ${within} of it, or say that there is none`,
  );
}

function pitAtTank({ site, scheme }: PermitGround): ItemFound {
  const tanks = scheme.works.filter((work) => work.kind === "tank");
  if (tanks.length === 0) return missing("place a tank first");
  const near = ruleOf(site, "pit-at-tank").value;
  const bare = tanks.filter((tank) =>
    site.ground.probes.every(({ x, y }) => {
      const pit: Limit = { id: "pit", kind: "pit", at: [x, y] };
      return distanceBetween(bodyShapes(tank), limitShapes(pit)) > near;
    }),
  );
  const within = distance.print(near, site.units);
  return bare.length === 0
    ? present(`a probe within ${within} of each tank`)
    : missing(`no probe within ${within} of ${bare.map(({ name }) => name).join(", ")}`);
}
