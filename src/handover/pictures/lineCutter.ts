/** Lines of a view, parted into what is seen and what is covered. */
import { frameSides, type Fit } from "./fit.js";
import type { Lens, Shown } from "./lens.js";
import type { Stroke } from "./shapes.js";
import { seenOf, type FacetMap, type Spot } from "./visible.js";

/** m that a face must be nearer than a line to hide it: many lines lie on faces. */
const SLACK = 0.03;

export class LineCutter {
  constructor(
    private readonly map: FacetMap,
    private readonly lens: Lens,
    private readonly fit: Fit,
  ) {}

  seen(strokes: readonly Stroke[]): (readonly [Spot, Spot])[] {
    return this.parts(strokes, seenOf);
  }

  hidden(strokes: readonly Stroke[]): (readonly [Spot, Spot])[] {
    return this.parts(strokes, (stretches) => stretches);
  }

  private parts(
    strokes: readonly Stroke[],
    pick: (
      hidden: readonly (readonly [number, number])[],
    ) => readonly (readonly [number, number])[],
  ): (readonly [Spot, Spot])[] {
    return strokes.flatMap((stroke) => {
      const line = this.framed(stroke);
      if (line === null) return [];
      const [from, to] = line;
      const nearness = (from.near + to.near) / 2;
      const hidden = this.map.hiddenOf({
        from,
        to,
        slack: SLACK * this.lens.perMetre(nearness),
      });
      const at = (share: number): Spot => [
        from.x + (to.x - from.x) * share,
        from.y + (to.y - from.y) * share,
      ];
      return pick(hidden).map(([low, high]) => [at(low), at(high)] as const);
    });
  }

  /** What of a line lies before the eye and in the picture; null for none. */
  private framed(stroke: Stroke): readonly [Shown, Shown] | null {
    const before = this.lens.inFront(stroke);
    if (before.length < 2) return null;
    const from = this.fit.at(this.lens.show(before[0]!));
    const to = this.fit.at(this.lens.show(before[1]!));
    let [low, high] = [0, 1];
    for (const [a, b, c] of frameSides(this.fit)) {
      const [p, q] = [a * from.x + b * from.y + c, a * to.x + b * to.y + c];
      if (p < 0 && q < 0) return null;
      if (p < 0) low = Math.max(low, p / (p - q));
      else if (q < 0) high = Math.min(high, p / (p - q));
    }
    if (low >= high) return null;
    const at = (share: number): Shown => ({
      x: from.x + (to.x - from.x) * share,
      y: from.y + (to.y - from.y) * share,
      near: from.near + (to.near - from.near) * share,
    });
    return [at(low), at(high)];
  }
}
