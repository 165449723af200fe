import { describe, expect, it } from "vitest";
import pipes from "../../shared/catalogue/pipes.json" with { type: "json" };
import prices from "../../shared/catalogue/prices.json" with { type: "json" };
import tanks from "../../shared/catalogue/tanks.json" with { type: "json" };
import { catalogueName } from "./catalogueName.js";

describe("the name of a catalogue's row", () => {
  it("tells what a tank holds in the site's units", () => {
    // 1 gal = 3.785411784 L: NIST SP 811.
    expect(catalogueName("Precast tank, up to 1,000 gal", "metric")).toBe(
      "Precast tank, up to 3,785 L",
    );
    expect(catalogueName("Concrete tank, 1,500 gal, two compartments", "metric")).toBe(
      "Concrete tank, 5,678 L, two compartments",
    );
    expect(catalogueName("Concrete tank, 3.0 m³", "us")).toBe("Concrete tank, 793 gal");
  });

  it("keeps a pipe's nominal inches, with DN beside them on a metric site alone", () => {
    expect(catalogueName("Schedule 40 PVC, 1½ in, with joints", "metric")).toBe(
      "Schedule 40 PVC, 1½ in (DN 40), with joints",
    );
    expect(catalogueName("SDR 35 PVC, 4 in", "metric")).toBe("SDR 35 PVC, 4 in (DN 100)");
  });

  it("is that of the catalogue on a US site, but for metric tanks", () => {
    const rows = [...pipes.pipes, ...prices.prices, ...tanks.tanks];
    const changed = rows.filter(({ name }) => catalogueName(name, "us") !== name);
    expect(changed.map(({ id }) => id)).toEqual(["tank-3000-l", "tank-5000-l"]);
  });

  it("leaves no gallon on a metric site, and no inch without its DN", () => {
    const names = [...pipes.pipes, ...prices.prices, ...tanks.tanks].map(({ name }) =>
      catalogueName(name, "metric"),
    );
    expect(names.filter((name) => / gal\b/.test(name))).toEqual([]);
    expect(names.filter((name) => / in(?! \(DN \d+\))(,|$)/.test(name))).toEqual([]);
  });
});
