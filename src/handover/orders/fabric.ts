import { materialsOf } from "../../site/index.js";
import { area, FOOT, length } from "../../units/index.js";
import { words } from "../../words/index.js";
import { shortLength, workNames } from "./item.js";
import type { OrderItem, Ordering } from "./item.js";
import { cutFrom, rollsFor } from "./pieces.js";

/** Rolls as they are sold, m: common sizes, no source; a choice. */
const ROLL = {
  us: { width: 6 * FOOT, length: 100 * FOOT, lap: 1 * FOOT },
  metric: { width: 2, length: 50, lap: 0.3 },
} as const;
const BARRIER_ROLL = { us: 100 * FOOT, metric: 30 } as const;

/** The erosion barrier, and fabric between stone and soil of beds and field trenches. */
export function fabricItems(ordering: Ordering): OrderItem[] {
  return [...filterItems(ordering), ...barrierItems(ordering)];
}

interface Cover {
  work: string;
  length: number;
  width: number;
}

/** Plan areas where soil lies on stone. */
function coversOf({ site, scheme, estimate }: Ordering): Cover[] {
  const materials = materialsOf(site);
  const isStone = (id: string): boolean => materials.get(id)?.kind === "aggregate";
  const field = new Set(estimate.flow.pipes.flatMap((p) => (p.field ? [p.trench] : [])));
  return scheme.works.flatMap((work): Cover[] => {
    if (work.kind === "bed") {
      const between = work.filling.filter(
        ({ material }, i) => i > 0 && isStone(work.filling[i - 1]!.material) && !isStone(material),
      );
      const inside = { length: work.length - 2 * work.wall, width: work.width - 2 * work.wall };
      return between.map(() => ({ work: work.id, ...inside }));
    }
    if (work.kind !== "trench" || !field.has(work.id)) return [];
    if (!isStone(work.zone.material) || isStone(work.backfill)) return [];
    const legs = work.path.slice(1).map(([x, y], i) => {
      const [px, py] = work.path[i]!;
      return Math.hypot(x - px, y - py);
    });
    const along = legs.reduce((sum, leg) => sum + leg, 0);
    return [{ work: work.id, length: along, width: work.width }];
  });
}

function filterItems(ordering: Ordering): OrderItem[] {
  const covers = coversOf(ordering);
  if (covers.length === 0) return [];
  const said = words.orders;
  const { site, choices } = ordering;
  const usual = ROLL[site.units];
  const roll = { ...usual, ...choices.fabric };
  const all = covers.reduce((sum, cover) => sum + cover.length * cover.width, 0);
  const count = rollsFor(roll, covers);
  return [
    {
      kind: "fabric",
      name: said.fabric,
      count,
      unit: said.rollOfArea(count, shortLength(roll.width, site), shortLength(roll.length, site)),
      exact: area.print(all, site.units),
      where: workNames(ordering, [...new Set(covers.map(({ work }) => work))]),
      notes: [
        said.fabricArea(area.print(all, site.units), shortLength(roll.lap, site)),
        said.fabricNote,
        said.notInCost,
      ],
      line: null,
    },
  ];
}

function barrierItems({ site, estimate }: Ordering): OrderItem[] {
  const line = estimate.cost.lines.find(({ id }) => id === "erosion-barrier");
  if (line === undefined) return [];
  const roll = BARRIER_ROLL[site.units];
  const metres = line.quantity.value;
  const { count } = cutFrom(roll, [{ name: line.name, length: metres }]);
  return [
    {
      kind: "fabric",
      name: line.name,
      count,
      unit: words.orders.rollOf(count, shortLength(roll, site)),
      exact: length.print(metres, site.units, { digits: 1 }),
      where: [],
      notes: [],
      line,
    },
  ];
}
