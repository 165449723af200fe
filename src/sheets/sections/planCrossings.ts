type Place = readonly [number, number];

/** Stations, m along `line`, at which another line crosses it in plan; each place once, in order. */
export function crossingsInPlan(line: readonly Place[], other: readonly Place[]): number[] {
  const found: number[] = [];
  let station = 0;
  line.slice(1).forEach((to, i) => {
    const from = line[i]!;
    const leg = [to[0] - from[0], to[1] - from[1]] as const;
    other.slice(1).forEach((end, j) => {
      const start = other[j]!;
      const cross = [end[0] - start[0], end[1] - start[1]] as const;
      const turn = leg[0] * cross[1] - leg[1] * cross[0];
      if (Math.abs(turn) < 1e-12) return;
      const [dx, dy] = [start[0] - from[0], start[1] - from[1]];
      const along = (dx * cross[1] - dy * cross[0]) / turn;
      const across = (dx * leg[1] - dy * leg[0]) / turn;
      if (along < 0 || along > 1 || across < 0 || across > 1) return;
      found.push(station + along * Math.hypot(...leg));
    });
    station += Math.hypot(...leg);
  });
  return found.sort((a, b) => a - b).filter((at, i, all) => i === 0 || at - all[i - 1]! > 1e-6);
}
