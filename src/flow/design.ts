import type { Quantity, Scheme, Work } from "../site/index.js";
import {
  designFlow,
  leastTank,
  loadingByClass,
  loadingByPercolation,
} from "../hydraulics/index.js";
import type { MoundSize } from "./sizingMound.js";

/** How large the system has to be, and what the scheme provides. Absent parts are not asked for. */
export interface Sizing {
  /** m³/s over the day. */
  daily?: Quantity;
  /** m³ of liquid: least wanted, and what the tanks hold. */
  leastTank?: Quantity;
  tanks: Quantity;
  /** m/s that the soil takes. */
  loading?: Quantity;
  /** m² of bottom wanted, and provided. */
  areaWanted?: Quantity;
  field: Quantity;
  /** What each bed of sand would cover as a mound with earth sides, in the order of the works. */
  mounds: readonly MoundSize[];
}

/** Sizes a scheme by its design flow and soil; what cannot be worked out is left out, and mounds are. */
export function sizeScheme(scheme: Scheme): Omit<Sizing, "mounds"> {
  const daily = dailyFlow(scheme);
  const loading = loadingRate(scheme);
  const wanted =
    scheme.flow?.design?.by === "bedrooms" ? leastTank(scheme.flow.design.bedrooms) : null;
  return {
    ...(daily === null ? {} : { daily }),
    ...(wanted === null ? {} : { leastTank: tankWanted(scheme, wanted) }),
    tanks: tanksHold(scheme),
    ...(loading === null ? {} : { loading }),
    ...(daily === null || loading === null || !(loading.value > 0)
      ? {}
      : { areaWanted: areaFor(daily, loading) }),
    field: fieldArea(scheme),
  };
}

/** Design flow, m³/s over a day; null where the scheme does not say, or names no known table. */
export function dailyFlow(scheme: Scheme): Quantity | null {
  const design = scheme.flow?.design;
  switch (design?.by) {
    case undefined:
      return null;
    case "daily":
      return quantity(design.flow, "m³/s over the day", "as entered", [], "set in this scheme");
    case "bedrooms": {
      const found = designFlow(design.bedrooms, design.table);
      if (found === null) return null;
      const inputs = [{ name: "bedrooms", value: design.bedrooms, unit: "each" }];
      return quantity(
        found.value,
        "m³/s over the day",
        "the table's row for so many bedrooms",
        inputs,
        found.source,
      );
    }
    case "people":
      return quantity(
        design.people * design.each,
        "m³/s over the day",
        "people × flow for each",
        [
          { name: "people", value: design.people, unit: "each" },
          { name: "flow for each", value: design.each, unit: "m³/s over the day" },
        ],
        design.source ?? "set in this scheme",
      );
    case "fixtures":
      return quantity(
        design.fixtures.reduce((sum, one) => sum + one.count * one.each, 0),
        "m³/s over the day",
        "the sum of each kind's count × flow for each",
        design.fixtures.flatMap(({ name, count, each }) => [
          { name, value: count, unit: "each" },
          { name: `${name}: flow for each`, value: each, unit: "m³/s over the day" },
        ]),
        design.source ?? "set in this scheme",
      );
  }
}

function loadingRate(scheme: Scheme): Quantity | null {
  const soil = scheme.flow?.soil;
  if (soil === undefined) return null;
  if (soil.by === "rate") {
    return quantity(
      soil.rate,
      "m³/s on each m²",
      "as entered",
      [],
      soil.source ?? "set in this scheme",
    );
  }
  const found =
    soil.by === "percolation"
      ? loadingByPercolation(soil.rate, soil.table)
      : loadingByClass(soil.class, soil.table);
  if (found === null) return null;
  const inputs =
    soil.by === "percolation" ? [{ name: "percolation", value: soil.rate, unit: "s/m" }] : [];
  return quantity(
    found.value,
    "m³/s on each m²",
    "the table's row for this soil",
    inputs,
    found.source,
  );
}

function tankWanted(scheme: Scheme, wanted: { value: number; source: string }): Quantity {
  const design = scheme.flow?.design;
  const bedrooms = design?.by === "bedrooms" ? design.bedrooms : 0;
  const inputs = [{ name: "bedrooms", value: bedrooms, unit: "each" }];
  return quantity(
    wanted.value,
    "m³",
    "the table's row for so many bedrooms",
    inputs,
    wanted.source,
  );
}

function tanksHold({ works }: Scheme): Quantity {
  const tanks = works.filter((work) => work.kind === "tank");
  const inputs = tanks.map((tank) => ({
    name: tank.name,
    value: tank.body.liquidVolume ?? 0,
    unit: "m³",
  }));
  const value = inputs.reduce((sum, one) => sum + one.value, 0);
  return quantity(value, "m³", "the sum of the tanks' liquid volumes", inputs, "as entered");
}

function areaFor(daily: Quantity, loading: Quantity): Quantity {
  return quantity(
    daily.value / loading.value,
    "m²",
    "design flow ÷ loading rate",
    [
      { name: "design flow", value: daily.value, unit: "m³/s over the day" },
      { name: "loading rate", value: loading.value, unit: "m³/s on each m²" },
    ],
    loading.source,
  );
}

/** Bottom of the works that take the water: a trench's length × width, a bed's inside, a pad's outline. */
function fieldArea(scheme: Scheme): Quantity {
  const ids = new Set(scheme.flow?.field ?? []);
  const inputs = scheme.works
    .filter((work) => ids.has(work.id))
    .map((work) => ({ name: work.name, value: bottomOf(work), unit: "m²" }));
  const value = inputs.reduce((sum, one) => sum + one.value, 0);
  return quantity(value, "m²", "the sum of their bottoms in plan", inputs, "geometry");
}

function bottomOf(work: Work): number {
  switch (work.kind) {
    case "trench":
      return work.width * pathLength(work.path);
    case "bed":
      return (work.length - 2 * work.wall) * (work.width - 2 * work.wall);
    case "pad":
      return Math.abs(shoelace(work.outline));
    default:
      return 0;
  }
}

/** m in plan along a path. */
export function pathLength(path: readonly (readonly [number, number])[]): number {
  return path.reduce((sum, [x, y], i) => {
    const before = path[i - 1];
    return before === undefined ? 0 : sum + Math.hypot(x - before[0], y - before[1]);
  }, 0);
}

function shoelace(outline: readonly (readonly [number, number])[]): number {
  return outline.reduce((sum, [x, y], i) => {
    const [u, v] = outline[(i + 1) % outline.length] ?? [x, y];
    return sum + (x * v - u * y) / 2;
  }, 0);
}

function quantity(
  value: number,
  unit: string,
  formula: string,
  inputs: Quantity["inputs"],
  source: string,
): Quantity {
  return { value, unit, formula, inputs, source };
}
