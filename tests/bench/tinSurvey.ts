/** A seeded survey of random points with short breaklines, for measuring. */
import type { Site } from "../../src/site/index.js";

/** A small seeded generator (mulberry32), 0 up to 1. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/**
 * So many random points on 100 × 100 m of rolling ground, in no order, and so many breaklines, each
 * a chain of five of the points that lie next to each other.
 */
export function randomSurvey(points: number, breaklines: number): Site["survey"] {
  const random = seeded(20261125);
  const rows = [];
  for (let i = 0; i < points; i++) {
    const [x, y] = [100 * random() - 50, 100 * random() - 50];
    rows.push({ id: `p${i}`, x, y, z: 100 + 3 * Math.sin(x / 15) + 2 * Math.cos(y / 11) });
  }
  const columns = Math.max(1, Math.floor(Math.sqrt(points / 4)));
  const cellOf = (value: number): number => Math.floor(((value + 50) / 100) * columns);
  const firstIn = new Map<number, string>();
  for (const { id, x, y } of rows) {
    const cell = cellOf(y) * columns + cellOf(x);
    if (!firstIn.has(cell)) firstIn.set(cell, id);
  }
  const chains = Array.from({ length: breaklines }, () => {
    const start = Math.floor(random() * columns) * columns + Math.floor(random() * columns);
    const step = random() < 0.5 ? 1 : columns;
    const cells = [0, 1, 2, 3, 4].map((i) => firstIn.get(start + i * step));
    return cells.filter((id) => id !== undefined);
  });
  return { points: rows, breaklines: chains };
}
