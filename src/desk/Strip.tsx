import type { ReactNode } from "react";
import { useDesk } from "../store/index.js";
import type { Figures } from "../store/index.js";
import { earthVolume, money, plainNumber } from "../units/index.js";
import { words } from "../words/index.js";
import { goToFigure, type StripFigure } from "./book/goTo.js";
import { StripSaid } from "./StripSaid.js";
import { useRangeAtRest } from "./useRangeAtRest.js";
import { useSite } from "./useSite.js";

interface FigureProps {
  id: StripFigure;
  title: string;
  value: number;
  before: number | undefined;
  unit: string;
  /** What else is said of the unit where there is room. */
  moreUnit?: string;
  print: (value: number) => string;
  /** What is said of it when it is pointed at. */
  hint?: string;
  children?: ReactNode;
}

/** Letters of the longest figure that fits its column on one line. */
const LONGEST_IN_LINE = 9;

/** The change since the last edit: signed, told by words too and not by colour alone. */
function Change({
  value,
  before,
  print,
}: Pick<FigureProps, "value" | "before" | "print">): ReactNode {
  if (before === undefined) return null;
  const size = print(Math.abs(value - before));
  if (!/[1-9]/.test(size)) return null;
  const more = value > before;
  return (
    <span className={`change ${more ? "more" : "less"}`}>
      {more ? "+" : "−"}
      {size}
      <span className="unseen">
        {" "}
        {words.desk.thanBeforeLastEdit(more ? words.desk.more : words.desk.less)}
      </span>
    </span>
  );
}

function Figure(props: FigureProps): ReactNode {
  const { id, title, value, before, unit, moreUnit, print, hint, children } = props;
  return (
    <div className="figure" data-of={id} title={hint}>
      <dt>
        <button type="button" className="figure-opens" onClick={() => goToFigure(id)}>
          {title}
          <span className="unseen">{words.sums.strip.opens}</span>
        </button>
      </dt>
      <dd>
        <span className="big" data-figure={id} data-value={value}>
          {print(value)}
        </span>
        {unit !== "" && <span>{unit}</span>}
        {moreUnit !== undefined && <span className="more-unit soft">{moreUnit}</span>}
        {children}
        <Change value={value} before={before} print={print} />
      </dd>
    </div>
  );
}

/** The range beside the cost: what the simulation gives of this very site, and none before that. */
function CostRange({ drawn, print }: CostRangeProps): ReactNode {
  const says = words.sums.strip;
  if (drawn === null) {
    return (
      <>
        <span className="range soft">{says.waiting}</span>
        <span className="range-short soft" aria-hidden="true">
          {says.waiting}
        </span>
      </>
    );
  }
  const { low, high } = drawn;
  // Nothing is built yet: a range from nothing to nothing tells nothing.
  if (high === 0) return null;
  return (
    <>
      <span className="range soft" data-low={low} data-high={high}>
        {says.range} {print(low)}–{print(high)}
      </span>
      <span className="range-short soft" aria-hidden="true">
        {compact(low)}–{compact(high)}
      </span>
    </>
  );
}

interface CostRangeProps {
  drawn: ReturnType<typeof useRangeAtRest>;
  print: (value: number) => string;
}

/** What is said of the range when the cost is pointed at. */
function hintOfRange({ drawn, print }: CostRangeProps): string {
  if (drawn === null) return words.sums.strip.notYet;
  return drawn.high === 0 ? "" : words.sums.strip.rangeHint(print(drawn.likely));
}

/** A sum of money in few letters, such as "11.9k", for a phone. */
const SHORT = new Intl.NumberFormat("en", { notation: "compact", maximumFractionDigits: 1 });
const compact = (sum: number): string => SHORT.format(sum).toLowerCase();

function FigureList({ now, before }: { now: Figures; before: Figures | null }): ReactNode {
  const { units, currency } = useSite().site;
  const drawn = useRangeAtRest();
  const volume = (value: number): string => earthVolume.print(value, units, { bare: true });
  const cost = (value: number): string => money(currency).print(value, units);
  const days = (value: number): string => plainNumber(value, Number.isInteger(value) ? 0 : 1);
  const unit = earthVolume.unitLabel(units);
  const otherDigger = before !== null && before.digger.id !== now.digger.id;
  const hint = otherDigger
    ? words.desk.withBeforeLastEdit(now.digger.name, before.digger.name)
    : words.desk.withMachine(now.digger.name);
  const long = [now, before ?? now].some((figures) =>
    [volume(figures.cut), volume(figures.spoil), cost(figures.cost.likely)].some(
      (text) => text.length > LONGEST_IN_LINE,
    ),
  );
  return (
    <section className="strip-place" aria-label={words.desk.figuresScheme}>
      <dl className="strip" data-long={long || undefined}>
        <Figure
          id="cut"
          title={words.desk.cut}
          value={now.cut}
          before={before?.cut}
          unit={unit}
          print={volume}
        />
        <Figure
          id="rock"
          title={words.desk.rock}
          value={now.rock}
          before={before?.rock}
          unit={unit}
          print={volume}
        />
        <Figure
          id="spoil"
          title={words.desk.spoilToMove}
          value={now.spoil}
          before={before?.spoil}
          unit={unit}
          moreUnit="loose"
          print={volume}
        />
        <Figure
          id="days"
          title={words.desk.days}
          value={now.days}
          before={before?.days}
          unit=""
          print={days}
          hint={hint}
        >
          <span className="soft calendar-days" data-calendar-days={now.calendarDays}>
            <span className="long-words">
              {words.sums.strip.days(plainNumber(now.calendarDays, 0))}
            </span>
            <span className="short-words" aria-hidden="true">
              {words.sums.strip.daysShort(plainNumber(now.calendarDays, 0))}
            </span>
          </span>
          {otherDigger && (
            <span className="more-unit soft other-digger">
              {words.desk.otherDigger}
              <span className="unseen">: {hint}</span>
            </span>
          )}
        </Figure>
        <Figure
          id="cost"
          title={words.desk.cost}
          value={now.cost.likely}
          before={before?.cost.likely}
          unit=""
          {...(drawn !== null && drawn.high > 0 && { moreUnit: words.sums.strip.isSum })}
          print={cost}
          hint={hintOfRange({ drawn, print: cost })}
        >
          <CostRange drawn={drawn} print={cost} />
        </Figure>
      </dl>
    </section>
  );
}

/** The strip under the scene: the five figures, and how the last edit changed them. */
export function Strip(): ReactNode {
  const figures = useDesk((desk) => desk.figures);
  const before = useDesk((desk) => desk.before);
  const fault = useDesk((desk) => desk.fault);
  if (figures !== null) {
    return (
      <>
        <FigureList now={figures} before={before} />
        <StripSaid now={figures} before={before} />
      </>
    );
  }
  return (
    <div className="strip no-figures" role="alert">
      {words.desk.thereNoFiguresSite(fault ?? words.desk.engineGaveNoAnswer)}
    </div>
  );
}
