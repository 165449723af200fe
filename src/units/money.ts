import { notRead } from "./amount.js";
import { plainNumber } from "./measure.js";
import type { Measure } from "./measure.js";
import { plainText, readNumber } from "./reading.js";

/**
 * The measure of money in one currency, ISO 4217 code of three capitals; the value is plain units
 * of that currency. Prints by `Intl.NumberFormat("en-US")`: `$1,235` (no decimals unless `digits`).
 * Reads `1,235`, `$1,235.50`, `-$20`, `USD 20`, `20 USD`. Throws when the code is malformed.
 */
export function money(currency: string): Measure {
  const signs = currencySigns(currency);
  const example = `1,250, ${printMoney(currency, 1250.5, 2)} or 1,250 ${currency}`;
  return {
    kind: "amount of money",
    parse(text, system) {
      const plain = plainText(text);
      const bare = signs.reduce((left, sign) => withoutSign(left, sign), plain);
      const negative = bare.startsWith("-");
      const number = readNumber(bare.replace(/^[+-] ?/, ""), system);
      if (number === undefined || number.rest !== "") return notRead(text, "price", example);
      return { ok: true, value: negative && number.value !== 0 ? -number.value : number.value };
    },
    print(value, _system, options = {}) {
      const digits = options.digits ?? 0;
      return options.bare === true
        ? plainNumber(value, digits)
        : printMoney(currency, value, digits);
    },
    unitLabel: () => currency,
    toSystem: (value) => value,
    fromSystem: (value) => value,
  };
}

function printMoney(currency: string, value: number, digits: number): string {
  if (!Number.isFinite(value)) throw new Error(`cannot print ${value}: expected a finite amount`);
  const shown = moneyFormat(currency, digits).format(value);
  return /[1-9]/.test(shown) ? shown : shown.replace("-", "");
}

const formats = new Map<string, Intl.NumberFormat>();

function moneyFormat(currency: string, digits: number): Intl.NumberFormat {
  const key = `${currency} ${digits}`;
  const kept = formats.get(key);
  if (kept !== undefined) return kept;
  const made = new Intl.NumberFormat("en-US", {
    style: "currency",
    currency,
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  });
  formats.set(key, made);
  return made;
}

/** The ways this currency may be marked: its code, and its signs wide and narrow. */
function currencySigns(currency: string): string[] {
  const displays = ["symbol", "narrowSymbol"] as const;
  const symbols = displays.map((currencyDisplay) => {
    const format = new Intl.NumberFormat("en-US", { style: "currency", currency, currencyDisplay });
    return format.formatToParts(1).find((part) => part.type === "currency")?.value ?? currency;
  });
  return [...new Set([currency, ...symbols].map((sign) => sign.toLowerCase()))];
}

/** Takes one mark from the front (after a sign) or the end. */
function withoutSign(text: string, sign: string): string {
  const minus = /^- ?/.exec(text)?.[0] ?? "";
  const body = text.slice(minus.length);
  if (body.startsWith(sign)) return `${minus.trim()}${body.slice(sign.length).trim()}`;
  if (body.endsWith(sign)) return `${minus.trim()}${body.slice(0, -sign.length).trim()}`;
  return text;
}
