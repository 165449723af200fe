import { describe, expect, it } from "vitest";
import { digOf, schemeOf, tankOf, workOf } from "../dig/dig.fixture.js";
import { planMachines } from "../machines/index.js";
import { catalogueMaterials, type Scheme } from "../site/index.js";
import { costOf } from "./cost.js";
import type { CostResult } from "./types.js";

const MATERIALS = catalogueMaterials();
const DIG = digOf([
  workOf({
    id: "tank",
    cut: { "common-earth": 30 },
    fill: { "crushed-gravel": 2, native: 15 },
    deepest: 2.4,
  }),
]);

function priced(costs?: Scheme["costs"]): CostResult {
  const bare = schemeOf({ works: [tankOf("tank", { liquidVolume: 3.785 })] });
  const scheme: Scheme = costs === undefined ? bare : { ...bare, costs };
  return costOf(scheme, "USD", DIG, planMachines(scheme, DIG, MATERIALS), MATERIALS);
}

const gravel = (cost: CostResult) =>
  cost.lines.filter(({ id }) => id === "material-crushed-gravel")[0]!;

describe("what a person adds to the cost", () => {
  const bare = priced();

  it("prices a line of their own, its range held about its price", () => {
    const line = { id: "wall", name: "Block for the bed's wall", per: "each" as const };
    const cost = priced({
      lines: [
        { ...line, count: 80, price: 3.5, low: 3, high: 5 },
        { ...line, id: "sand", per: "m3" as const, count: 2, price: 40, low: 45 },
      ],
    });
    const [wall, sand] = cost.lines.filter(({ made }) => made === "own-line");
    expect(wall?.amount).toEqual({ low: 240, likely: 280, high: 400 });
    expect(sand?.amount).toEqual({ low: 80, likely: 80, high: 80 });
    expect(cost.total.likely).toBeCloseTo(bare.total.likely + 360, 9);
  });

  it("orders waste on top of what is needed, in mass and in truckloads", () => {
    const cost = priced({ waste: 0.1 });
    expect(gravel(cost).quantity.value).toBeCloseTo(1.1 * gravel(bare).quantity.value, 9);
    const loose = (one: CostResult) => one.loads.imports[0]!.loose;
    expect(loose(cost)).toBeCloseTo(1.1 * loose(bare), 9);
  });

  it("charges the least load just below it, and what is needed just above", () => {
    const needed = gravel(bare).quantity.value;
    expect(gravel(priced({ leastLoad: needed * 1.001 })).quantity.value).toBe(needed * 1.001);
    expect(gravel(priced({ leastLoad: needed * 0.999 })).quantity.value).toBe(needed);
  });

  it("taxes every other line, own ones too", () => {
    const own = { id: "x", name: "X", per: "lump" as const, count: 1, price: 100 };
    const cost = priced({ tax: 0.08, lines: [own] });
    const tax = cost.lines[cost.lines.length - 1]!;
    expect(tax.made).toBe("tax");
    expect(tax.amount.likely).toBeCloseTo(0.08 * (bare.total.likely + 100), 9);
    expect(cost.total.high).toBeCloseTo(1.08 * (bare.total.high + 100), 9);
  });
});

describe("wear", () => {
  it("goes with the rock of its kind, and is none without any", () => {
    const scheme = schemeOf({ works: [tankOf("tank", { liquidVolume: 3.785 })] });
    const lines = (cut: Record<string, number>) => {
      const dig = digOf([workOf({ id: "tank", cut, deepest: 2 })]);
      return costOf(scheme, "USD", dig, planMachines(scheme, dig, MATERIALS), MATERIALS).lines;
    };
    const found = (cut: Record<string, number>, id: string) =>
      lines(cut).filter((line) => line.id === id);
    const mixed = { "common-earth": 20, "weathered-rock": 3, shale: 1, "shelf-rock": 2 };
    expect(found(mixed, "tooth-wear")[0]!.quantity.value).toBeCloseTo(4, 12);
    expect(found(mixed, "hammer-wear")[0]!.amount.likely).toBeCloseTo(2 * 9, 12);
    expect(found({ "common-earth": 20 }, "tooth-wear")).toEqual([]);
    expect(found({ "weathered-rock": 3 }, "hammer-wear")).toEqual([]);
  });
});
