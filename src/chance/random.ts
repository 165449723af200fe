/** Seeded random figures: the same seed gives the same run, wherever and in whatever order it is made. */

/** Draws figures evenly between 0 and 1 (never exactly either), and from the normal distribution. */
export interface Random {
  uniform: () => number;
  normal: () => number;
}

/**
 * The random figures of one run of a simulation. Generator: sfc32 (C. Doty-Humphrey, PractRand),
 * seeded by splitmix32 of the seed and the run's number. Normal figures by Box and Muller (1958).
 */
export function randomOf(seed: number, run: number): Random {
  const spread = splitmix32(splitmix32(seed >>> 0)() ^ Math.imul(run + 1, 0x9e3779b1));
  let [a, b, c, counter] = [spread(), spread(), spread(), 1];
  const next = (): number => {
    const sum = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = ((c << 21) | (c >>> 11)) + sum;
    return sum >>> 0;
  };
  for (let i = 0; i < 12; i++) next();
  const uniform = (): number => (next() + 0.5) / 2 ** 32;
  let spare: number | null = null;
  const normal = (): number => {
    if (spare !== null) {
      const kept = spare;
      spare = null;
      return kept;
    }
    const radius = Math.sqrt(-2 * Math.log(uniform()));
    const turn = 2 * Math.PI * uniform();
    spare = radius * Math.sin(turn);
    return radius * Math.cos(turn);
  };
  return { uniform, normal };
}

function splitmix32(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x9e3779b9) | 0;
    let mixed = state ^ (state >>> 16);
    mixed = Math.imul(mixed, 0x21f0aaad);
    mixed ^= mixed >>> 15;
    mixed = Math.imul(mixed, 0x735a2d97);
    return (mixed ^ (mixed >>> 15)) | 0;
  };
}

/**
 * The value below which a share (0 to 1) of a triangular distribution lies: its density rises from
 * nothing at `low` to a peak at `likely` and falls to nothing at `high`. low ≤ likely ≤ high.
 */
export function triangular(
  share: number,
  { low, likely, high }: { low: number; likely: number; high: number },
): number {
  const width = high - low;
  if (!(width > 0)) return likely;
  const peak = (likely - low) / width;
  return share < peak
    ? low + Math.sqrt(share * width * (likely - low))
    : high - Math.sqrt((1 - share) * width * (high - likely));
}
