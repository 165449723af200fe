import { unpricedOf } from "../../estimate/index.js";
import { unpricedName } from "../../sheets/index.js";
import { plainNumber } from "../../units/index.js";
import { words } from "../../words/index.js";
import { workNames } from "./item.js";
import type { OrderItem, Ordering } from "./item.js";

/** Fittings of the pressure systems, and bends, cleanouts and tank connectors of the drains. */
export function fittingItems(ordering: Ordering): OrderItem[] {
  const said = words.orders;
  const { site, estimate } = ordering;
  return unpricedOf(site, estimate).flatMap((one): OrderItem[] => {
    if (one.kind !== "piece") return [];
    const turns = one.turns.map((turn) => `${plainNumber(turn, 1)}°`);
    return [
      {
        kind: one.electrical === true ? "electrical" : "pipe",
        name: unpricedName(one, site),
        ...{ count: one.count, unit: said.each, exact: "" },
        where: workNames(ordering, one.works),
        works: one.works,
        notes: [
          ...(one.piece === "distribution-box" ? [said.boxNote] : []),
          ...(turns.length > 0 ? [said.bendsAre(turns.join(", "))] : []),
          said.notInCost,
        ],
        line: null,
      },
    ];
  });
}
