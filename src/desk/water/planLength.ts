/** m in plan along a line. */
export function planLength(line: readonly (readonly [number, number, ...unknown[]])[]): number {
  return line.reduce((sum, a, i) => {
    const b = line[i + 1];
    return b === undefined ? sum : sum + Math.hypot(a[0] - b[0], a[1] - b[1]);
  }, 0);
}
