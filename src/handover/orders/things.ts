import type { CostLine, PressureResult } from "../../estimate/index.js";
import type { Tank } from "../../site/index.js";
import { flow, head, length, liquidVolume, mass } from "../../units/index.js";
import { words } from "../../words/index.js";
import { workNames } from "./item.js";
import type { OrderItem, Ordering, SupplierKind } from "./item.js";

/** Tanks with their setting, pumps, and the electrician's work. */
export function thingItems(ordering: Ordering): OrderItem[] {
  return ordering.estimate.cost.lines.flatMap((line): OrderItem[] => {
    const [what, of] = line.id.split(":");
    if (what?.startsWith("tank-to-") === true) return [tankItem(ordering, line, of)];
    if (line.id === "tank-set") return [settingItem(ordering, line)];
    if (what === "pump-set") return [pumpItem(ordering, line, of)];
    if (line.id === "electrician") {
      return [plainItem(ordering, line, "electrical", [words.orders.licensed])];
    }
    return [];
  });
}

function plainItem(
  ordering: Ordering,
  line: CostLine,
  kind: SupplierKind,
  notes: readonly string[],
): OrderItem {
  return {
    kind,
    name: line.name,
    count: line.per === "each" ? line.quantity.value : 1,
    unit: line.per === "each" ? words.orders.each : words.orders.lump,
    exact: "",
    where: workNames(ordering, line.where ?? []),
    notes,
    line,
  };
}

function tankItem(ordering: Ordering, line: CostLine, id: string | undefined): OrderItem {
  const said = words.orders;
  const tank = ordering.scheme.works.find(
    (work): work is Tank => work.id === id && work.kind === "tank",
  );
  // One tank is ordered, whatever part or multiple of a listed size prices it.
  const one = { ...plainItem(ordering, line, "tank", []), count: 1 };
  if (tank === undefined) return one;
  const must = tankSizes(ordering, tank);
  const holds =
    tank.body.liquidVolume === undefined
      ? said.tankHoldsUnknown
      : said.tankHolds(liquidVolume.print(tank.body.liquidVolume, ordering.site.units));
  // The price list's "up to" would let a smaller one come: what is ordered is the tank drawn.
  const name = said.tankOf(tank.name, holds);
  return { ...one, name, notes: [...must, said.tankPricedAs(line.name)], must };
}

/** The tank's own sizes, each as entered: nothing is guessed. */
function tankSizes({ site: { units } }: Ordering, { body }: Tank): string[] {
  const said = words.orders;
  const long = (metres: number): string => length.print(metres, units);
  return [
    said.tankSize(long(body.length), long(body.width), long(body.height)),
    body.emptyMass === undefined
      ? said.tankWeighsUnknown
      : said.tankWeighs(mass.print(body.emptyMass, units)),
    ...(body.inlet === undefined ? [] : [said.inlet(long(body.inlet))]),
    ...(body.outlet === undefined ? [] : [said.outlet(long(body.outlet))]),
  ];
}

/** Setting the tanks: how deep each hole is, and how far and how heavy the crane lifts, where known. */
function settingItem(ordering: Ordering, line: CostLine): OrderItem {
  const said = words.orders;
  const { estimate, scheme, site } = ordering;
  const { units } = site;
  const tanks = scheme.works.filter(({ kind }) => kind === "tank");
  const must = tanks.flatMap(({ id, name }) => {
    const hole = estimate.works.find((work) => work.id === id);
    const lift = estimate.lift?.tanks.find(({ tank }) => tank === id);
    const load = lift?.load ?? null;
    const stand = lift?.stands.find((each) => each.stand === lift.best);
    return [
      ...(hole === undefined ? [] : [said.holeDeep(name, length.print(hole.deepest, units))]),
      ...(load === null ? [] : [said.onHook(name, mass.print(load.value, units))]),
      stand === undefined
        ? said.radiusUnknown(name)
        : said.craneAt(name, stand.name, length.print(stand.radius.value, units)),
    ];
  });
  return { ...plainItem(ordering, line, "tank", must), must };
}

function pumpItem(ordering: Ordering, line: CostLine, id: string | undefined): OrderItem {
  const notes = pumpNotes(ordering, id);
  return { ...plainItem(ordering, line, "pump", notes), must: notes };
}

/** What the pump has to give, and where its floats hang; none where no system could be solved. */
function pumpNotes(ordering: Ordering, id: string | undefined): string[] {
  const said = words.orders;
  const { units } = ordering.site;
  const solved = ordering.estimate.flow.pressure.find((system) => system.id === id);
  const drawn = ordering.scheme.flow?.pressure?.find((system) => system.id === id);
  if (solved === undefined) return [];
  const { wanted } = solved;
  const duty = said.duty(
    flow.print(wanted.flow.value, units),
    head.print(wanted.head.value, units),
  );
  return [
    duty,
    ...(drawn?.alternating === true ? [said.alternating] : []),
    ...(drawn?.checkValve === true ? [] : [said.drainsBack]),
    ...floatNotes(ordering, solved),
  ];
}

function floatNotes({ site: { units } }: Ordering, { dose }: PressureResult): string[] {
  if (dose === null) return [];
  const said = words.orders;
  const level = (metres: number | null): string =>
    metres === null ? said.tooHigh : length.print(metres, units);
  const { off, on, alarm } = dose.plan;
  return [said.floats(level(off), level(on), level(alarm))];
}
