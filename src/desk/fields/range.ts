import type { Measure, PrintOptions, UnitSystem } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { Reading } from "./typing.js";

/** Limits of a field, SI. */
export interface Limits {
  least?: number | undefined;
  /** Makes `least` exclusive. */
  above?: boolean | undefined;
  most?: number | undefined;
}

interface Typed {
  text: string;
  value: number;
  measure: Measure;
  system: UnitSystem;
  print?: PrintOptions | undefined;
}

const within = (value: number, { least, above, most }: Limits): boolean =>
  (most === undefined || value <= most) &&
  (least === undefined || (above === true ? value > least : value >= least));

/**
 * What may have been meant by a value out of range, as text to type: the same digits as the other
 * units' number, or with a decimal point before the last. Only what the limits allow is offered, and
 * nothing when a unit was written, or when both would do.
 */
function meant({ text, value, measure, system, print }: Typed, limits: Limits): string | undefined {
  if (!/^\s*[\d.,\s]+\s*$/.test(text)) return undefined;
  const other = system === "us" ? "metric" : "us";
  const bare = measure.toSystem(value, system);
  const readings = [measure.fromSystem(bare, other)];
  if (!/[.,]/.test(text)) readings.push(value / 10);
  const fit = readings.filter((one) => one !== value && within(one, limits));
  const [only] = fit;
  return only === undefined || fit.length > 1 ? undefined : measure.print(only, system, print);
}

/** Takes a value within the limits, else says what they are, what came, and what may be meant. */
export function inRange(typed: Typed, limits: Limits): Reading<number> {
  const { value, measure, system, print } = typed;
  if (within(value, limits)) return { ok: true, value };
  const show = (one: number): string => measure.print(one, system, print);
  const { least, above, most } = limits;
  const got = show(value);
  const range =
    most === undefined
      ? above === true
        ? words.forms.moreThan(show(least ?? 0), got)
        : words.forms.atLeast(show(least ?? 0), got)
      : least === undefined
        ? words.forms.atMost(show(most), got)
        : words.forms.between(show(least), show(most), got);
  const offer = meant(typed, limits);
  return offer === undefined ? { ok: false, text: range } : { ok: false, text: range, offer };
}
