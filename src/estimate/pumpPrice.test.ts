import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { changeScheme, readSite } from "../site/index.js";
import type { Scheme, Site } from "../site/index.js";
import { estimate, listedPrice } from "./index.js";

const SCHEME = "pumped";

function example(): Site {
  const file = new URL("../../shared/sites/alder-flat.site.json", import.meta.url);
  const read = readSite(readFileSync(file, "utf8"));
  if (!read.ok) throw new Error("the example cannot be read");
  return read.value;
}

const withPump = (site: Site, pump: string): Site =>
  changeScheme(site, SCHEME, (scheme) => ({
    ...scheme,
    flow: {
      ...scheme.flow,
      pressure: (scheme.flow?.pressure ?? []).map((system) => ({ ...system, pump })),
    },
  }));

const withPrices = (site: Site, prices: NonNullable<Scheme["prices"]>): Site =>
  changeScheme(site, SCHEME, (scheme) => ({ ...scheme, prices }));

function pumpLine(site: Site) {
  const { cost } = estimate(site, SCHEME);
  const lines = cost.lines.filter(({ id }) => id.startsWith("pump-set"));
  expect(lines).toHaveLength(1);
  return { line: lines[0]!, total: cost.total.likely, findings: cost.findings };
}

describe("the price of the pump in use", () => {
  it("names the pump and says that it has no price yet", () => {
    const { line } = pumpLine(example());
    expect(line.name).toContain("Effluent pump, ½ hp");
    expect(line.unpriced).toBe(true);
    expect(line.source).toContain("no price yet for this pump");
    const any = listedPrice(example().schemes[0]!, "pump-set");
    expect(line.amount).toEqual(any?.price);
  });

  it("follows the choice of the pump once the two are priced", () => {
    const priced = withPrices(example(), [
      { id: "pump-set-effluent-half", price: 1800 },
      { id: "pump-set-high-head-half", price: 2300 },
    ]);
    const half = pumpLine(priced);
    const high = pumpLine(withPump(priced, "high-head-half"));
    expect(half.line.amount.likely).toBe(1800);
    expect(half.line.unpriced).toBeUndefined();
    expect(high.line.amount.likely).toBe(2300);
    expect(high.total - half.total).toBeCloseTo(500, 6);
    expect(half.findings.some(({ code }) => code === "cost.unknown-price")).toBe(false);
  });

  it("lets the person's price of any set stand for a pump without one", () => {
    const { line } = pumpLine(withPrices(example(), [{ id: "pump-set", price: 1700 }]));
    expect(line.amount.likely).toBe(1700);
    expect(line.unpriced).toBe(true);
  });
});

describe("the listed price of an id", () => {
  it("is of the price list or of what can be hired, and null for what is neither", () => {
    const scheme = example().schemes[0]!;
    expect(listedPrice(scheme, "fuel")?.price.likely).toBeGreaterThan(0);
    expect(listedPrice(scheme, "plate-compactor-week")?.price.likely).toBe(290);
    expect(listedPrice(scheme, "plate-compactor-delivery")?.price.likely).toBe(45);
    expect(listedPrice(scheme, "no such thing")).toBeNull();
  });
});
