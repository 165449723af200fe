/** Every figure of an estimate that has a working, in groups as people look for them. */
import { listedPrice, schemeOf } from "../../estimate/index.js";
import type { CostLine, Estimate } from "../../estimate/index.js";
import { perOf } from "../../sheets/index.js";
import { materialsOf, NATIVE } from "../../site/index.js";
import type { Quantity, Scheme, Site } from "../../site/index.js";
import { words } from "../../words/index.js";
import type { AmountKind } from "../amountText.js";

const says = words.workings;

export interface ShownFigure extends AmountKind {
  name: string;
  quantity: Quantity;
}

export interface FigureGroup {
  title: string;
  figures: readonly ShownFigure[];
}

/** A list that takes what is there and leaves out what is not. */
class Figures {
  readonly list: ShownFigure[] = [];

  add(name: string, quantity: Quantity | null | undefined, kind: AmountKind = {}): void {
    if (quantity !== null && quantity !== undefined) this.list.push({ name, quantity, ...kind });
  }
}

/** Of water: volumes are of a liquid, lengths in tenths. */
const WATER: AmountKind = { liquid: true, decimal: true };
const HOOK: AmountKind = { hook: true };

function hourFigures(site: Site, { machines }: Estimate): ShownFigure[] {
  const figures = new Figures();
  const materials = materialsOf(site);
  const nameOf = (id: string): string =>
    id === NATIVE ? words.tables.ownEarth : (materials.get(id)?.name ?? id);
  for (const work of machines.works) {
    for (const { action, material, working } of work.materials) {
      const name = action === "dig" ? says.digs : says.places;
      figures.add(name(work.name, nameOf(material)), working);
    }
  }
  return figures.list;
}

function machineFigures({ machines }: Estimate): ShownFigure[] {
  const figures = new Figures();
  figures.add(says.hoursAll, machines.working.hours);
  figures.add(says.daysAll, machines.working.days);
  figures.add(says.fuel, machines.working.fuel, { liquid: true });
  return figures.list;
}

function handFigures({ machines }: Estimate): ShownFigure[] {
  const figures = new Figures();
  for (const { name, limitName, working } of machines.byHand) {
    figures.add(says.byHandOf(name, limitName), working);
  }
  return figures.list;
}

function loadFigures({ cost }: Estimate): ShownFigure[] {
  const figures = new Figures();
  figures.add(says.surplusLoads, cost.loads.surplus);
  for (const { name, mass, loads } of cost.loads.imports) {
    figures.add(says.importMass(name), mass);
    figures.add(says.importLoads(name), loads);
  }
  return figures.list;
}

function pressureFigures(figures: Figures, { flow }: Estimate): void {
  for (const system of flow.pressure) {
    const named = says.pressure;
    const add = (name: (system: string) => string, quantity: Quantity | null | undefined): void =>
      figures.add(name(system.name), quantity, WATER);
    add(named.lift, system.lift);
    add(named.flow, system.flow);
    add(named.head, system.head);
    add(named.wantedFlow, system.wanted.flow);
    add(named.wantedHead, system.wanted.head);
    add(named.velocity, system.velocity);
    add(named.surge, system.surge);
    add(named.drainBack, system.drainBack);
    add(named.pipeVolume, system.pipeVolume);
    add(named.dose, system.dose?.volume);
    add(named.runTime, system.dose?.runTime);
  }
}

function flowFigures(estimate: Estimate): ShownFigure[] {
  const figures = new Figures();
  const { sizing, pipes, lifts, flotation } = estimate.flow;
  figures.add(says.daily, sizing.daily, WATER);
  figures.add(says.leastTank, sizing.leastTank, WATER);
  figures.add(says.tanks, sizing.tanks, WATER);
  figures.add(says.loading, sizing.loading, WATER);
  figures.add(says.areaWanted, sizing.areaWanted, WATER);
  figures.add(says.field, sizing.field, WATER);
  for (const { name, size } of sizing.mounds) {
    figures.add(says.moundLength(name), size?.length, WATER);
    figures.add(says.moundWidth(name), size?.width, WATER);
  }
  for (const { name, carries } of pipes) {
    figures.add(says.carriesFull(name), carries?.full, WATER);
    figures.add(says.velocity(name), carries?.velocity, WATER);
  }
  for (const { name, lift } of lifts) figures.add(says.liftAtRest(name), lift, WATER);
  pressureFigures(figures, estimate);
  for (const { name, uplift, weight } of flotation) {
    figures.add(says.uplift(name), uplift, { ...WATER, ...HOOK });
    figures.add(says.weight(name), weight, { ...WATER, ...HOOK });
  }
  return figures.list;
}

function liftFigures({ lift }: Estimate): ShownFigure[] {
  const figures = new Figures();
  for (const tank of lift?.tanks ?? []) {
    figures.add(says.hookLoad(tank.name), tank.load, HOOK);
    for (const { name, radius, rated, share, pad, edge, unlevel, line } of tank.stands) {
      figures.add(says.radius(tank.name, name), radius, HOOK);
      figures.add(says.rated(tank.name, name), rated, HOOK);
      figures.add(says.share(tank.name, name), share, HOOK);
      figures.add(says.pad(tank.name, name), pad, HOOK);
      figures.add(says.edgeDistance(tank.name, name), edge?.distance);
      figures.add(says.edgeNeeded(tank.name, name), edge?.needed);
      figures.add(says.unlevel(tank.name, name), unlevel);
      figures.add(says.lineDistance(tank.name, name), line?.distance);
      figures.add(says.lineNeeded(tank.name, name), line?.needed);
    }
  }
  return figures.list;
}

function landFigures({ land }: Estimate): ShownFigure[] {
  const figures = new Figures();
  figures.add(says.disturbed, land.disturbed);
  figures.add(says.barrier, land.barrier);
  return figures.list;
}

/** Volumes in these lines are of fuel or of what a tank holds. */
const isLiquid = ({ per, quantity }: CostLine): boolean => per === "L" || quantity.unit === "each";

/** What a price id costs: as the scheme sets it, else as the catalogue has it. */
function rateOf(scheme: Scheme, id: string): number | undefined {
  const chosen = scheme.prices?.find((choice) => choice.id === id)?.price;
  return chosen ?? listedPrice(scheme, id)?.price.likely;
}

/** What a rate of hire is for, by the end of its id. */
function rateName(id: string): string {
  const { costLeaf } = words;
  if (id.endsWith("-four-weeks")) return says.rate(costLeaf.fourWeeks);
  if (id.endsWith("-week")) return says.rate(costLeaf.aWeek);
  if (id.endsWith("-delivery")) return says.rate(costLeaf.bringingTakingAway);
  return says.rate(costLeaf.aDay);
}

/** How the money of a line is reached: quantity × price, or hires × their rates. */
function amountWorking(site: Site, scheme: Scheme, currency: string, line: CostLine): Quantity {
  const { quantity, per, price, amount, priceIds, source } = line;
  const money = { value: amount.likely, unit: currency, source };
  if (priceIds.length > 1) {
    const rates = priceIds.flatMap((id) => {
      const value = rateOf(scheme, id);
      return value === undefined ? [] : [{ name: rateName(id), value, unit: currency }];
    });
    return { ...money, formula: says.hireAmount, inputs: [...quantity.inputs, ...rates] };
  }
  const { words: one, counted, size } = perOf(per, site.units);
  return {
    ...money,
    formula: says.lineAmount,
    inputs: [
      { name: words.handoverLeaf.quantity, value: quantity.value, unit: quantity.unit },
      {
        name: says.priceOf(`${counted ? words.costLeaf.one : ""}${one}`),
        value: price.likely * size,
        unit: currency,
      },
    ],
  };
}

function costFigures(site: Site, { scheme, cost }: Estimate): ShownFigure[] {
  const figures = new Figures();
  const priced = schemeOf(site, scheme);
  for (const line of cost.lines) {
    // A price for a foot goes with tenths of it, not with inches.
    const kind = { liquid: isLiquid(line), decimal: line.per === "m" };
    figures.add(line.name, line.quantity, kind);
    figures.add(says.amountOf(line.name), amountWorking(site, priced, cost.currency, line), kind);
  }
  figures.add(says.total, cost.totalWorking);
  return figures.list;
}

/** All groups that have anything in them. */
export function figureGroups(site: Site, estimate: Estimate): FigureGroup[] {
  const { groups } = says;
  return [
    { title: groups.hours, figures: hourFigures(site, estimate) },
    { title: groups.machines, figures: machineFigures(estimate) },
    { title: groups.byHand, figures: handFigures(estimate) },
    { title: groups.loads, figures: loadFigures(estimate) },
    { title: groups.flow, figures: flowFigures(estimate) },
    { title: groups.lift, figures: liftFigures(estimate) },
    { title: groups.land, figures: landFigures(estimate) },
    { title: groups.cost, figures: costFigures(site, estimate) },
  ].filter(({ figures }) => figures.length > 0);
}
