/** How the corners of the two parts arise when a cell is cut in two. */

/** How a part's corners arise: corner `from`, mixed towards corner `to` by `share`. */
export interface Mix {
  count: number;
  from: Int32Array;
  to: Int32Array;
  share: Float64Array;
}

function emptyMix(room: number): Mix {
  return {
    count: 0,
    from: new Int32Array(room),
    to: new Int32Array(room),
    share: new Float64Array(room),
  };
}

/** A cut as it is planned; used again for every cut. */
export class Parting {
  underside = emptyMix(64);
  upperside = emptyMix(64);

  /**
   * Plans the cut of a convex outline along the line where `value` (linear, one number per corner)
   * is zero. What is within `rounding` of zero lies on the line and belongs to both parts.
   */
  plan(corners: number, value: Float64Array, rounding: number): void {
    // A corner and a crossing for each corner at the very most.
    if (2 * corners > this.underside.from.length) {
      this.underside = emptyMix(4 * corners);
      this.upperside = emptyMix(4 * corners);
    }
    const { underside, upperside } = this;
    underside.count = 0;
    upperside.count = 0;
    for (let i = 0; i < corners; i++) {
      const j = i + 1 === corners ? 0 : i + 1;
      const here = Math.abs(value[i]!) <= rounding ? 0 : value[i]!;
      const next = Math.abs(value[j]!) <= rounding ? 0 : value[j]!;
      if (here <= 0) addCorner(underside, i, i, 0);
      if (here >= 0) addCorner(upperside, i, i, 0);
      if (here * next < 0) {
        const share = here / (here - next);
        addCorner(underside, i, j, share);
        addCorner(upperside, i, j, share);
      }
    }
  }
}

function addCorner(mix: Mix, from: number, to: number, share: number): void {
  const k = mix.count++;
  mix.from[k] = from;
  mix.to[k] = to;
  mix.share[k] = share;
}

/** Works out a row of a part, into `into` from `target` on, from the whole's in `rows` at `source`. */
export function mixRow(
  rows: Float64Array,
  source: number,
  into: Float64Array,
  target: number,
  { count, from, to, share }: Mix,
): void {
  for (let k = 0; k < count; k++) {
    const start = rows[source + from[k]!]!;
    const by = share[k]!;
    into[target + k] = by === 0 ? start : start + by * (rows[source + to[k]!]! - start);
  }
}
