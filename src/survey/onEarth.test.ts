import { describe, expect, it } from "vitest";
import { toEarth, toPlane, type EarthPlace } from "./onEarth.js";

interface Ellipsoid {
  radius: number;
  flattening: number;
}
const WGS84: Ellipsoid = { radius: 6_378_137, flattening: 1 / 298.257223563 };
const GRS80: Ellipsoid = { radius: 6_378_137, flattening: 1 / 298.257222101 };

/**
 * Geodesic distance on an ellipsoid, m. T. Vincenty, Direct and inverse solutions of geodesics on
 * the ellipsoid, Survey Review 23 (1975), inverse formula (recalled): an oracle for these tests
 * alone, held first against a published line.
 */
function vincenty(a: EarthPlace, b: EarthPlace, { radius, flattening: f }: Ellipsoid): number {
  const rad = Math.PI / 180;
  const polar = radius * (1 - f);
  const reduced = ({ latitude }: EarthPlace): number =>
    Math.atan((1 - f) * Math.tan(latitude * rad));
  const [u1, u2] = [reduced(a), reduced(b)];
  const [s1, c1, s2, c2] = [Math.sin(u1), Math.cos(u1), Math.sin(u2), Math.cos(u2)];
  const far = (b.longitude - a.longitude) * rad;
  let lambda = far;
  for (let i = 0; i < 100; i++) {
    const [sl, cl] = [Math.sin(lambda), Math.cos(lambda)];
    const ss = Math.hypot(c2 * sl, c1 * s2 - s1 * c2 * cl);
    const cs = s1 * s2 + c1 * c2 * cl;
    const sigma = Math.atan2(ss, cs);
    const sa = (c1 * c2 * sl) / ss;
    const ca2 = 1 - sa * sa;
    const cm = ca2 === 0 ? 0 : cs - (2 * s1 * s2) / ca2;
    const C = (f / 16) * ca2 * (4 + f * (4 - 3 * ca2));
    const next = far + (1 - C) * f * sa * (sigma + C * ss * (cm + C * cs * (2 * cm * cm - 1)));
    if (Math.abs(next - lambda) > 1e-14) {
      lambda = next;
      continue;
    }
    const w = (ca2 * (radius ** 2 - polar ** 2)) / polar ** 2;
    const A = 1 + (w / 16384) * (4096 + w * (-768 + w * (320 - 175 * w)));
    const B = (w / 1024) * (256 + w * (-128 + w * (74 - 47 * w)));
    const turn =
      B *
      ss *
      (cm +
        (B / 4) * (cs * (2 * cm * cm - 1) - (B / 6) * cm * (4 * ss * ss - 3) * (4 * cm * cm - 3)));
    return polar * A * (sigma - turn);
  }
  throw new Error("no end");
}

const dms = (d: number, m: number, s: number): number =>
  Math.sign(d) * (Math.abs(d) + m / 60 + s / 3600);

describe("the oracle", () => {
  it("finds the published length from Flinders Peak to Buninyong", () => {
    // Geodetic Datum of Australia Technical Manual (ICSM), worked example on GRS 80: 54,972.271 m
    // (recalled).
    const flinders = {
      latitude: dms(-37, 57, 3.7203),
      longitude: dms(144, 25, 29.5244),
    };
    const buninyong = {
      latitude: dms(-37, 39, 10.1561),
      longitude: dms(143, 55, 35.3839),
    };
    expect(vincenty(flinders, buninyong, GRS80)).toBeCloseTo(54_972.271, 3);
  });
});

describe("places on the earth in the site's plane", () => {
  // Length of one degree on WGS 84, km: of latitude 110.574 at the equator, 111.132 at 45°, 111.694
  // at the pole; of longitude 111.320 at the equator (widely published; read in quotation).
  it.each([
    [0, 110_574, 111_320],
    [45, 111_132, 78_847],
    [60, 111_412, 55_800],
  ])("one thousandth of a degree at latitude %d", (latitude, northwards, eastwards) => {
    const origin = { longitude: 10, latitude };
    const north = toPlane(origin, { longitude: 10, latitude: latitude + 0.001 });
    const east = toPlane(origin, { longitude: 10.001, latitude });
    // Published to a metre in a degree.
    expect(Math.abs(north[1] * 1000 - northwards)).toBeLessThan(1);
    expect(Math.abs(east[0] * 1000 - eastwards)).toBeLessThan(1);
    expect(Math.abs(north[0])).toBeLessThan(1e-6);
  });

  const LATITUDES = [-54, -37.9, 0, 12, 45.6, 64.1];
  it.each(LATITUDES)(
    "within a millimetre of the geodesic over 300 m at latitude %d",
    (latitude) => {
      const origin = { longitude: -122.3, latitude };
      for (let k = 0; k < 12; k++) {
        const turn = (k * Math.PI) / 6;
        const place = {
          longitude:
            origin.longitude + (0.0027 * Math.sin(turn)) / Math.cos((latitude * Math.PI) / 180),
          latitude: latitude + 0.0027 * Math.cos(turn),
        };
        const [x, y] = toPlane(origin, place);
        expect(Math.abs(Math.hypot(x, y) - vincenty(origin, place, WGS84))).toBeLessThan(0.001);
      }
    },
  );

  it.each(LATITUDES)("keeps distances between two places 300 m off, at latitude %d", (latitude) => {
    const origin = { longitude: 5, latitude };
    const at = (e: number, n: number): EarthPlace => ({
      longitude: 5 + e / Math.cos((latitude * Math.PI) / 180),
      latitude: latitude + n,
    });
    const [a, b] = [at(0.0027, 0.0021), at(-0.0024, 0.0026)];
    const [pa, pb] = [toPlane(origin, a), toPlane(origin, b)];
    const plane = Math.hypot(pa[0] - pb[0], pa[1] - pb[1]);
    expect(Math.abs(plane - vincenty(a, b, WGS84))).toBeLessThan(0.002);
  });

  it("goes there and back", () => {
    const origin = { longitude: 179.9999, latitude: 45.6 };
    for (const place of [
      [120, -80],
      [0, 0],
      [-0.5, 900],
    ] as const) {
      const back = toPlane(origin, toEarth(origin, [...place]));
      expect(back[0]).toBeCloseTo(place[0], 5);
      expect(back[1]).toBeCloseTo(place[1], 5);
    }
  });
});
