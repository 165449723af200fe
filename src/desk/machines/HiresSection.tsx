import type { ReactNode } from "react";
import { keptLonger, type Estimate } from "../../estimate/index.js";
import { money, plainNumber } from "../../units/index.js";
import { useSite } from "../useSite.js";
import { Working } from "../Working.js";
import { coverWords, several } from "./coverWords.js";

type Hire = Estimate["machines"]["job"]["hires"][number];

/** Everything that is hired: its days on site, the cheapest periods, and what a week more would cost. */
export function HiresSection({ hires }: { hires: readonly Hire[] }): ReactNode {
  if (hires.length === 0) return null;
  return (
    <section aria-label="Hire">
      <h2>
        Hire <span className="aside">over the days above</span>
      </h2>
      {hires.map((hire) => (
        <OneHire key={hire.id} hire={hire} />
      ))}
      <p className="soft">
        The cheapest mix of days (8 h), weeks (40 h) and four weeks (160 h on the meter) that
        reaches from the first use to the last, idle days included; hours beyond pro rata (published
        rental terms). Taken back and brought again where that costs less. Yours may differ: ask the
        yard.
      </p>
    </section>
  );
}

function OneHire({ hire }: { hire: Hire }): ReactNode {
  const { units, currency } = useSite().site;
  const print = (value: number): string => money(currency).print(value, units);
  const { low, likely, high } = hire.plans;
  const last = likely.stays.at(-1);
  const words = likely.stays.map(({ cover }) => coverWords(cover)).join(", then ");
  const range =
    hire.price.low === hire.price.high
      ? print(hire.price.low)
      : `${print(hire.price.low)}–${print(hire.price.high)}`;
  return (
    <div data-hire={hire.id} data-cover={words} data-price={hire.price.likely}>
      <Working
        text={`${hire.name}: ${words}`}
        amount={hire.within === undefined ? print(hire.price.likely) : "in another line"}
      >
        <table className="table">
          <tbody>
            {likely.stays.map((stay) => (
              <tr key={stay.from}>
                <th scope="row">
                  {stay.from === stay.to ? `Day ${stay.from}` : `Day ${stay.from} to ${stay.to}`},{" "}
                  {plainNumber(stay.need.hours, 1)} h worked
                  {stay.idleDays > 0 && `, ${several(stay.idleDays, "day", "days")} idle`}
                  {stay.overageHours > 0 &&
                    `, ${plainNumber(stay.overageHours, 1)} h beyond the hire (${print(stay.overage)})`}
                </th>
                <td>{print(stay.price)}</td>
              </tr>
            ))}
            <tr>
              <th scope="row">Bring it and take it away</th>
              <td>{print(likely.delivery)}</td>
            </tr>
          </tbody>
        </table>
        <p>
          Quick job to slow: {range}. If it goes quickly: {planWords(low)}. If slowly:{" "}
          {planWords(high)}.
        </p>
        {likely.savedByReturning > 0 && (
          <p>
            Returning it in between saves {print(likely.savedByReturning)} against keeping it
            throughout.
          </p>
        )}
        {last !== undefined && (
          <p>
            Kept a week longer, not worked: {more(keptLonger(last, 1), print)}; two weeks longer:{" "}
            {more(keptLonger(last, 2), print)}.
          </p>
        )}
        {hire.within !== undefined && (
          <p className="soft">
            Its price stands within another line of the cost, which names it; it is not added again.
          </p>
        )}
        <p className="soft">Rates: {hire.source}</p>
      </Working>
    </div>
  );
}

const more = (price: number, print: (value: number) => string): string =>
  price > 0 ? `${print(price)} more` : "nothing more";

const planWords = ({ stays }: Hire["plans"]["likely"]): string =>
  stays.map(({ cover }) => coverWords(cover)).join(", then ");
