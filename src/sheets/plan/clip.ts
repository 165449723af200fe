/** What of lines and areas lies in a box of the paper. All in mm. */
import type { Room, Spot } from "../paper.js";

/** Whether a spot lies in a room, `inside` mm from its edge. */
export function inRoom({ left, top, width, height }: Room, [x, y]: Spot, inside = 0): boolean {
  return (
    x >= left + inside &&
    x <= left + width - inside &&
    y >= top + inside &&
    y <= top + height - inside
  );
}

/** The pieces of a line within a room, in its order. */
export function clipLine(line: readonly Spot[], room: Room): Spot[][] {
  const pieces: Spot[][] = [];
  let piece: Spot[] = [];
  for (let i = 1; i < line.length; i++) {
    const kept = clipLeg(line[i - 1]!, line[i]!, room);
    const joined = kept !== null && kept.from === 0;
    if (!joined && piece.length > 1) pieces.push(piece);
    if (!joined) piece = [];
    if (kept === null) continue;
    if (piece.length === 0) piece.push(kept.a);
    piece.push(kept.b);
    if (kept.to < 1) {
      pieces.push(piece);
      piece = [];
    }
  }
  if (piece.length > 1) pieces.push(piece);
  return pieces;
}

/** The part of one leg within a room, after Liang and Barsky (1984); null where none is. */
function clipLeg(
  a: Spot,
  b: Spot,
  { left, top, width, height }: Room,
): { a: Spot; b: Spot; from: number; to: number } | null {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  let [from, to] = [0, 1];
  const sides = [
    [-dx, a[0] - left],
    [dx, left + width - a[0]],
    [-dy, a[1] - top],
    [dy, top + height - a[1]],
  ] as const;
  for (const [p, q] of sides) {
    if (p === 0 && q < 0) return null;
    if (p === 0) continue;
    const t = q / p;
    if (p < 0) from = Math.max(from, t);
    else to = Math.min(to, t);
  }
  if (from > to) return null;
  const at = (t: number): Spot => (t === 0 ? a : t === 1 ? b : [a[0] + t * dx, a[1] + t * dy]);
  return { a: at(from), b: at(to), from, to };
}

/** The part of a ring within a room, after Sutherland and Hodgman (1974); empty where none is. */
export function clipRing(ring: readonly Spot[], { left, top, width, height }: Room): Spot[] {
  const keepLeft = (axis: 0 | 1, limit: number, sign: 1 | -1) => (spots: readonly Spot[]) =>
    clipSide(spots, (spot) => sign * (spot[axis] - limit));
  return [
    keepLeft(0, left, 1),
    keepLeft(0, left + width, -1),
    keepLeft(1, top, 1),
    keepLeft(1, top + height, -1),
  ].reduce<Spot[]>((spots, clip) => clip(spots), [...ring]);
}

/** The part of a ring on the side where `over` is not below zero. */
function clipSide(ring: readonly Spot[], over: (spot: Spot) => number): Spot[] {
  return ring.flatMap((b, i) => {
    const a = ring[(i + ring.length - 1) % ring.length]!;
    const [oa, ob] = [over(a), over(b)];
    const t = oa / (oa - ob);
    const crossing: Spot = [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
    if (ob >= 0) return oa >= 0 ? [b] : [crossing, b];
    return oa >= 0 ? [crossing] : [];
  });
}

/** A ring as a line that comes back to its first spot. */
export function ringLine(ring: readonly Spot[]): Spot[] {
  return ring.length === 0 ? [] : [...ring, ring[0]!];
}
