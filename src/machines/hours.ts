import type { DigResult, WorkQuantities } from "../dig/index.js";
import { NATIVE } from "../site/index.js";
import type { Material, Quantity, Scheme } from "../site/index.js";
import { looseForCompacted } from "./bulking.js";
import { diggingTables } from "./catalogue.js";
import type { Digger } from "./catalogue.js";
import { digOutput, wayOfDigging } from "./output.js";
import type { Output } from "./output.js";
import { knownMaterial, ownEarth } from "./ownEarth.js";
import { exactly, hoursAt, sumRanges } from "./range.js";
import type { MaterialHours, Range, WorkHours } from "./types.js";

/** What the hours of every work are worked out from. */
export interface Job {
  scheme: Scheme;
  dig: DigResult;
  materials: ReadonlyMap<string, Material>;
  /** Working share of the hour, 0 to 1. */
  efficiency: number;
}

/** Hours of one work with one digger, and of those the hours with the hammer. */
export function workHours(
  job: Job,
  work: WorkQuantities,
  digger: Digger,
): WorkHours & { hammer: Range } {
  const hammer: Range[] = [];
  const dug: MaterialHours[] = [];
  for (const [id, bank] of Object.entries(work.cut)) {
    if (!(bank > 0)) continue;
    const line = digHours(job, work, digger, id, bank);
    dug.push(line);
    if (isHammered(id, job.materials)) hammer.push(hoursAt(bank, digger.hammer));
  }
  const placed: MaterialHours[] = [];
  for (const [id, volume] of Object.entries(work.fill)) {
    if (volume > 0) placed.push(placeHours(job, digger, id, volume));
  }
  const dig = sumRanges(dug.map((line) => line.hours));
  const place = sumRanges(placed.map((line) => line.hours));
  return {
    id: work.id,
    name: work.name,
    dig,
    place,
    hours: sumRanges([dig, place]),
    materials: [...dug, ...placed],
    hammer: sumRanges(hammer),
  };
}

function isHammered(id: string, materials: ReadonlyMap<string, Material>): boolean {
  return id !== NATIVE && wayOfDigging(knownMaterial(id, materials)).hammered;
}

/** Floor width that the bucket must fit, m: a trench's own; an open hole takes any bucket. */
function floorWidth(scheme: Scheme, id: string): number {
  const drawn = scheme.works.find((w) => w.id === id);
  return drawn?.kind === "trench" ? drawn.width : Infinity;
}

function digHours(
  job: Job,
  work: WorkQuantities,
  digger: Digger,
  id: string,
  bank: number,
): MaterialHours {
  const material = id === NATIVE ? NATIVE : knownMaterial(id, job.materials);
  // Earlier backfill is measured in place, not in the bank, so it loosens by loose ÷ compacted.
  const own = ownEarth(job.dig.cut, job.materials);
  const loose = material === NATIVE ? own.loose / own.compacted : material.loose;
  const way = wayOfDigging(material);
  const place = { depth: work.deepest, widest: floorWidth(job.scheme, work.id) };
  const output = digOutput(digger, way, place, job.efficiency);
  const clearing = hoursAt(bank * loose, output.loosePerHour);
  const hours = way.hammered ? sumRanges([clearing, hoursAt(bank, digger.hammer)]) : clearing;
  const working = digWorking(hours.likely, { bank, loose, output, digger, way });
  return { material: id, action: "dig", volume: bank, hours, working };
}

function digWorking(
  hours: number,
  parts: {
    bank: number;
    loose: number;
    output: Output;
    digger: Digger;
    way: { hammered: boolean };
  },
): Quantity {
  const { bank, loose, output, digger, way } = parts;
  const digging =
    "bank volume × loose from bank ÷ (cycles per hour × swing–depth factor × heaped bucket × " +
    "fill factor × ripped factor × job efficiency × close-work factor)";
  const inputs = [
    { name: "bank volume", value: bank, unit: "m³" },
    { name: "loose from bank", value: loose, unit: "" },
    { name: "cycles per hour", value: output.cycles, unit: "1/h" },
    { name: "swing–depth factor", value: output.swingDepth, unit: "" },
    { name: "heaped bucket", value: output.bucket, unit: "m³" },
    { name: "fill factor", value: output.fill.likely, unit: "" },
    { name: "ripped factor", value: output.ripped.likely, unit: "" },
    { name: "job efficiency", value: output.efficiency, unit: "" },
    { name: "close-work factor", value: output.closeWork.likely, unit: "" },
  ];
  if (!way.hammered) {
    return { value: hours, unit: "h", formula: digging, inputs, source: output.source };
  }
  return {
    value: hours,
    unit: "h",
    formula: `bank volume ÷ hammer output + ${digging}`,
    inputs: [...inputs, { name: "hammer output", value: digger.hammer.likely, unit: "m³/h" }],
    source: `${output.source}; hammer: ${digger.hammer.source}`,
  };
}

function placeHours(job: Job, digger: Digger, id: string, volume: number): MaterialHours {
  const tables = diggingTables();
  const bulking =
    id === NATIVE ? ownEarth(job.dig.cut, job.materials) : knownMaterial(id, job.materials);
  const loose = looseForCompacted(volume, bulking);
  // Picked up loose from a heap beside the hole: shallow, and any bucket fits.
  const heap = { depth: 0, widest: Infinity };
  const output = digOutput(digger, tables.byKind.aggregate, heap, job.efficiency);
  const moving = hoursAt(loose, output.loosePerHour);
  const { low, likely, high, source } = tables.compacting;
  const hours = sumRanges([moving, hoursAt(volume, { low, likely, high })]);
  return {
    material: id,
    action: "place",
    volume,
    hours,
    working: {
      value: hours.likely,
      unit: "h",
      formula: "loose volume ÷ moved per hour + volume in place ÷ compacted per hour",
      inputs: [
        { name: "volume in place", value: volume, unit: "m³" },
        { name: "loose volume", value: loose, unit: "m³" },
        { name: "moved per hour, loose", value: output.loosePerHour.likely, unit: "m³/h" },
        { name: "compacted per hour", value: likely, unit: "m³/h" },
      ],
      source: `${output.source}; compacting: ${source}`,
    },
  };
}

/** Set-up time, h: once for the job if anything is dug or placed, else zeros. */
export function setUpHours(works: readonly WorkHours[]): Range {
  if (!works.some((work) => work.hours.likely > 0)) return exactly(0);
  const { low, likely, high } = diggingTables().setUp;
  return { low, likely, high };
}
