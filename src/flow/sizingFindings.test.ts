import { describe, expect, it } from "vitest";
import type { Scheme } from "../site/index.js";
import { plainTrench } from "../site/site.fixture.js";
import { sizeScheme } from "./design.js";
import { sizingFindings } from "./sizingFindings.js";

/** A trench of this width (m), 20 m long, that takes 1,000 litres a day in soil that takes 25 on 1 m². */
function said(widths: readonly number[]): string {
  const works = widths.map((width, i) =>
    plainTrench({
      ...{ id: `f${i}`, width },
      path: [
        [0, i * 5],
        [20, i * 5],
      ],
    }),
  );
  const day = 86_400;
  const scheme: Scheme = {
    ...{ id: "s", name: "S", works },
    flow: {
      field: works.map(({ id }) => id),
      design: { by: "daily", flow: 1 / day },
      soil: { by: "rate", rate: 0.025 / day },
    },
  };
  const found = sizingFindings({ ...sizeScheme(scheme), mounds: [] }, scheme, "metric");
  return found.find(({ code }) => code === "sizing.field-small")?.text ?? "";
}

describe("a field of trenches that is too small", () => {
  // 1,000 L a day ÷ 25 L on each m² = 40 m² of bottom.
  it("is told how long a trench would do", () => {
    expect(said([0.8])).toContain("that is 50.00 m of trench, 30.00 m more than is drawn");
    expect(said([0.8, 0.8])).toContain("that is 50.00 m of trench, 10.00 m more than is drawn");
  });

  it("is told no length where trenches differ, and nothing where they do", () => {
    expect(said([0.8, 0.6])).toContain("is wanted for the design flow");
    expect(said([0.8, 0.6])).not.toContain("of trench");
    expect(said([2])).toBe("");
  });
});
