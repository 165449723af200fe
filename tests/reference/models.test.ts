/**
 * Models and plans that are taken away, opened by readers that are not ours: the Khronos glTF
 * validator, GDAL, and xmllint with the standard's rules for surfaces.
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { XMLParser } from "fast-xml-parser";
import { validateBytes } from "gltf-validator";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { estimate } from "../../src/estimate/index.js";
import type { HandoverJob } from "../../src/handover/index.js";
import { geoJsonOf } from "../../src/handover/models/geoJson.js";
import { stageModels } from "../../src/handover/models/gltf.js";
import { landXmlOf } from "../../src/handover/models/landXml.js";
import { readSite, type Site } from "../../src/site/index.js";
import { SCHEME, siteOf, tank } from "../fixtures/site.js";

const MADE = "2026-11-27T14:05:00Z";
const folder = mkdtempSync(join(tmpdir(), "bankyard-models-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function exampleSite(name: string): Site {
  const read = readSite(readFileSync(`shared/sites/${name}.site.json`, "utf8"));
  if (!read.ok) throw new Error(`${name} could not be read`);
  return read.value;
}

function jobOf(site: Site): HandoverJob {
  const schemeId = site.schemes[0]!.id;
  return { site, schemeId, estimate: estimate(site, schemeId), madeAt: MADE };
}

const jobs = new Map<string, HandoverJob>();
beforeAll(() => {
  for (const name of ["alder-flat", "quarry-lane"]) jobs.set(name, jobOf(exampleSite(name)));
});

/** One tank in a plane: at the stage "dug" nothing but its hole differs from the ground as found. */
function oneTank(): HandoverJob {
  const site = siteOf({
    points: [
      [0, 0, 10],
      [30, 0, 11],
      [30, 30, 13],
      [0, 30, 12],
    ],
    works: [tank({ at: [15, 15], bearing: 20, base: 9, walls: { by: "run", run: 0.75 } })],
  });
  return { site, schemeId: SCHEME, estimate: estimate(site, SCHEME), madeAt: MADE };
}

describe.each(["alder-flat", "quarry-lane"])("what is taken away of %s", (name) => {
  const job = (): HandoverJob => jobs.get(name)!;

  it("passes the Khronos glTF validator at every stage, without a warning", async () => {
    const files = await stageModels(job());
    expect(files).toHaveLength(7);
    for (const file of files) {
      const { issues, info } = await validateBytes(file.data as Uint8Array);
      expect([file.name, issues.messages]).toEqual([file.name, []]);
      expect(info.totalTriangleCount).toBeGreaterThan(100);
    }
  });

  it("is read by GDAL as GeoJSON, with every feature where it belongs on the earth", () => {
    const path = join(folder, `${name}.geojson`);
    const made = geoJsonOf(job()) as { features: unknown[] };
    writeFileSync(path, JSON.stringify(made));
    const told = execFileSync("ogrinfo", ["-al", "-so", path], { encoding: "utf8" });
    expect(told).toContain(`Feature Count: ${made.features.length}\n`);
    const extent = /Extent: \(([-.\d]+), ([-.\d]+)\) - \(([-.\d]+), ([-.\d]+)\)/.exec(told);
    const [west, south, east, north] = (extent ?? []).slice(1).map(Number);
    const place = job().site.place ?? { longitude: NaN, latitude: NaN };
    // A lot of some 100 m is about a thousandth of a degree.
    expect(west).toBeGreaterThan(place.longitude - 0.003);
    expect(east).toBeLessThan(place.longitude + 0.003);
    expect(south).toBeGreaterThan(place.latitude - 0.003);
    expect(north).toBeLessThan(place.latitude + 0.003);
  });

  it("keeps to the rules of LandXML 1.2 for surfaces", () => {
    const path = join(folder, `${name}.xml`);
    writeFileSync(path, landXmlOf(job()));
    // xmllint leaves with an error, which throws here, when the file breaks a rule.
    execFileSync("xmllint", ["--noout", "--schema", "tests/fixtures/landxml-surfaces.xsd", path], {
      stdio: "pipe",
    });
  });

  it("leaves no caution out", async () => {
    const { cautions } = job().estimate;
    const [model] = await stageModels(job(), { stages: ["dug"] });
    const texts = [
      JSON.stringify(geoJsonOf(job())),
      landXmlOf(job()).replaceAll("&apos;", "'").replaceAll("&quot;", '"').replaceAll("&amp;", "&"),
      new TextDecoder().decode(model?.data as Uint8Array),
    ];
    for (const text of texts) {
      for (const caution of cautions) expect(text).toContain(JSON.stringify(caution).slice(1, -1));
    }
  });
});

interface ReadSurface {
  name: string;
  Definition: { Pnts: { P: { "#text": string }[] }; Faces: { F: string[] } };
}

/** m³ between a surface and elevation 0, by prisms under its faces; the file's order is north, east. */
function under(surface: ReadSurface): number {
  const points = surface.Definition.Pnts.P.map((p) => p["#text"].split(" ").map(Number));
  return surface.Definition.Faces.F.reduce((sum, face) => {
    const corners = face.split(" ").map((id) => points[Number(id) - 1]!);
    const [an, bn, cn] = corners.map((corner) => corner[0]!) as [number, number, number];
    const [ae, be, ce] = corners.map((corner) => corner[1]!) as [number, number, number];
    const height = corners.reduce((total, corner) => total + corner[2]! / 3, 0);
    return sum + (Math.abs((be - ae) * (cn - an) - (bn - an) * (ce - ae)) / 2) * height;
  }, 0);
}

describe("surfaces that are taken away", () => {
  it("hold between them the earth that the estimate has dug", () => {
    const job = oneTank();
    const parser = new XMLParser({
      ignoreAttributes: false,
      attributeNamePrefix: "",
      parseTagValue: false,
    });
    const read = parser.parse(landXmlOf(job)) as {
      LandXML: { Surfaces: { Surface: ReadSurface[] } };
    };
    const surfaces = read.LandXML.Surfaces.Surface;
    expect(surfaces.map((surface) => surface.name)).toEqual(["As found", "Dug", "Backfilled"]);
    const cut = Object.values(job.estimate.cut).reduce((sum, volume) => sum + volume, 0);
    expect(cut).toBeGreaterThan(20);
    // Heights over 900 m² are printed to 10 µm, and points within 20 µm of each other are one.
    expect(Math.abs(under(surfaces[0]!) - under(surfaces[1]!) - cut)).toBeLessThan(900 * 2e-5);
  });
});
