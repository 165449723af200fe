/** The hire optimiser against trying everything, on seeded random needs and rates. */
import { describe, expect, it } from "vitest";
import { coverWith, hireStays, keptLonger } from "../../src/machines/index.js";
import type { HireNeed, HireRates, HireTerms, UseDay } from "../../src/machines/index.js";
import { seeded } from "../fixtures/seeded.js";
import type { Seeded } from "../fixtures/seeded.js";

const SEED = 20261125;

/** Written apart from the source: every mix, its overage at its own price per included hour. */
function cheapestByTryingAll({ days, hours }: HireNeed, rates: HireRates): number {
  if (days === 0 && hours === 0) return 0;
  const most = (span: number, meter: number) =>
    Math.max(Math.ceil(days / span), Math.ceil(hours / meter)) + 1;
  const upTo = (count: number) => Array.from({ length: count + 1 }, (_, n) => n);
  let best = Infinity;
  for (const [w, f] of upTo(most(7, 40)).flatMap((w) =>
    upTo(most(28, 160)).map((f) => [w, f] as const),
  )) {
    for (let d = 0; d <= most(1, 8); d++) {
      const included = 8 * d + 40 * w + 160 * f;
      if (d + 7 * w + 28 * f < days || included === 0) continue;
      const periods = d * rates.day + w * rates.week + f * rates.fourWeeks;
      best = Math.min(best, periods + (Math.max(0, hours - included) * periods) / included);
    }
  }
  return best;
}

/** Every way to split the days of use into stays, day by day. */
function stayPriceByTryingAll(uses: readonly UseDay[], terms: HireTerms): number {
  if (uses.length === 0) return 0;
  let best = Infinity;
  for (let mask = 0; mask < 2 ** (uses.length - 1); mask++) {
    let price = terms.firstDelivery;
    let first = 0;
    for (let i = 0; i < uses.length; i++) {
      const endsHere = i === uses.length - 1 || ((mask >> i) & 1) === 1;
      if (!endsHere) continue;
      const stay = uses.slice(first, i + 1);
      const days = uses[i]!.day - uses[first]!.day + 1;
      const hours = stay.reduce((sum, use) => sum + use.hours, 0);
      price += cheapestByTryingAll({ days, hours }, terms.rates);
      if (i < uses.length - 1) price += terms.delivery;
      first = i + 1;
    }
    best = Math.min(best, price);
  }
  return best;
}

/** Half of them rates as in the trade, half any at all. */
function randomRates(random: Seeded): HireRates {
  const day = random.whole(20, 800);
  if (random.next() < 0.5) {
    const week = day * random.between(2.5, 4.5);
    return { day, week, fourWeeks: week * random.between(2.5, 4.2) };
  }
  return { day, week: random.whole(0, 3000), fourWeeks: random.whole(0, 9000) };
}

describe(`the cheapest cover (seed ${SEED})`, () => {
  it("equals trying every mix, on 2,000 random needs and rates", () => {
    const random = seeded(SEED);
    for (let i = 0; i < 2000; i++) {
      const days = random.whole(0, 45);
      const hours = random.next() < 0.2 ? random.whole(0, 400) : random.between(0, 10) * days;
      const rates = randomRates(random);
      const got = coverWith({ days, hours }, rates);
      const best = cheapestByTryingAll({ days, hours }, rates);
      expect(Math.abs(got.price - best), `need ${i}`).toBeLessThanOrEqual(1e-9 * (1 + best));
      const { cover } = got;
      expect(cover.days + 7 * cover.weeks + 28 * cover.fourWeeks).toBeGreaterThanOrEqual(days);
      const periods =
        cover.days * rates.day + cover.weeks * rates.week + cover.fourWeeks * rates.fourWeeks;
      expect(Math.abs(periods + got.overage - got.price)).toBeLessThanOrEqual(1e-9 * (1 + best));
    }
  });

  it("never costs less to keep it longer", () => {
    const random = seeded(SEED + 1);
    for (let i = 0; i < 500; i++) {
      const need = { days: random.whole(1, 60), hours: random.between(0, 300) };
      const kept = coverWith(need, randomRates(random));
      const [one, two] = [keptLonger(kept, 1), keptLonger(kept, 2)];
      expect(one).toBeGreaterThanOrEqual(-1e-9);
      expect(two).toBeGreaterThanOrEqual(one - 1e-9);
    }
  });
});

describe(`keeping it or bringing it again (seed ${SEED + 2})`, () => {
  it("equals trying every split into stays, on 300 random jobs", { timeout: 30_000 }, () => {
    const random = seeded(SEED + 2);
    let split = 0;
    for (let i = 0; i < 300; i++) {
      const uses: UseDay[] = [];
      let day = random.whole(1, 5);
      for (let n = random.whole(0, 6); n > 0; n--) {
        uses.push({ day, hours: random.between(0.5, 10) });
        day += random.next() < 0.5 ? 1 : random.whole(2, 15);
      }
      const delivery = random.whole(0, 300);
      const firstDelivery = random.next() < 0.5 ? delivery : 0;
      const terms = { rates: randomRates(random), delivery, firstDelivery };
      const plan = hireStays(uses, terms);
      const best = stayPriceByTryingAll(uses, terms);
      expect(Math.abs(plan.price - best), `job ${i}`).toBeLessThanOrEqual(1e-9 * (1 + best));
      const onSite = plan.stays.reduce((sum, stay) => sum + stay.to - stay.from + 1, 0);
      expect(onSite - plan.idleDays).toBe(uses.length);
      if (plan.stays.length > 1) split++;
    }
    // Both answers must have come up, or the check says nothing.
    expect(split).toBeGreaterThan(30);
    expect(split).toBeLessThan(270);
  });
});
