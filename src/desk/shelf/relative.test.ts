import { expect, it } from "vitest";
import { agoInWords, printBytes } from "./relative.js";

const NOW = 1_800_000_000_000;
const [MINUTE, HOUR, DAY] = [60_000, 3_600_000, 86_400_000];

it.each([
  [0, "just now"],
  [59_000, "just now"],
  [MINUTE, "1 minute ago"],
  [59 * MINUTE, "59 minutes ago"],
  [HOUR * 2.9, "2 hours ago"],
  [DAY, "yesterday"],
  [6 * DAY, "6 days ago"],
  [8 * DAY, "last week"],
  [400 * DAY, "last year"],
  [-5 * DAY, "just now"],
])("says how long ago %d ms is", (ms, said) => {
  expect(agoInWords(NOW - ms, NOW)).toBe(said);
});

it.each([
  [400, "1 kB"],
  [64_200, "65 kB"],
  [1_500_000, "1.5 MB"],
  [42_000_000, "42 MB"],
  [5_400_000_000, "5.4 GB"],
])("prints %d bytes", (bytes, printed) => {
  expect(printBytes(bytes)).toBe(printed);
});
