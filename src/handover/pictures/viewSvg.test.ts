import { XMLParser } from "fast-xml-parser";
import { describe, expect, it } from "vitest";
import type { Mark, TextMark } from "../../sheets/index.js";
import type { Limit } from "../../site/index.js";
import { exampleJob } from "../job.fixture.js";
import { fitOf } from "./fit.js";
import { lensOf, type ViewCamera } from "./lens.js";
import { facetsOf } from "./drawView.js";
import { usualCamera } from "./usualCamera.js";
import { viewPage } from "./viewPage.js";
import { viewScene } from "./viewScene.js";
import { makeViews, viewSvg } from "./viewSvg.js";
import { FacetMap, type Facet, type Spot } from "./visible.js";

const job = exampleJob("alder-flat");

/** From the low corner of the example's lot, near the ground. */
function eyeCamera(): ViewCamera {
  const { points } = job.site.survey;
  const low = points.reduce((a, b) => (b.z < a.z ? b : a));
  const middle = points.reduce(
    (sum, p) => [sum[0]! + p.x / points.length, sum[1]! + p.y / points.length],
    [0, 0],
  );
  const bearing = (Math.atan2(middle[0]! - low.x, middle[1]! - low.y) * 180) / Math.PI;
  return { kind: "eye", bearing, dip: 20, at: [low.x, low.y, low.z + 18], fov: 40 };
}

/** How far inside an outline a spot is, mm; below nought outside. */
function insideBy(outline: readonly Spot[], [x, y]: Spot): number {
  return Math.min(
    ...outline.map(([ax, ay], i) => {
      const [bx, by] = outline[(i + 1) % outline.length]!;
      const size = Math.hypot(bx - ax, by - ay);
      return size === 0 ? Infinity : ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / size;
    }),
  );
}

const nearAt = ({ near: [a, b, c] }: Facet, [x, y]: Spot): number => a * x + b * y + c;

describe("a view of a stage", () => {
  it.each([
    ["parallel", usualCamera(job.site)],
    ["from an eye", eyeCamera()],
  ] as const)("shows at every spot the nearest face alone (%s)", (_, camera) => {
    const scene = viewScene(job, "dug");
    const lens = lensOf(camera, scene.origin);
    const fit = fitOf(scene, lens, camera, 1.5);
    const facets = facetsOf(scene, lens, fit);
    const map = new FacetMap(facets);
    const parts = facets.map((facet) => map.partsOf(facet));
    let [met, covered] = [0, 0];
    // An additive sequence spreads the spots evenly and the same at every run.
    for (let i = 1; i <= 1200; i++) {
      const spot: Spot = [
        8 + fit.width * ((i * 0.7548776662466927) % 1),
        8 + fit.height * ((i * 0.5698402909980532) % 1),
      ];
      const under = facets.filter(({ outline }) => insideBy(outline, spot) > 0);
      const nearest = under.toSorted((a, b) => nearAt(b, spot) - nearAt(a, spot))[0];
      if (nearest === undefined) continue;
      const shown = facets.filter((_facet, k) =>
        parts[k]!.some((part) => insideBy(part, spot) > 0),
      );
      // On a seam, or where two faces are as near as the numbers tell, either may show.
      const isPlain = under.every(
        (facet) =>
          insideBy(facet.outline, spot) > 0.05 &&
          (facet === nearest || nearAt(nearest, spot) - nearAt(facet, spot) > 4 * facet.slack),
      );
      if (!isPlain) continue;
      expect(shown).toEqual([nearest]);
      met += 1;
      if (under.length > 1) covered += 1;
    }
    expect(met).toBeGreaterThan(280);
    expect(covered).toBeGreaterThan(2);
  });

  it("stays on its page", () => {
    for (const options of [{}, { camera: eyeCamera(), aspect: 1.5 }]) {
      const page = viewPage(job, "backfilled", options);
      const spots = spotsOf(page.marks);
      expect(spots.length).toBeGreaterThan(500);
      for (const [x, y] of spots) {
        expect(x).toBeGreaterThanOrEqual(0);
        expect(x).toBeLessThanOrEqual(page.width);
        expect(y).toBeGreaterThanOrEqual(0);
        expect(y).toBeLessThanOrEqual(page.height);
      }
    }
  });

  it("has a layer for each kind of earth and for what stands, by name", () => {
    const text = viewSvg(job, "set");
    const layers = [...text.matchAll(/data-layer="([^"]*)"/g)].map(([, name]) => name);
    for (const name of [
      "Ground as found",
      "Topsoil",
      "Tanks",
      "Buildings",
      "Contours",
      "Contour heights",
      "Lot line",
      "Watercourse",
      "Well",
      "Trees",
      "Erosion barrier",
      "Edges of works",
      "Names",
      "North",
      "Title",
    ]) {
      expect(layers).toContain(name);
    }
    expect(new Set(layers).size).toBe(layers.length);
    const svg = (new XMLParser().parse(text) as { svg: { desc: string; title: string } }).svg;
    for (const caution of job.estimate.cautions) {
      expect(svg.desc).toContain(caution.slice(0, 30));
    }
    expect(svg.title).toBe("Alder Flat: set");
    expect(text).toContain("Not to scale: slanted view.");
  });

  it("says on every picture what it is not, and to have buried lines located", () => {
    const texts = (marks: readonly Mark[]): string[] =>
      marks.flatMap((mark) =>
        mark.kind === "text" ? [mark.text] : mark.kind === "group" ? texts(mark.marks) : [],
      );
    for (const page of [180, 297]) {
      const said = texts(viewPage(job, "dug", { page }).marks).join(" ");
      expect(said).toContain("Not a permit: local codes and licensed practice decide.");
      expect(said).toContain("Have buried lines located before any digging.");
    }
  });

  it("shows before the digging where works will be, and no barrier yet", () => {
    const names = (stage: "found" | "dug"): (string | null)[] =>
      viewPage(job, stage).marks.map((mark) => (mark.kind === "group" ? mark.layer : null));
    expect(names("found")).toContain("Works to come");
    expect(names("found")).not.toContain("Erosion barrier");
    expect(names("dug")).not.toContain("Works to come");
  });

  it("hangs the wires of an overhead line as high as is known, and draws none of unknown height", () => {
    const [a, b] = [job.site.survey.points[0]!, job.site.survey.points.at(-1)!];
    const withLine = (height: number | null): ReturnType<typeof viewScene> => {
      const line = { id: "oh", kind: "overhead-line", path: [a, b].map(({ x, y }) => [x, y]) };
      const limits = [{ ...line, ...(height !== null && { height }) }] as Limit[];
      return viewScene({ ...job, site: { ...job.site, limits } }, "found");
    };
    const wires = withLine(7).lines.filter(({ name }) => name.endsWith("its wires"));
    const [from, to] = wires[0]!.strokes[0]!;
    const z = withLine(7).origin[2];
    expect(from[2] + z).toBeCloseTo(a.z + 7, 6);
    expect(to[2] + z).toBeCloseTo(b.z + 7, 6);
    expect(withLine(null).lines.some(({ name }) => name.endsWith("its wires"))).toBe(false);
  });

  it("writes the heights of heavy contours on them, none over another or over a name", () => {
    const { marks } = viewPage(job, "dug");
    const textsOf = (layer: string): TextMark[] =>
      marks.flatMap((mark) =>
        mark.kind === "group" && mark.layer === layer
          ? mark.marks.filter((each) => each.kind === "text")
          : [],
      );
    const heights = textsOf("Contour heights");
    expect(heights.length).toBeGreaterThan(2);
    // Contours a foot apart: every fifth is heavy.
    for (const { text } of heights) expect(Number(text.replace(",", "")) % 5).toBe(0);
    const all = [...heights, ...textsOf("Names")];
    all.forEach((one, i) => {
      for (const other of all.slice(i + 1)) {
        const far = Math.hypot(one.at[0] - other.at[0], one.at[1] - other.at[1]);
        expect(far).toBeGreaterThan(1.5);
      }
    });
  });

  it("shows the tank when it is set, and as dashes when it is covered", () => {
    const names = (stage: "dug" | "set" | "backfilled"): (string | null)[] =>
      viewPage(job, stage).marks.map((mark) => (mark.kind === "group" ? mark.layer : null));
    expect(names("dug")).not.toContain("Tanks");
    expect(names("set")).toContain("Tanks");
    expect(names("dug")).not.toContain("Below ground");
    expect(names("backfilled")).toContain("Below ground");
  });

  it("is the same each time, one file for each stage that is asked for", async () => {
    expect(viewSvg(job, "dug")).toBe(viewSvg(job, "dug"));
    const usual = await makeViews(job);
    expect(usual.map(({ name }) => name)).toEqual([
      "alder-flat-pumped-view-dug.svg",
      "alder-flat-pumped-view-backfilled.svg",
    ]);
    const one = await makeViews(job, { choices: { views: { stages: ["found"] } } });
    expect(one.map(({ name }) => name)).toEqual(["alder-flat-pumped-view-as-found.svg"]);
  });
});

function spotsOf(marks: readonly Mark[]): Spot[] {
  return marks.flatMap((mark): Spot[] => {
    if (mark.kind === "group") return spotsOf(mark.marks);
    if (mark.kind === "path") return mark.lines.flat();
    return [mark.at];
  });
}
