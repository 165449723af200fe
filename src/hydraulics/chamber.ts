/** The inside of a chamber: its plan, or volumes by depth from its maker. Sizes in m, m³. */
export type ChamberShape =
  | { by: "box"; length: number; width: number }
  | { by: "round"; diameter: number }
  /** A cylinder on its side. */
  | { by: "lying"; diameter: number; length: number }
  /** Volume below each depth, deepest last; straight between rows. */
  | { by: "table"; rows: readonly { depth: number; volume: number }[] };

/** Volume of water below a depth over the floor, m³; nothing below the floor. */
export function volumeBelow(shape: ChamberShape, depth: number): number {
  if (!(depth > 0)) return 0;
  switch (shape.by) {
    case "box":
      return shape.length * shape.width * depth;
    case "round":
      return (Math.PI / 4) * shape.diameter ** 2 * depth;
    case "lying": {
      const radius = shape.diameter / 2;
      const angle = 2 * Math.acos(Math.max(-1, 1 - depth / radius));
      return (shape.length * radius * radius * (angle - Math.sin(angle))) / 2;
    }
    case "table":
      return tableVolume(shape.rows, depth);
  }
}

function tableVolume(rows: readonly { depth: number; volume: number }[], depth: number): number {
  let [below, volume] = [0, 0];
  for (const row of rows) {
    if (depth <= row.depth) {
      const gap = row.depth - below;
      return gap > 0 ? volume + ((row.volume - volume) * (depth - below)) / gap : row.volume;
    }
    [below, volume] = [row.depth, row.volume];
  }
  return volume;
}

/**
 * The depth, m, at which a chamber holds a volume, m³; null when it never holds so much within
 * `height`. By halving, which serves every shape alike.
 */
export function depthOf(shape: ChamberShape, volume: number, height: number): number | null {
  if (!(volume > 0)) return 0;
  if (volume > volumeBelow(shape, height) * (1 + 1e-12)) return null;
  let [low, high] = [0, height];
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (volumeBelow(shape, middle) < volume) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
