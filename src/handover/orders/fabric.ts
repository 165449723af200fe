import { unpricedOf } from "../../estimate/index.js";
import { coveredArea, unpricedAmount, unpricedName } from "../../sheets/index.js";
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

function filterItems(ordering: Ordering): OrderItem[] {
  const said = words.orders;
  const { site, estimate, choices } = ordering;
  return unpricedOf(site, estimate).flatMap((one): OrderItem[] => {
    if (one.kind !== "fabric") return [];
    const roll = { ...ROLL[site.units], ...choices.fabric };
    const count = rollsFor(roll, one.covers);
    const exact = unpricedAmount(one, site);
    const left = count * roll.width * roll.length - coveredArea(one.covers);
    return [
      {
        kind: "fabric",
        name: unpricedName(one, site),
        count,
        unit: said.rollOfArea(count, shortLength(roll.width, site), shortLength(roll.length, site)),
        exact,
        where: workNames(ordering, one.works),
        works: one.works,
        notes: [
          said.fabricArea(exact, shortLength(roll.lap, site)),
          said.rollLeft(area.print(left, site.units)),
          said.fabricNote,
          said.notInCost,
        ],
        line: null,
      },
    ];
  });
}

function barrierItems({ site, estimate }: Ordering): OrderItem[] {
  const line = estimate.cost.lines.find(({ id }) => id === "erosion-barrier");
  if (line === undefined) return [];
  const said = words.orders;
  const roll = BARRIER_ROLL[site.units];
  const metres = line.quantity.value;
  const { count, offcuts } = cutFrom(roll, [{ name: line.name, length: metres }]);
  return [
    {
      kind: "fabric",
      name: said.barrier,
      count,
      unit: said.rollOf(count, shortLength(roll, site)),
      exact: length.print(metres, site.units, { digits: 1 }),
      where: [],
      beforeDigging: true,
      notes: [said.offcuts(shortLength(offcuts, site)), said.barrierNote],
      line,
    },
  ];
}
