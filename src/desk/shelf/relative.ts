import { words } from "../../words/index.js";

const STEPS: readonly [Intl.RelativeTimeFormatUnit, number][] = [
  ["year", 365 * 86_400],
  ["month", 30 * 86_400],
  ["week", 7 * 86_400],
  ["day", 86_400],
  ["hour", 3600],
  ["minute", 60],
];

const format = new Intl.RelativeTimeFormat("en", { numeric: "auto" });

/** How long ago a moment was, in words; both ms since 1970. A clock set back counts as just now. */
export function agoInWords(then: number, now: number): string {
  const seconds = (now - then) / 1000;
  for (const [unit, size] of STEPS) {
    if (seconds >= size) return format.format(-Math.floor(seconds / size), unit);
  }
  return words.shelf.justNow;
}

/** Bytes as people read them: "640 kB", "12 MB", "3.1 GB". */
export function printBytes(bytes: number): string {
  const steps = ["kB", "MB", "GB", "TB"];
  let value = bytes / 1000;
  let step = 0;
  while (value >= 1000 && step < steps.length - 1) {
    value /= 1000;
    step++;
  }
  return `${value < 10 && step > 0 ? value.toFixed(1) : Math.ceil(value)} ${steps[step] ?? ""}`;
}
