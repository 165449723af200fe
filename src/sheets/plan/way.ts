/** A line on paper as a way along it. mm. */
import type { Spot } from "../paper.js";

/** A spot on a way, and the unit direction in which the way goes there. */
export interface OnWay {
  at: Spot;
  along: Spot;
}

export class Way {
  readonly length: number;
  private readonly stations: number[] = [0];

  constructor(private readonly line: readonly Spot[]) {
    let length = 0;
    for (let i = 1; i < line.length; i++) {
      const [a, b] = [line[i - 1]!, line[i]!];
      length += Math.hypot(b[0] - a[0], b[1] - a[1]);
      this.stations.push(length);
    }
    this.length = length;
  }

  /** The spot at a station, held to the way's ends. The way must have two spots apart. */
  at(station: number): OnWay {
    const { line, stations } = this;
    let [low, high] = [0, line.length - 1];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (stations[middle]! <= station) low = middle;
      else high = middle;
    }
    const [a, b] = [line[low]!, line[high]!];
    const span = stations[high]! - stations[low]!;
    if (span === 0) return { at: a, along: [1, 0] };
    const t = Math.min(1, Math.max(0, (station - stations[low]!) / span));
    const along: Spot = [(b[0] - a[0]) / span, (b[1] - a[1]) / span];
    return { at: [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])], along };
  }

  /** The stretch between two stations. */
  between(from: number, to: number): Spot[] {
    const inner = this.line.filter((_, i) => this.stations[i]! > from && this.stations[i]! < to);
    return [this.at(from).at, ...inner, this.at(to).at];
  }

  /** Stations `every` mm apart, half of it from the start; the middle alone of a way shorter than that. */
  stationsEvery(every: number): number[] {
    const count = Math.max(1, Math.floor(this.length / every));
    const pitch = this.length / count;
    return Array.from({ length: count }, (_, i) => (i + 0.5) * pitch);
  }
}

/** Degrees from level past which text along a line is turned to be read from the right. */
const STEEP = 75;

/** Degrees clockwise on paper of a direction, turned so that text along it reads from below or the right. */
export function readingTurn([dx, dy]: Spot): number {
  const turn = (Math.atan2(dy, dx) * 180) / Math.PI;
  if (turn > STEEP) return turn - 180;
  return turn <= STEEP - 180 ? turn + 180 : turn;
}
