import { plainNumber, plainText, readNumber } from "../../units/index.js";
import type { Measure, UnitSystem } from "../../units/index.js";
import { words } from "../../words/index.js";

/** A plain number that is not below zero, shown without needless noughts. */
export const plain: Measure = {
  kind: "number",
  parse(text, system) {
    const read = readNumber(plainText(text), system);
    if (read?.rest === "") return { ok: true, value: read.value };
    return { ok: false, text: words.deskFields.notANumber(text.trim()) };
  },
  print: (value) => plainNumber(value, 4).replace(/\.?0+$/, ""),
  unitLabel: () => "",
  toSystem: (value) => value,
  fromSystem: (value) => value,
};

/** Volts; "7.2 kV" is read as 7,200. */
export const volts: Measure = {
  ...plain,
  parse(text, system) {
    const read = readNumber(plainText(text), system);
    const unit = read?.rest.trim().toLowerCase();
    if (read !== undefined && unit === "kv") return { ok: true, value: read.value * 1000 };
    if (read !== undefined && (unit === "" || unit === "v")) return { ok: true, value: read.value };
    return { ok: false, text: words.deskFields.notVolts(text.trim()) };
  },
};

function wholeNumber(text: string, system: UnitSystem): number | undefined {
  const read = readNumber(plainText(text), system);
  return read?.rest === "" && read.whole ? read.value : undefined;
}

/** A whole number, one or more. */
export const whole: Measure = {
  ...plain,
  kind: "count",
  parse(text, system) {
    const typed = text.trim();
    const read = wholeNumber(typed, system);
    if (read !== undefined && read > 0) return { ok: true, value: read };
    return { ok: false, text: words.deskFields.notAWholeNumber(typed) };
  },
  print: (value) => plainNumber(value, 0),
};

/** A whole number, none included. */
export const wholeOrNone: Measure = {
  ...whole,
  parse(text, system) {
    const typed = text.trim();
    const read = wholeNumber(typed, system);
    if (read !== undefined) return { ok: true, value: read };
    return { ok: false, text: words.deskFields.notACount(typed) };
  },
};
