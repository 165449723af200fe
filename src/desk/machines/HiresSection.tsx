import type { ReactNode } from "react";
import { keptLonger, type Estimate } from "../../estimate/index.js";
import { money, plainNumber } from "../../units/index.js";
import { words } from "../../words/index.js";
import { useSite } from "../useSite.js";
import { Working } from "../Working.js";
import { coverWords } from "./coverWords.js";

type Hire = Estimate["machines"]["job"]["hires"][number];

/** Everything that is hired: its days on site, the cheapest periods, and what a week more would cost. */
export function HiresSection({ hires }: { hires: readonly Hire[] }): ReactNode {
  if (hires.length === 0) return null;
  return (
    <section aria-label={words.machinesLeaf.hire}>
      <h2>
        {words.machinesLeaf.hire} <span className="aside">{words.machinesLeaf.overDaysAbove}</span>
      </h2>
      {hires.map((hire) => (
        <OneHire key={hire.id} hire={hire} />
      ))}
      <p className="soft">{words.machinesLeaf.cheapestMixDays8}</p>
    </section>
  );
}

function OneHire({ hire }: { hire: Hire }): ReactNode {
  const { units, currency } = useSite().site;
  const print = (value: number): string => money(currency).print(value, units);
  const { low, likely, high } = hire.plans;
  const last = likely.stays.at(-1);
  // What is hired within a line of the cost has that line's price, not one by these rates.
  const isOwn = hire.within === undefined;
  const said = likely.stays.map(({ cover }) => coverWords(cover)).join(", then ");
  const range =
    hire.price.low === hire.price.high
      ? print(hire.price.low)
      : `${print(hire.price.low)}–${print(hire.price.high)}`;
  return (
    <div data-hire={hire.id} data-cover={said} data-price={hire.price.likely}>
      <Working
        text={`${hire.name}: ${said}`}
        amount={isOwn ? print(hire.price.likely) : words.machinesLeaf.inAnotherLine}
      >
        <table className="table">
          <tbody>
            {likely.stays.map((stay) => (
              <tr key={stay.from}>
                <th scope="row">
                  {words.machinesLeaf.hWorked(
                    stay.from === stay.to
                      ? words.machinesLeaf.day(stay.from)
                      : words.machinesLeaf.dayTo(stay.from, stay.to),
                    plainNumber(stay.need.hours, 1),
                  )}
                  {stay.idleDays > 0 &&
                    words.machinesLeaf.idle(
                      words.counts.days(stay.idleDays, plainNumber(stay.idleDays, 0)),
                    )}
                  {stay.overageHours > 0 &&
                    words.machinesLeaf.hBeyondHire(
                      plainNumber(stay.overageHours, 1),
                      print(stay.overage),
                    )}
                </th>
                <td>{isOwn && print(stay.price)}</td>
              </tr>
            ))}
            {isOwn && (
              <tr>
                <th scope="row">{words.machinesLeaf.bringTakeAway}</th>
                <td>{print(likely.delivery)}</td>
              </tr>
            )}
          </tbody>
        </table>
        {isOwn && (
          <p>{words.machinesLeaf.quickJobSlowIf(range, planWords(low), planWords(high))}</p>
        )}
        {isOwn && likely.savedByReturning > 0 && (
          <p>{words.machinesLeaf.returningBetweenSavesAgainst(print(likely.savedByReturning))}</p>
        )}
        {isOwn && last !== undefined && (
          <p>
            {words.machinesLeaf.keptWeekLongerNot(
              more(keptLonger(last, 1), print),
              more(keptLonger(last, 2), print),
            )}
          </p>
        )}
        {!isOwn && <p className="soft">{words.machinesLeaf.priceStandsWithinAnother}</p>}
        <p className="soft">{words.machinesLeaf.rates(hire.source)}</p>
      </Working>
    </div>
  );
}

const more = (price: number, print: (value: number) => string): string =>
  price > 0 ? words.machinesLeaf.more(print(price)) : words.machinesLeaf.nothingMore;

const planWords = ({ stays }: Hire["plans"]["likely"]): string =>
  stays.map(({ cover }) => coverWords(cover)).join(", then ");
