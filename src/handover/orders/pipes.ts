import { pipeLength, pipeRowOf, soldSize, unpricedOf } from "../../estimate/index.js";
import type { CostLine, PipeCheck } from "../../estimate/index.js";
import { unpricedName } from "../../sheets/index.js";
import type { Site } from "../../site/index.js";
import { FOOT } from "../../units/index.js";
import { words } from "../../words/index.js";
import { shortLength, workNames } from "./item.js";
import type { OrderItem, Ordering } from "./item.js";
import { cutFrom } from "./pieces.js";
import type { CutRun, Cutting } from "./pieces.js";

/** Lengths in which pipe is sold, m: common practice, no source; yards differ, so it is a choice. */
const USUAL = {
  us: { gravity: 10 * FOOT, pressure: 20 * FOOT, conduit: 10 * FOOT, coil: 100 * FOOT },
  metric: { gravity: 3, pressure: 6, conduit: 3, coil: 50 },
} as const;

export type Service = PipeCheck["service"];

/** The length of a whole pipe of a service, m. */
export function stickOf({ site, choices }: Ordering, service: Service): number {
  return choices.pipeLength?.[service] ?? USUAL[site.units][service];
}

/** Polyethylene comes in coils. */
const isCoiled = (material: string): boolean => /\b(hd|md|ld)?pe\b|polyethylene/i.test(material);

/** A run of a cost line with the pipe that it is. */
interface Laid {
  name: string;
  length: number;
  service: Service;
  trench: string;
  material: string;
  /** m. */
  inside: number;
  outside: number;
  /** Spreads the water in the ground: perforated, so that its offcuts suit no other. */
  field: boolean;
}

/** Every cost line of pipe in whole lengths by run; parted by use, as offcuts suit the same alone. */
export function pipeItems(ordering: Ordering): OrderItem[] {
  const { lines } = ordering.estimate.cost;
  return lines.flatMap((line) => {
    if (!line.id.startsWith("pipe-") || line.per !== "m") return [];
    const laid = laidOf(ordering, line);
    const uses = new Set(laid.map(useOf));
    return [...uses].map((use) => {
      const runs = laid.filter((run) => useOf(run) === use);
      const length = sumOf(runs);
      const share = uses.size === 1 ? {} : { share: length / line.quantity.value };
      return { ...pipeItem(ordering, line, runs), ...share };
    });
  });
}

const useOf = ({ service, field, material, inside, outside }: Laid): string =>
  `${service} ${field} ${isCoiled(material)} ${inside} ${outside}`;

const sumOf = (runs: readonly { length: number }[]): number =>
  runs.reduce((sum, { length }) => sum + length, 0);

/** The runs of a line with the pipes that they are: by name and length along the slope. */
function laidOf({ scheme, estimate }: Ordering, line: CostLine): Laid[] {
  const drawn = new Map(
    scheme.works.flatMap((work) =>
      work.kind === "trench" ? work.pipes.map((pipe) => [pipe.id, pipe] as const) : [],
    ),
  );
  return line.quantity.inputs.map(({ name, value }) => {
    const pipe = estimate.flow.pipes.find(
      (each) => each.name === name && Math.abs(pipeLength(each) - value) < 1e-6,
    );
    if (pipe === undefined) throw new Error(`${line.id}: got a run "${name}" of no pipe`);
    const { service, trench, field, id } = pipe;
    const found = drawn.get(id);
    if (found === undefined) throw new Error(`${line.id}: got a run of no pipe drawn, "${id}"`);
    const { material, inside, outside } = found;
    return { name, length: value, service, trench, field, material, inside, outside };
  });
}

function pipeItem(ordering: Ordering, line: CostLine, laid: readonly Laid[]): OrderItem {
  const said = words.orders;
  const { site } = ordering;
  const { service, field, material } = laid[0]!;
  const coiled = isCoiled(material);
  const stick = coiled
    ? (ordering.choices.coil ?? USUAL[site.units].coil)
    : stickOf(ordering, service);
  const cutting = cutFrom(stick, laid);
  const { count, offcuts } = cutting;
  const size = shortLength(stick, site);
  const name = nameOf(line, laid[0]!, site);
  const trenches = [...new Set(laid.map(({ trench }) => trench))];
  return {
    kind: service === "conduit" ? "electrical" : "pipe",
    name: field ? said.perforated(name) : name,
    count,
    unit: coiled ? said.coilOf(count, size) : said.lengthOf(count, size),
    exact: shortLength(sumOf(laid), site),
    where: workNames(ordering, trenches),
    works: trenches,
    notes: [
      ...runNotes(cutting, site),
      coiled ? said.coilRule : said.cutRule,
      said.offcuts(shortLength(offcuts, site)),
      ...(name === line.name ? [] : [said.pricedAs(line.name)]),
      ...(service === "conduit" ? [said.conduitNote] : []),
    ],
    line,
  };
}

/** Part of its outside by which a pipe may differ from the one that prices it and be the same. */
const SAME = 0.01;

/** As the price list names it, or by its own material and size where the list has only a near one. */
function nameOf(line: CostLine, { material, inside, outside }: Laid, site: Site): string {
  const row = pipeRowOf(line);
  if (row !== null && Math.abs(row.outside - outside) <= SAME * outside) return line.name;
  const sold = soldSize(inside, site.units, outside);
  return material.includes(sold) ? material : words.orders.pipe(material, sold);
}

/** How each run is made up; runs alike are told once. */
function runNotes({ runs }: Cutting, site: Site): string[] {
  const said = words.orders;
  const alike = new Map<string, { run: CutRun; count: number }>();
  for (const run of runs) {
    const key = `${run.name} ${run.length}`;
    alike.set(key, { run, count: (alike.get(key)?.count ?? 0) + 1 });
  }
  return [...alike.values()].map(({ run: { name, length, whole, piece }, count }) =>
    said.run(
      ...([count, name, shortLength(length, site)] as const),
      piece === 0 ? said.runWhole(whole) : said.runAndPiece(whole, shortLength(piece, site)),
    ),
  );
}

/** Laterals, manifolds and branches of pressure systems: they are not in the cost. */
export function bedPipeItems(ordering: Ordering): OrderItem[] {
  const said = words.orders;
  const { site, estimate } = ordering;
  const stick = stickOf(ordering, "pressure");
  return unpricedOf(site, estimate).flatMap((one): OrderItem[] => {
    if (one.kind !== "bed-pipe") return [];
    const cutting = cutFrom(stick, one.runs);
    return [
      {
        kind: "pipe",
        name: unpricedName(one, site),
        count: cutting.count,
        unit: said.lengthOf(cutting.count, shortLength(stick, site)),
        exact: shortLength(sumOf(one.runs), site),
        where: workNames(ordering, one.works),
        works: one.works,
        notes: [
          ...runNotes(cutting, site),
          said.cutRule,
          said.offcuts(shortLength(cutting.offcuts, site)),
          ...(one.places.includes("bed") ? [said.bedJoints] : []),
          said.notInCost,
        ],
        line: null,
      },
    ];
  });
}
