import { describe, expect, it } from "vitest";
import { readSite } from "../../site/index.js";
import type { Finding } from "../../site/index.js";
import { estimate } from "../../estimate/index.js";
import { examples } from "../../store/index.js";
import { countFindings, placeOfFinding, worstFirst } from "./placeOfFinding.js";

const finding = (code: string, where: string, level: Finding["level"] = "caution"): Finding => ({
  ...{ code, where, level },
  text: "",
  source: "",
});

/** Every example with its sites' schemes. */
const opened = await Promise.all(
  examples.map(async ({ id, read }) => {
    const site = readSite(await read());
    if (!site.ok) throw new Error(`expected the example ${id} to open`);
    return { id, site: site.value };
  }),
);

describe("where a finding is at home", () => {
  it.each(opened)("finds the thing of every finding of $id", ({ site }) => {
    for (const scheme of site.schemes) {
      for (const one of estimate(site, scheme.id).findings) {
        const place = placeOfFinding(site, scheme.id, one);
        const isWhole = one.where === "site" || one.where === "survey";
        expect(place.name === null, `${one.code} at ${one.where}`).toBe(isWhole);
        if (place.picked?.kind === "work") {
          const { id } = place.picked;
          expect(scheme.works.some((work) => work.id === id)).toBe(true);
        }
      }
    }
  });

  const { site } = opened[0]!;
  const scheme = site.schemes[0]!;
  const trench = scheme.works.find((work) => work.kind === "trench");
  const pipe = trench?.kind === "trench" ? trench.pipes[0] : undefined;

  it("picks a pipe's trench and opens the leaf of its flow", () => {
    const place = placeOfFinding(
      site,
      scheme.id,
      finding("pipe.fall-too-small", pipe?.id ?? "no pipe"),
    );
    expect(place).toEqual({
      leaf: "flow",
      picked: { kind: "work", id: trench?.id },
      name: pipe?.name,
      pipe: pipe?.id,
      limit: null,
    });
  });

  it("opens the leaf that has the fields: a tank's floating, its crane and its walls", () => {
    const tank = scheme.works.find((work) => work.kind === "tank")?.id ?? "no tank";
    const leafOf = (code: string): string =>
      placeOfFinding(site, scheme.id, finding(code, tank)).leaf;
    expect(leafOf("tank.floats")).toBe("flow");
    expect(leafOf("lift.stand")).toBe("machines");
    expect(leafOf("lift.below-low-water")).toBe("flow");
    expect(leafOf("walls.too-steep")).toBe("dig");
    expect(leafOf("tank.rock-bedding")).toBe("dig");
    expect(leafOf("line.by-hand")).toBe("machines");
  });

  it("picks probes and points, names limits, and takes the rest for the whole site", () => {
    const probe = site.ground.probes[0]?.id ?? "no probe";
    const point = site.survey.points[0]?.id ?? "no point";
    const limit = site.limits?.[0]?.id ?? "no limit";
    expect(placeOfFinding(site, scheme.id, finding("probe.two-logs", probe))).toMatchObject({
      leaf: "survey",
      picked: { kind: "probe", id: probe },
    });
    expect(placeOfFinding(site, scheme.id, finding("survey.two-heights", point))).toMatchObject({
      leaf: "survey",
      picked: { kind: "point", id: point },
    });
    expect(placeOfFinding(site, scheme.id, finding("limit.crossed", limit))).toMatchObject({
      leaf: "survey",
      picked: { kind: "limit", id: limit },
      limit,
    });
    expect(placeOfFinding(site, scheme.id, finding("cost.demo-prices", "site"))).toMatchObject({
      leaf: "cost",
      picked: null,
      name: null,
    });
  });
});

describe("findings in order", () => {
  it("counts them, and puts those that stop the job first", () => {
    const all = [finding("a", "x", "note"), finding("b", "x", "stop"), finding("c", "x")];
    const taken = { ...finding("d", "x"), accepted: { reason: "the neighbour agreed" } };
    expect(countFindings([...all, taken])).toEqual({ stop: 1, caution: 1, note: 1 });
    expect(worstFirst(all).map(({ code }) => code)).toEqual(["b", "c", "a"]);
  });
});
