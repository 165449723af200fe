/** The rules of the groups "lines", "lifting", "tank" and "power". */
import type { Finding, Limit, Trench } from "../../../src/site/index.js";
import { publishedRule } from "../../../src/site/index.js";
import { plainTrench } from "../../../src/site/site.fixture.js";
import type { RuleCase, Said } from "./case.js";
import { allOf, FOOT, holeOf, INCH, lineAt, said, type Rules } from "../../fixtures/job.js";

const PRACTICE = "common practice, no source";
const MARICOPA = "Maricopa County (Arizona)";
const NEC = "NFPA 70, National Electrical Code, Table 300.5";

const isTruck = ({ text }: Finding): boolean => text.startsWith("A dump truck");
const overhead = (x: number, height?: number): Limit => ({
  ...{ id: "line", kind: "overhead-line", name: "Line", path: lineAt(x), voltage: 1000 },
  ...(height !== undefined && { height }),
});
const drive: Limit = { id: "drive", kind: "drive", name: "Drive", path: lineAt(10) };

/** A line right over the work whose owner is asked of a machine that comes higher than `raised`. */
const lineOver = (x: number, raised: number): Limit =>
  overhead(x, raised + publishedRule("line-ask").value);

/** What is said of a conduit wired so, with this ground over it all along. */
const wired =
  (wiring: "direct" | "pvc" | "gfci") =>
  (cover: number, rules: Rules): Said | null => {
    const pipe: Trench["pipes"][number] = {
      ...{ id: "pipe", name: "Conduit", service: "conduit", material: "PVC", wiring },
      ...{ inside: 0.03, outside: 0.04, grade: { by: "cover", depth: cover } },
    };
    const trench = plainTrench({ pipes: [pipe] });
    // Less is asked of pipes here, so that the electrical rule alone decides.
    return said("pipe.cover-too-small", { works: [trench], flow: { leastCover: 0.1 }, rules });
  };

export const LINE_RULES: readonly RuleCase[] = [
  {
    ...{ id: "hand-within", value: 24 * INCH, source: "state locate laws", local: 18 * INCH },
    ...{ speaks: "below", step: 0.001 },
    asks: (away, rules) => {
      const pipe = { id: "w", kind: "water-line", path: lineAt(1 + away) };
      return said("line.by-hand", { works: [holeOf(1)], limits: [pipe], rules });
    },
  },
  {
    ...{ id: "line-ask", value: 20 * FOOT, source: "29 CFR 1926.1408(a)(1)", local: 10 },
    ...{ speaks: "below", step: 0.001 },
    asks: (away, rules) =>
      said("line.overhead-ask", { limits: [drive, overhead(10 + away)], rules }, isTruck),
  },
  {
    // The higher a digger comes, the higher a line is asked for: below its height it speaks.
    ...{ id: "digger-raised", value: 23 * FOOT, source: PRACTICE, local: 9 },
    ...{ speaks: "below", step: 0.001 },
    asks: (raised, rules) => {
      const job = { works: [holeOf(1)], limits: [lineOver(0, raised)], rules };
      return said("line.overhead-ask", job, (one) => !isTruck(one));
    },
  },
  {
    ...{ id: "truck-raised", value: 20 * FOOT, source: PRACTICE, local: 8 },
    ...{ speaks: "below", step: 0.001 },
    asks: (raised, rules) =>
      said("line.overhead-ask", { limits: [drive, lineOver(10, raised)], rules }, isTruck),
  },
  {
    ...{ id: "stand-slope", value: 0.05, source: PRACTICE, local: 0.03 },
    ...{ speaks: "above", step: 0.0005 },
    asks: (slope, rules) => {
      const table = [{ radius: 30, load: 50_000 }];
      const stands = [{ id: "a", name: "Stand", at: [8, 0] as [number, number] }];
      const lift = { crane: { by: "table" as const, name: "Crane", table }, rigging: 0, stands };
      const height = (_: number, y: number): number => 100 + slope * y;
      return said("lift.slope", { works: [holeOf(1)], height, machines: { lift }, rules });
    },
  },
  {
    ...{ id: "riser-from", value: 12 * INCH, source: MARICOPA, local: 6 * INCH },
    ...{ speaks: "above", step: 0.006 },
    asks: (cover, rules) => {
      const tank = holeOf(1, { base: 100 - cover - 0.5 });
      return said("tank.riser", { works: [tank], rules });
    },
  },
  {
    ...{ id: "rock-bedding", value: 6 * INCH, source: MARICOPA, local: 4 * INCH },
    ...{ speaks: "below", step: 0.006 },
    asks: (depth, rules) => {
      const tank = holeOf(1, { bedding: { depth, material: "pea-gravel" } });
      return said("tank.rock-bedding", { works: [tank], ground: allOf("shelf-rock"), rules });
    },
  },
  {
    ...{ id: "wiring-direct", value: 24 * INCH, source: NEC, local: 30 * INCH },
    ...{ speaks: "below", step: 0.001, asks: wired("direct") },
  },
  {
    ...{ id: "wiring-pvc", value: 18 * INCH, source: NEC, local: 24 * INCH },
    ...{ speaks: "below", step: 0.001, asks: wired("pvc") },
  },
  {
    ...{ id: "wiring-gfci", value: 12 * INCH, source: NEC, local: 16 * INCH },
    ...{ speaks: "below", step: 0.001, asks: wired("gfci") },
  },
];
