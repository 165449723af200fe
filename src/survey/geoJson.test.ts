import { describe, expect, it } from "vitest";
import { LIMIT_KINDS, type Limit, type Work } from "../site/index.js";
import { limitFrom, originFrom, writeGeoJson } from "./earthLimits.js";
import { kindIn, readGeoJson } from "./geoJsonIn.js";
import { toPlane } from "./onEarth.js";

const feature = (type: string, coordinates: unknown, properties: unknown = {}): unknown => ({
  type: "Feature",
  properties,
  geometry: { type, coordinates },
});
const read = (...features: unknown[]) =>
  readGeoJson(JSON.stringify({ type: "FeatureCollection", features }));

const RING = [
  [-122, 45],
  [-121.999, 45],
  [-121.999, 45.001],
  [-122, 45],
];

describe("GeoJSON read", () => {
  it("takes points, lines and polygons, and each part of a Multi", () => {
    const { outlines, problems } = read(
      feature("Point", [-122, 45], { kind: "well", name: "Old well", depth: 30 }),
      feature("LineString", RING.slice(0, 2), { type: "Creek" }),
      feature("Polygon", [RING], { layer: "parcel" }),
      feature("MultiPoint", [RING[0], RING[1]], { name: "oak tree" }),
      feature("MultiLineString", [RING.slice(0, 2), RING.slice(1, 3)]),
      feature("MultiPolygon", [[RING], [RING]], { use: "house" }),
    );
    expect(problems).toEqual([]);
    expect(outlines.map(({ shape, kind, places }) => [shape, kind, places.length])).toEqual([
      ["place", "well", 1],
      ["line", "watercourse", 2],
      ["area", "lot-line", 3],
      ["place", "tree", 1],
      ["place", "tree", 1],
      ["line", null, 2],
      ["line", null, 2],
      ["area", "building", 3],
      ["area", "building", 3],
    ]);
    expect(outlines[0]).toMatchObject({ name: "Old well", numbers: { depth: 30 } });
    expect(outlines[4]!.path).toBe("features[3] part 2");
  });

  it("takes a lone feature, a lone geometry and a collection of geometries", () => {
    const point = { type: "Point", coordinates: [1, 2, 300] };
    expect(readGeoJson(JSON.stringify(point)).outlines).toHaveLength(1);
    expect(readGeoJson(JSON.stringify(feature("Point", [1, 2]))).outlines).toHaveLength(1);
    const both = { type: "GeometryCollection", geometries: [point, point] };
    expect(readGeoJson(JSON.stringify(both)).outlines).toHaveLength(2);
  });

  it.each([
    ["{", "file", "is not JSON"],
    ["7", "file", "is no GeoJSON"],
    [`{"type":"FeatureCollection"}`, "features", "is not a list"],
    [`{"type":"FeatureCollection","features":[]}`, "features", "nothing in it"],
  ])("%s is told", (text, path, what) => {
    const { outlines, problems } = readGeoJson(text);
    expect(outlines).toEqual([]);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ path });
    expect(problems[0]!.what).toContain(what);
  });

  it.each([
    ["latitude first", feature("Point", [45, -122]), "latitude first"],
    ["metres", feature("Point", [500_000, 4_980_000]), "no longitude and latitude"],
    ["text", feature("Point", ["a", "b"]), "no pair"],
    ["a line of one place", feature("LineString", [[1, 2]]), "1 places"],
    ["no geometry", { type: "Feature", properties: {}, geometry: null }, "no geometry"],
    ["another type", feature("Circle", [1, 2]), "type Circle"],
  ])("%s is told, and the rest is read", (_, bad, what) => {
    const { outlines, problems } = read(feature("Point", [-122, 45]), bad);
    expect(outlines).toHaveLength(1);
    expect(problems).toHaveLength(1);
    expect(problems[0]!.path).toContain("features[1]");
    expect(problems[0]!.what).toContain(what);
  });

  it("says that inner edges and another system are left out", () => {
    expect(read(feature("Polygon", [RING, RING])).problems[0]!.what).toContain("inner edge");
    const text = JSON.stringify({ crs: {}, type: "Point", coordinates: [1, 2] });
    expect(readGeoJson(text).problems[0]!.path).toBe("crs");
  });

  it("knows each kind of limit by its id", () => {
    for (const { id } of LIMIT_KINDS) expect([id, kindIn(id)]).toEqual([id, id]);
    expect(kindIn("Neighbor's well")).toBe("neighbour-well");
    expect(kindIn("water main")).toBe("water-line");
    expect(kindIn("something")).toBeNull();
  });
});

describe("limits there and back", () => {
  const origin = { longitude: -122.5, latitude: 45.7 };
  const limits: Limit[] = [
    { id: "w", kind: "well", name: "Well", at: [12.345, -67.891], setback: 0, radius: 2 },
    {
      ...{ id: "l", kind: "lot-line", name: "Lot", closed: true },
      path: [
        [0, 0],
        [0, 80],
        [55.5, 80.25],
        [60, -3],
      ],
    },
    {
      ...{ id: "o", kind: "overhead-line", name: "Line", voltage: 7200, height: 9 },
      path: [
        [-100, 40],
        [150, 42],
      ],
    },
  ];

  it("come back to the millimetre, with what is known of them", () => {
    const { outlines, problems } = readGeoJson(writeGeoJson(limits, [], origin));
    expect(problems).toEqual([]);
    const back = outlines.map((one, i) =>
      limitFrom(one, one.kind ?? "none", origin, limits[i]!.id),
    );
    limits.forEach((limit, i) => {
      const { path, at, ...rest } = limit;
      const { path: path2, at: at2, ...rest2 } = back[i]!;
      expect(rest2).toEqual(rest);
      // An area may come back the other way round.
      const places = [...(path ?? []), ...(at === undefined ? [] : [at])];
      const places2 = [...(path2 ?? []), ...(at2 === undefined ? [] : [at2])];
      for (const [x, y] of places) {
        const nearest = Math.min(...places2.map(([a, b]) => Math.hypot(a - x, b - y)));
        expect(nearest).toBeLessThan(0.002);
      }
    });
  });

  it("writes outer edges anticlockwise, closed", () => {
    const { features } = JSON.parse(writeGeoJson(limits, [], origin)) as {
      features: { geometry: { coordinates: [number, number][][] } }[];
    };
    const ring = features[1]!.geometry.coordinates[0]!;
    expect(ring).toHaveLength(5);
    expect(ring[0]).toEqual(ring[4]);
    const twice = ring.slice(1).reduce((sum, [x, y], i) => {
      const [px, py] = ring[i]!;
      return sum + (px + 122.5) * (y - 45.7) - (x + 122.5) * (py - 45.7);
    }, 0);
    expect(twice).toBeGreaterThan(0);
  });

  it("writes works by their outlines", () => {
    const works: Work[] = [
      {
        ...{ kind: "bed", id: "b", name: "Bed", at: [0, 0], bearing: 0, length: 6, width: 2 },
        ...{ height: 0.6, wall: 0, base: 100, filling: [] },
      },
      { kind: "pile", id: "p", name: "Heap", at: [5, 5], material: "native" },
    ];
    const { outlines } = readGeoJson(writeGeoJson([], works, origin));
    expect(outlines.map(({ name, shape }) => [name, shape])).toEqual([
      ["Bed", "area"],
      ["Heap", "place"],
    ]);
  });

  it("finds the origin from one place known in both", () => {
    const place = { longitude: -122.501, latitude: 45.702 };
    const [x, y] = toPlane(originFrom(place, [250, -120]), place);
    expect(x).toBeCloseTo(250, 6);
    expect(y).toBeCloseTo(-120, 6);
  });
});
