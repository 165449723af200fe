/** Manning's formula, SI (factor 1), for round pipes running by gravity. */

/** A round pipe running full at the slope of its invert. */
export interface FullFlow {
  /** m³/s, m/s, m², m. */
  flow: number;
  velocity: number;
  area: number;
  hydraulicRadius: number;
}

/** A round pipe carrying a flow part full. */
export interface PartFlow {
  /** Depth of water over the invert, m, and as a share of the bore. */
  depth: number;
  depthRatio: number;
  /** m/s and m². */
  velocity: number;
  area: number;
  /** The flow is more than the pipe carries at this slope with a free surface. */
  over: boolean;
}

/**
 * Capacity running full: v = R^(2/3) √S / n. `inside` m, `fall` rise per run (not negative), `n`
 * Manning's roughness. Source: Manning, On the Flow of Water in Open Channels and Pipes, Trans.
 * Inst. Civil Engineers of Ireland 20 (1891).
 */
export function fullFlow(inside: number, fall: number, n: number): FullFlow {
  const area = (Math.PI / 4) * inside * inside;
  const hydraulicRadius = inside / 4;
  const velocity = (hydraulicRadius ** (2 / 3) * Math.sqrt(Math.max(0, fall))) / n;
  return { flow: velocity * area, velocity, area, hydraulicRadius };
}

/** Wetted angle at the pipe's centre, radians, at which a round pipe carries most: y/d = 0.938. */
const MOST = 5.278107;

/**
 * The depth at which a round pipe carries `flow`, m³/s, with a free surface: the lower of the two
 * where there are two, since a pipe carries most at 0.938 of its bore and less when full. `over`
 * when the flow is more than that most; the depth is then the bore.
 */
export function partFull(flow: number, inside: number, fall: number, n: number): PartFlow {
  const full = fullFlow(inside, fall, n);
  if (flow <= 0) return { depth: 0, depthRatio: 0, velocity: 0, area: 0, over: false };
  if (!(flow <= full.flow * carried(MOST))) {
    return {
      depth: inside,
      depthRatio: 1,
      velocity: flow / full.area,
      area: full.area,
      over: true,
    };
  }
  const angle = angleFor(flow / full.flow);
  const depthRatio = (1 - Math.cos(angle / 2)) / 2;
  const area = (full.area * (angle - Math.sin(angle))) / (2 * Math.PI);
  return { depth: depthRatio * inside, depthRatio, velocity: flow / area, area, over: false };
}

/** Flow at a wetted angle as a share of full flow: (θ − sin θ)^(5/3) / (2π θ^(2/3)). */
function carried(angle: number): number {
  return (angle - Math.sin(angle)) ** (5 / 3) / (2 * Math.PI * angle ** (2 / 3));
}

/** The wetted angle below `MOST` that carries this share of full flow; halving, to rounding. */
function angleFor(share: number): number {
  let low = 0;
  let high = MOST;
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (carried(middle) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
