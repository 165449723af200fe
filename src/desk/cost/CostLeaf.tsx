import type { ReactNode } from "react";
import type { CostLine } from "../parts.js";
import { UnpricedNote } from "../../drawn/index.js";
import { listedPrice } from "../../estimate/index.js";
import { setPriceOfAll } from "../../site/index.js";
import type { Scheme } from "../../site/index.js";
import { words } from "../../words/index.js";
import { useScheme } from "../flow/useFlow.js";
import type { TypicalValue } from "../fields/Typical.js";
import { money, plainNumber } from "../../units/index.js";
import { MeasureField } from "../fields/MeasureField.js";
import { Empty, PlaceButton } from "../Empty.js";
import { Findings } from "../Findings.js";
import { useEdit, useSite } from "../useSite.js";
import { QuantityWorking, Working } from "../Working.js";
import { BothWays } from "../BothWays.js";
import { ChanceSection } from "./ChanceSection.js";
import { Compare } from "./Compare.js";
import { OwnLines } from "./OwnLines.js";
import { countOf, perOf } from "../../handover/index.js";
import { RangeBar } from "./RangeBar.js";
import { useChanceAtRest } from "./useChanceAtRest.js";

/** Volumes in these lines are of fuel or of what a tank holds. */
const isLiquid = (line: CostLine): boolean => line.per === "L" || line.quantity.unit === "each";

/** The catalogue's likely price of this id, for one of the price list's own unit. */
function demoPrice(scheme: Scheme | undefined, id: string): TypicalValue | undefined {
  const listed = scheme === undefined ? null : listedPrice(scheme, id);
  return listed === null ? undefined : { value: listed.price.likely, source: listed.source };
}

function PriceEdit({ line }: { line: CostLine }): ReactNode {
  const { site } = useSite();
  const scheme = useScheme();
  const edit = useEdit();
  const [priceId, another] = line.priceIds;
  if (priceId === undefined) return null;
  const per = perOf(line.per, site.units);
  const listed = demoPrice(scheme, priceId);
  if (another !== undefined) {
    return <HireRates line={line} />;
  }
  return (
    <>
      <MeasureField
        label={
          <>
            {words.costLeaf.price}{" "}
            <small>
              {words.costLeaf.priceForOne(per.counted ? words.costLeaf.one : "", per.words)}
            </small>
          </>
        }
        name={`price-${priceId}`}
        value={line.unpriced === true ? undefined : line.price.likely * per.size}
        usual={line.price.likely * per.size}
        measure={money(site.currency)}
        print={{ digits: 2 }}
        least={0}
        onCommit={(price) =>
          edit(words.costLeaf.priceOfEdit(line.name), (now) =>
            setPriceOfAll(now, priceId, { price: price / per.size }),
          )
        }
        onClear={() =>
          edit(words.costLeaf.priceOfEdit(line.name), (now) => setPriceOfAll(now, priceId, null))
        }
        typical={listed && { ...listed, value: listed.value * per.size }}
        note={line.unpriced === true ? words.forms.noPumpPrice : undefined}
      />
    </>
  );
}

/** The rates behind a mix of hire: each can be set; until then the demo rate stands. */
function HireRates({ line }: { line: CostLine }): ReactNode {
  const { site, schemeId } = useSite();
  const edit = useEdit();
  const scheme = site.schemes.find((one) => one.id === schemeId);
  const chosen = scheme?.prices;
  const said = (id: string): string =>
    id.endsWith("-four-weeks")
      ? words.costLeaf.fourWeeks
      : id.endsWith("-week")
        ? words.costLeaf.aWeek
        : id.endsWith("-delivery")
          ? words.costLeaf.bringingTakingAway
          : words.costLeaf.aDay;
  return line.priceIds.map((id) => (
    <MeasureField
      key={id}
      label={
        <>
          {words.costLeaf.yourRate} <small>{words.costLeaf.rateFor(said(id))}</small>
        </>
      }
      name={`price-${id}`}
      value={chosen?.find((one) => one.id === id)?.price}
      usual={demoPrice(scheme, id)?.value}
      typical={demoPrice(scheme, id)}
      measure={money(site.currency)}
      print={{ digits: 2 }}
      least={0}
      onCommit={(price) =>
        edit(words.costLeaf.priceOfEdit(line.name), (now) => setPriceOfAll(now, id, { price }))
      }
      onClear={() =>
        edit(words.costLeaf.priceOfEdit(line.name), (now) => setPriceOfAll(now, id, null))
      }
    />
  ));
}

function Line({ line }: { line: CostLine }): ReactNode {
  const { units, currency } = useSite().site;
  const print = (value: number): string => money(currency).print(value, units);
  const per = perOf(line.per, units);
  const count = countOf(line) / per.size;
  return (
    <li data-cost-line={line.id} data-amount={line.amount.likely}>
      <Working
        text={
          line.unpriced === true ? (
            <>
              {line.name} <small>{words.forms.noPriceYet}</small>
            </>
          ) : (
            line.name
          )
        }
        amount={print(line.amount.likely)}
      >
        {line.per !== "lump" && (
          <p>
            {words.costLeaf.countTimesPrice(
              plainNumber(count, Number.isInteger(count) ? 0 : 2),
              money(currency).print(line.price.likely * per.size, units, { digits: 2 }),
              per.counted ? words.costLeaf.one : "",
              per.words,
            )}
          </p>
        )}
        <p className="soft">
          {words.costLeaf.fromTo(print(line.amount.low), print(line.amount.high))}
        </p>
        <PriceEdit line={line} />
        <QuantityWorking quantity={line.quantity} liquid={isLiquid(line)} />
        <p className="soft">{words.costLeaf.priceFrom(line.source)}</p>
      </Working>
    </li>
  );
}

const loadWords = (loads: number): string => words.counts.loads(loads, plainNumber(loads, 0));

/** Before there is a work or a line of one's own. */
function NothingToPay({ scheme }: { scheme: Scheme | undefined }): ReactNode {
  return (
    <>
      <Empty title={words.book.empty.costTitle} text={words.book.empty.cost}>
        <PlaceButton kind="tank" text={words.book.empty.placeTank} />
      </Empty>
      {scheme !== undefined && <OwnLines scheme={scheme} />}
      <Compare />
    </>
  );
}

/** Earth that is bought while the job's own is left over. */
const isOfEarth = ({ code }: { code: string }): boolean => code.startsWith("earth.");

/** Every line of the cost, each opening to its quantity, price and where both come from. */
export function CostLeaf(): ReactNode {
  const { site, schemeId, estimate } = useSite();
  const shown = useChanceAtRest();
  if (estimate === null) return <p className="says">{words.costLeaf.thereNoEstimatePrice}</p>;
  const { cost } = estimate;
  const scheme = site.schemes.find((one) => one.id === schemeId);
  const works = scheme?.works ?? [];
  if (works.length === 0 && cost.total.high === 0) return <NothingToPay scheme={scheme} />;
  const hasPile = works.some((work) => work.kind === "pile");
  const unpriced = cost.notPriced.map((id) => works.find((work) => work.id === id)?.name ?? id);
  return (
    <>
      {shown.chance === null && <RangeBar range={cost.total} currency={cost.currency} />}
      <p className="says">{words.costLeaf.pricesDemoFiguresUntil}</p>
      <Findings findings={[...cost.findings, ...estimate.findings.filter(isOfEarth)]} />
      <ChanceSection shown={shown} />
      <h2>
        {words.costLeaf.lines} <span className="aside">{words.costLeaf.likelyNote}</span>
      </h2>
      <ul>
        {cost.lines.map((line) => (
          <Line key={line.id} line={line} />
        ))}
      </ul>
      <div data-figure-home="cost">
        <div className="total" data-total={cost.total.likely}>
          <span>{words.costLeaf.totalWithEveryLikely}</span>
          <span>{money(cost.currency).print(cost.total.likely, site.units)}</span>
        </div>
        <p className="soft">{words.sums.strip.rangeShort}</p>
        <UnpricedNote site={site} estimate={estimate} />
        <Working text={words.costLeaf.howTotalReached} amount="" forFigure>
          <QuantityWorking quantity={cost.totalWorking} />
        </Working>
      </div>
      {scheme !== undefined && <OwnLines scheme={scheme} />}
      {unpriced.length > 0 && (
        <p className="says">{words.costLeaf.notPricedHere(unpriced.join(", "))}</p>
      )}
      <h2>{words.costLeaf.truckloads}</h2>
      <BothWays />
      <Working
        text={hasPile ? words.costLeaf.surplusIfHauledAway : words.costLeaf.surplusAway}
        amount={loadWords(cost.loads.surplus.value)}
      >
        <QuantityWorking quantity={cost.loads.surplus} />
      </Working>
      {cost.loads.imports.map((load) => (
        <Working
          key={load.material}
          text={words.costLeaf.inOf(load.name)}
          amount={loadWords(load.loads.value)}
        >
          <QuantityWorking quantity={load.mass} />
          <QuantityWorking quantity={load.loads} />
        </Working>
      ))}
      <Compare />
    </>
  );
}
