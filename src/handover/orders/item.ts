import type { CostLine, Estimate } from "../../estimate/index.js";
import type { Scheme, Site } from "../../site/index.js";
import { length as lengthMeasure, plainNumber } from "../../units/index.js";
import type { OrderChoices } from "../choices.js";
import type { words } from "../../words/index.js";

/** Who sells it. */
export type SupplierKind = keyof typeof words.orders.kinds;

/** One thing to order. */
export interface OrderItem {
  kind: SupplierKind;
  name: string;
  /** How many of `unit`: whole ones where the yard sells whole ones. */
  count: number;
  unit: string;
  /** The same as the cost counts it, printed with its unit; empty where it is the count itself. */
  exact: string;
  /** What it is for. */
  where: readonly string[];
  notes: readonly string[];
  /** What is ordered, told in the message under its line: sizes and duty, without which the wrong one comes. */
  must?: readonly string[];
  /** Size and kind as a yard sells it. */
  grade?: string;
  /** What the schedule calls it where it is brought by the truck. */
  delivered?: string;
  /** Ids of the works that it goes into: the day is that of the task of those works that needs it. */
  works?: readonly string[];
  /** It has to stand before the first digging. */
  beforeDigging?: true;
  /** Loose volume and truckloads, or weight: what the count does not say of earth. */
  haul?: string;
  /** The cost line that prices it; null where the cost holds none. */
  line: CostLine | null;
  /** Part of the line's quantity and money that this is; absent: all of it. */
  share?: number;
}

/** What the lists are made from. */
export interface Ordering {
  site: Site;
  scheme: Scheme;
  estimate: Estimate;
  choices: OrderChoices;
}

/** A length without idle decimals: "20 ft", "12.5 ft", "3 m". */
export function shortLength(metres: number, { units }: Site): string {
  const value = lengthMeasure.toSystem(metres, units);
  return `${shortNumber(value)} ${lengthMeasure.unitLabel(units)}`;
}

/** To two decimals, without noughts at the end. */
export function shortNumber(value: number): string {
  return plainNumber(value, 2).replace(/\.?0+$/, "");
}

/** The names of works by id; an id that names none stands for itself. */
export function workNames({ estimate }: Ordering, ids: readonly string[]): string[] {
  return ids.map((id) => estimate.works.find((work) => work.id === id)?.name ?? id);
}

/** Rounded up to whole ones; a hair over a whole number is that number. */
export const wholeOnes = (value: number): number => Math.max(0, Math.ceil(value - 1e-9));
