import type { CostLine } from "../../estimate/index.js";
import { materialsOf } from "../../site/index.js";
import { earthVolume, haulMass, plainNumber } from "../../units/index.js";
import { words } from "../../words/index.js";
import { wholeOnes, workNames } from "./item.js";
import type { OrderItem, Ordering } from "./item.js";

/** Gravel, sand and soil by the truck: whole tons or whole loads, as each is priced. */
export function earthItems(ordering: Ordering): OrderItem[] {
  return ordering.estimate.cost.lines.flatMap((line) => {
    const found = /^(material|shortfall)-(.+)$/.exec(line.id);
    return found === null ? [] : [earthItem(ordering, line, found[2]!, found[1] === "shortfall")];
  });
}

function earthItem(
  ordering: Ordering,
  line: CostLine,
  material: string,
  isShortfall: boolean,
): OrderItem {
  const said = words.orders;
  const { site, scheme, estimate } = ordering;
  const { units } = site;
  const { imports, truckVolume } = estimate.cost.loads;
  const coming = imports.find((one) => one.material === material);
  if (coming === undefined) throw new Error(`${line.id}: no ${material} comes in`);
  const { waste = 0 } = scheme.costs ?? {};
  const fills = estimate.works.filter((work) => (work.fill[material] ?? 0) > 0);
  const needed = isShortfall
    ? estimate.earth.importCompacted
    : fills.reduce((sum, work) => sum + work.fill[material]!, 0);
  const share = (needed * (1 + waste)) / coming.placed;
  const mass = coming.mass.value * share;
  const loose = coming.loose * share;
  const loads = wholeOnes(loose / truckVolume);
  const load = said.truckload(loads, earthVolume.print(truckVolume, units));
  const tons = haulMass.unitLabel(units);
  const byWeight = line.per === "t";
  const charged = line.quantity.value;
  const weightOrdered = wholeOnes(haulMass.toSystem(charged, units));
  const looseIs = earthVolume.print(loose, units);
  const weight = haulMass.print(mass, units, { digits: 2 });
  const leastLoad = byWeight && charged > mass * (1 + 1e-9) ? [said.leastLoad(weight)] : [];
  const over = byWeight
    ? haulMass.print(haulMass.fromSystem(weightOrdered, units) - charged, units, { digits: 2 })
    : earthVolume.print(loads * truckVolume - loose, units);
  const haul = byWeight ? said.isLoose(looseIs, `${loads} ${load}`) : said.weighs(weight);
  const bought = materialsOf(site).get(material);
  return {
    kind: "earth",
    haul,
    ...(bought !== undefined && { delivered: bought.name }),
    ...(bought?.grade !== undefined && { grade: bought.grade }),
    name: line.name,
    count: byWeight ? weightOrdered : loads,
    unit: byWeight ? (units === "us" ? said.tons(weightOrdered) : tons) : load,
    exact: byWeight ? weight : looseIs,
    where: isShortfall
      ? [said.shortfall]
      : fills.map((work) =>
          said.workVolume(
            workNames(ordering, [work.id]).join(),
            earthVolume.print(work.fill[material]!, units),
          ),
        ),
    notes: [
      haul,
      waste > 0 ? said.withWaste(`${plainNumber(waste * 100, 0)}%`, over) : said.noWaste(over),
      ...leastLoad,
    ],
    line,
  };
}
