import { pipeSlope } from "../../units/index.js";
import type { Measure } from "../../units/index.js";
import { words } from "../../words/index.js";

/**
 * A share of one, read and shown in percent. A bare number is percent, but one under 1 is refused:
 * 0.1 may mean 0.1% or a tenth, a hundredfold apart.
 */
export const percent: Measure = {
  ...pipeSlope,
  kind: "share",
  parse(text, system) {
    const plain = text.trim();
    const bare = /^[\d.,]+$/.test(plain);
    const read = pipeSlope.parse(bare ? `${plain}%` : plain, system);
    const known = bare || /^[\d.,]+ ?(%|percent)$/i.test(plain);
    if (!read.ok || !known) {
      return { ok: false, text: words.deskFields.notAShare(plain) };
    }
    if (!bare || read.value === 0 || read.value >= 0.01) return read;
    return { ok: false, text: words.deskFields.shareOrPercent(plain) };
  },
  print: (value, system, options) =>
    pipeSlope.print(value, system, {
      digits: Math.abs(value * 100 - Math.round(value * 100)) < 1e-9 ? 0 : 1,
      ...options,
    }),
};
