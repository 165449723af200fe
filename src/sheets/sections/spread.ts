/** Things in a row kept from one another. */

export interface Wish {
  /** Where its middle would like to be, mm. */
  at: number;
  /** How much of the row it takes, mm. */
  size: number;
}

/**
 * Middles of things in a row, in their order, as near to where they would like to be as may be, `gap`
 * mm between them and within `low` and `high`. More than fit go on beyond `high`.
 */
export function spreadInRow(
  wishes: readonly Wish[],
  gap: number,
  low: number,
  high: number,
): number[] {
  const wanted = wishes.map(({ at, size }) =>
    Math.max(low + size / 2, Math.min(high - size / 2, at)),
  );
  // Blocks of things that push one another: each stands where its members would on the mean.
  const blocks: { members: number[]; start: number; size: number }[] = [];
  wishes.forEach(({ size }, i) => {
    let block = { members: [i], start: wanted[i]! - size / 2, size };
    for (let last = blocks.at(-1); last !== undefined; last = blocks.at(-1)) {
      if (last.start + last.size + gap <= block.start + 1e-9) break;
      blocks.pop();
      block = joined(last, block, wishes, wanted, gap, low, high);
    }
    blocks.push(block);
  });
  const middles: number[] = [];
  for (const { members, start } of blocks) {
    let at = start;
    for (const i of members) {
      middles[i] = at + wishes[i]!.size / 2;
      at += wishes[i]!.size + gap;
    }
  }
  return middles;
}

type Block = { members: number[]; start: number; size: number };

function joined(
  a: Block,
  b: Block,
  wishes: readonly Wish[],
  wanted: readonly number[],
  gap: number,
  low: number,
  high: number,
): Block {
  const members = [...a.members, ...b.members];
  const size = a.size + gap + b.size;
  let into = 0;
  let sum = 0;
  for (const i of members) {
    sum += wanted[i]! - wishes[i]!.size / 2 - into;
    into += wishes[i]!.size + gap;
  }
  const start = Math.max(low, Math.min(high - size, sum / members.length));
  return { members, start, size };
}
