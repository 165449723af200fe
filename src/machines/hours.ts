import type { DigResult, WorkQuantities } from "../dig/index.js";
import { NATIVE } from "../site/index.js";
import type { Material, Quantity, Scheme } from "../site/index.js";
import { looseForCompacted } from "./bulking.js";
import type { Digger, DiggingTables, WayOfDigging } from "./catalogue.js";
import { digOutput, wayOfDigging } from "./output.js";
import type { Output } from "./output.js";
import { knownMaterial } from "./ownEarth.js";
import { exactly, hoursAt, sumRanges } from "./range.js";
import type { MaterialHours, Range, WorkHours } from "./types.js";

/** What the hours of every work are worked out from. */
export interface Job {
  scheme: Scheme;
  dig: DigResult;
  materials: ReadonlyMap<string, Material>;
  /** The site's own earth as it goes back: see `ownEarth`. Asked for only where it is needed. */
  own: () => { loose: number; compacted: number };
  /** Working share of the hour, 0 to 1. */
  efficiency: number;
  tables: DiggingTables;
}

/** A line before its working is written out: what the working is to be written from. */
type TimedLine = Omit<MaterialHours, "working"> & { output: Output; loose: number } & (
    | { action: "dig"; digger: Digger; way: WayOfDigging }
    | { action: "place"; compacting: DiggingTables["compacting"] }
  );

/** Hours of one work with one digger, and of those the hours with the hammer. */
export interface TimedWork extends Omit<WorkHours, "materials"> {
  lines: readonly TimedLine[];
  hammer: Range;
}

/** Times one work with one digger, as a trial: the workings are not written out yet. */
export function timeWork(job: Job, work: WorkQuantities, digger: Digger): TimedWork {
  const hammer: Range[] = [];
  const dug: TimedLine[] = [];
  for (const [id, bank] of Object.entries(work.cut)) {
    if (!(bank > 0)) continue;
    const line = digHours(job, work, digger, id, bank);
    dug.push(line);
    if (isHammered(id, job)) hammer.push(hoursAt(bank, digger.hammer));
  }
  const placed: TimedLine[] = [];
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
    lines: [...dug, ...placed],
    hammer: sumRanges(hammer),
  };
}

/** A timed work with every line's working written out. */
export function workHours({ lines, hammer: _, ...work }: TimedWork): WorkHours {
  return { ...work, materials: lines.map(written) };
}

function written(line: TimedLine): MaterialHours {
  const { material, action, volume, hours } = line;
  const working = line.action === "dig" ? digWorking(line) : placeWorking(line);
  return { material, action, volume, hours, working };
}

function isHammered(id: string, { materials, tables }: Job): boolean {
  return id !== NATIVE && wayOfDigging(knownMaterial(id, materials), tables).hammered;
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
): TimedLine {
  const material = id === NATIVE ? NATIVE : knownMaterial(id, job.materials);
  // Earlier backfill is measured in place, not in the bank, so it loosens by loose ÷ compacted.
  const loose = material === NATIVE ? job.own().loose / job.own().compacted : material.loose;
  const way = wayOfDigging(material, job.tables);
  const place = { depth: work.deepest, widest: floorWidth(job.scheme, work.id) };
  const output = digOutput(digger, way, place, job.efficiency, job.tables);
  const clearing = hoursAt(bank * loose, output.loosePerHour);
  const hours = way.hammered ? sumRanges([clearing, hoursAt(bank, digger.hammer)]) : clearing;
  return { material: id, action: "dig", volume: bank, hours, output, loose, digger, way };
}

function digWorking(line: TimedLine & { action: "dig" }): Quantity {
  const { volume: bank, hours, loose, output, digger, way } = line;
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
    return { value: hours.likely, unit: "h", formula: digging, inputs, source: output.source };
  }
  return {
    value: hours.likely,
    unit: "h",
    formula: `bank volume ÷ hammer output + ${digging}`,
    inputs: [...inputs, { name: "hammer output", value: digger.hammer.likely, unit: "m³/h" }],
    source: `${output.source}; hammer: ${digger.hammer.source}`,
  };
}

function placeHours(job: Job, digger: Digger, id: string, volume: number): TimedLine {
  const { tables } = job;
  const bulking = id === NATIVE ? job.own() : knownMaterial(id, job.materials);
  const loose = looseForCompacted(volume, bulking);
  // Picked up loose from a heap beside the hole: shallow, and any bucket fits.
  const heap = { depth: 0, widest: Infinity };
  const output = digOutput(digger, tables.byKind.aggregate, heap, job.efficiency, tables);
  const moving = hoursAt(loose, output.loosePerHour);
  const { low, likely, high } = tables.compacting;
  const hours = sumRanges([moving, hoursAt(volume, { low, likely, high })]);
  const compacting = tables.compacting;
  return { material: id, action: "place", volume, hours, output, loose, compacting };
}

function placeWorking(line: TimedLine & { action: "place" }): Quantity {
  const { volume, hours, output, loose } = line;
  const { likely, source } = line.compacting;
  return {
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
  };
}

/** Set-up time, h: once for the job if anything is dug or placed, else zeros. */
export function setUpHours(works: readonly TimedWork[], { setUp }: DiggingTables): Range {
  if (!works.some((work) => work.hours.likely > 0)) return exactly(0);
  const { low, likely, high } = setUp;
  return { low, likely, high };
}
