/** An upright drawing on paper: stations to the right, heights up. */
import type { Spot } from "../paper.js";

/** Stations and heights in m, paper in mm. */
export interface View {
  /** mm of the station `from`, and of the elevation `high`. */
  left: number;
  top: number;
  from: number;
  to: number;
  high: number;
  low: number;
  /** n of 1 : n along, and up. */
  along: number;
  up: number;
}

type Place = readonly [station: number, height: number];

export const xOf = ({ left, from, along }: View, station: number): number =>
  left + ((station - from) * 1000) / along;

export const yOf = ({ top, high, up }: View, height: number): number =>
  top + ((high - height) * 1000) / up;

export const spotOf = (view: View, [station, height]: Place): Spot => [
  xOf(view, station),
  yOf(view, height),
];

export const lineOf = (view: View, places: readonly Place[]): Spot[] =>
  places.map((place) => spotOf(view, place));

/** What the view takes of the paper: left, top, width, height in mm. */
export function boxOf(view: View): readonly [number, number, number, number] {
  const { left, top, from, to, high, low, along, up } = view;
  return [left, top, ((to - from) * 1000) / along, ((high - low) * 1000) / up];
}
