import { plainNumber } from "../../units/index.js";
import type { Measure } from "../../units/index.js";

/** A plain number that is not below zero, shown without needless noughts. */
export const plain: Measure = {
  kind: "number",
  parse(text) {
    const typed = text.trim().replace(",", ".");
    const value = /^\d*\.?\d+$/.test(typed) ? Number(typed) : NaN;
    if (Number.isFinite(value)) return { ok: true, value };
    return { ok: false, text: `“${text.trim()}” was not understood: write a number such as 1.5.` };
  },
  print: (value) => plainNumber(value, 4).replace(/\.?0+$/, ""),
  unitLabel: () => "",
  toSystem: (value) => value,
  fromSystem: (value) => value,
};

/** A whole number, one or more. */
export const whole: Measure = {
  ...plain,
  kind: "count",
  parse(text) {
    const typed = text.trim();
    if (/^\d+$/.test(typed) && Number(typed) > 0) return { ok: true, value: Number(typed) };
    return { ok: false, text: `“${typed}” was not understood: write a whole number such as 4.` };
  },
  print: (value) => plainNumber(value, 0),
};

/** A whole number, none included. */
export const wholeOrNone: Measure = {
  ...whole,
  parse(text) {
    const typed = text.trim();
    if (/^\d+$/.test(typed)) return { ok: true, value: Number(typed) };
    return { ok: false, text: `“${typed}” was not understood: write a whole number such as 2.` };
  },
};
