/** About `wanted` round numbers from `low` to `high`, ends included where they are round. */
export function roundTicks(low: number, high: number, wanted: number): number[] {
  const span = high - low;
  if (!(span > 0)) return [low];
  const rough = span / wanted;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((one) => one * power).find((one) => one >= rough) ?? rough;
  const ticks: number[] = [];
  for (let k = Math.ceil(low / step - 1e-9) + 0; k * step <= high + 1e-9 * step; k += 1) {
    ticks.push(k * step);
  }
  return ticks;
}

/** Heights moved apart so that no two are nearer than `gap`, in order and as near as may be. */
export function spread(heights: readonly number[], gap: number): number[] {
  const order = heights.map((_, i) => i).sort((a, b) => heights[a]! - heights[b]!);
  const placed = heights.slice();
  for (let round = 0; round < 40; round += 1) {
    for (let i = 1; i < order.length; i += 1) {
      const [above, below] = [order[i - 1]!, order[i]!];
      const short = gap - (placed[below]! - placed[above]!);
      if (short <= 0) continue;
      placed[above]! -= short / 2;
      placed[below]! += short / 2;
    }
  }
  return placed;
}
