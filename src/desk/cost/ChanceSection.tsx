import type { ReactNode } from "react";
import { DEFAULT_RANGE, DEFAULT_SHARE, type Chance, type Driver } from "../../chance/index.js";
import { addProbe, freshId, setDoubt } from "../../site/index.js";
import { guessedNote, simulate, useDesk } from "../../store/index.js";
import { distance, earthVolume, hours, length, money, plainNumber } from "../../units/index.js";
import { words } from "../../words/index.js";
import { MeasureField } from "../fields/MeasureField.js";
import { ShareField } from "../fields/ShareField.js";
import { useEdit, useSite } from "../useSite.js";
import { Histogram } from "./Histogram.js";
import type { ShownChance } from "./useChanceAtRest.js";
import { Term } from "../book/Term.js";

/** Drivers that are listed; the rest together are the last line. */
const LISTED = 7;
/** Share of the variance under which a driver is not worth a line. */
const WORTH = 0.005;

const percentOf = (share: number): string => `${plainNumber(100 * share, share < 0.1 ? 1 : 0)}%`;

/** What many runs give: the total with its range, days, rock, loads; what drives it; where to probe. */
export function ChanceSection({ shown }: { shown: ShownChance }): ReactNode {
  const { chance, current, share, fault } = shown;
  const { site, schemeId } = useSite();
  return (
    <section
      aria-label={words.costLeaf.howSure}
      className={current ? "" : "stale"}
      data-chance={current ? "now" : "before"}
    >
      <h2>
        {words.costLeaf.howSure} <span className="aside">{words.costLeaf.nineTenBelowHigh}</span>
      </h2>
      {fault !== null && (
        <p role="alert">
          {words.costLeaf.rangesCouldNotWorked(fault)}{" "}
          <button type="button" className="link" onClick={() => simulate(site, [schemeId])}>
            {words.costLeaf.tryAgain}
          </button>
        </p>
      )}
      {share !== null && (
        <p className="says" role="status">
          {words.costLeaf.drawingWhatNotKnown(Math.round(100 * share))}{" "}
          <progress max={1} value={share} aria-label={words.costLeaf.howFarDrawing} />
        </p>
      )}
      {chance === null && share === null && fault === null && (
        <p className="says">{words.costLeaf.rangesWorkedOutWhen}</p>
      )}
      {chance !== null && !current && share === null && (
        <p className="says">{words.costLeaf.rangesBelowSiteBefore}</p>
      )}
      {chance !== null && <Ranges chance={chance} />}
      {chance !== null && <Drivers chance={chance} />}
      {chance !== null && <NextProbe chance={chance} />}
    </section>
  );
}

function Ranges({ chance }: { chance: Chance }): ReactNode {
  const { units, currency } = useSite().site;
  const print = (value: number): string => money(currency).print(value, units);
  const whole = (value: number): string => plainNumber(value, 0);
  const volume = (value: number): string => earthVolume.print(value, units);
  const rows: { name: string; low: string; likely: string; high: string }[] = [
    { name: words.costLeaf.total, ...mapSpread(chance.total, print) },
    { name: words.costLeaf.firstDayLast, ...mapSpread(chance.jobDays, whole) },
    { name: words.costLeaf.diggersDays, ...mapSpread(chance.days, whole) },
    { name: words.costLeaf.diggersHours, ...mapSpread(chance.hours, (h) => hours.print(h, units)) },
    { name: words.costLeaf.rockInAll, ...mapSpread(chance.rock, volume) },
    { name: words.costLeaf.hardRock, ...mapSpread(chance.hardRock, volume) },
    { name: words.costLeaf.truckloads, ...mapSpread(chance.loads, whole) },
  ];
  return (
    <>
      <Histogram chance={chance} />
      <Skew chance={chance} />
      <table className="table three" data-chance-total={chance.total.likely}>
        <thead>
          <tr>
            <th scope="col">
              <span className="unseen">{words.costLeaf.figure}</span>
            </th>
            <th scope="col">
              <Term id="lowHigh">{words.costLeaf.low}</Term>
            </th>
            <th scope="col">
              <Term id="simulationMiddle">{words.costLeaf.middle}</Term>
            </th>
            <th scope="col">{words.costLeaf.high}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ name, low, likely, high }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{low}</td>
              <td>
                <strong>{likely}</strong>
              </td>
              <td>{high}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <details className="working">
        <summary>
          <span className="text">{words.costLeaf.howTheseWorkedOut}</span>
          <span className="amount">{words.costLeaf.runs(plainNumber(chance.runs, 0))}</span>
        </summary>
        <div className="inside">
          <p>{words.costLeaf.everyRunDrawsHow}</p>
          <p className="soft">
            {words.costLeaf.drawnFromTrianglesBetween(chance.drawn.length, chance.seed)}
          </p>
          <DoubtFields />
        </div>
      </details>
    </>
  );
}

/** How far one probe tells of the ground beside it, and how much a layer may differ at least. */
function DoubtFields(): ReactNode {
  const { site } = useSite();
  const edit = useEdit();
  const { doubt } = site.ground;
  return (
    <div className="form">
      <MeasureField
        label={words.costLeaf.probeTellsGroundWithin}
        name="doubt-range"
        value={doubt?.range}
        measure={length}
        least={1}
        usual={DEFAULT_RANGE}
        onCommit={(range) => edit(words.costLeaf.reachProbeEdit, (now) => setDoubt(now, { range }))}
        onClear={() =>
          edit(words.costLeaf.reachProbeEdit, (now) => setDoubt(now, { range: undefined }))
        }
      />
      <ShareField
        label={words.costLeaf.layerDiffersLeast}
        name="doubt-share"
        value={doubt?.share}
        most={2}
        usual={`${100 * DEFAULT_SHARE}%`}
        note={words.costLeaf.standardDeviationShareMean}
        onCommit={(share) => edit(words.costLeaf.doubtLayerEdit, (now) => setDoubt(now, { share }))}
        onClear={() =>
          edit(words.costLeaf.doubtLayerEdit, (now) => setDoubt(now, { share: undefined }))
        }
      />
    </div>
  );
}

/** Why the middle of the runs is not the sum of the likely figures, when it is well off it. */
function Skew({ chance }: { chance: Chance }): ReactNode {
  const { site, estimate } = useSite();
  if (estimate === null) return null;
  const { likely } = estimate.cost.total;
  const off = (chance.total.likely - likely) / likely;
  if (Math.abs(off) < 0.02) return null;
  const print = (value: number): string => money(site.currency).print(value, site.units);
  return (
    <p className="says">
      {words.costLeaf.everyLikelyFigureAdded(
        print(likely),
        off > 0 ? words.costLeaf.above : words.costLeaf.below,
        print(chance.total.likely),
        off > 0 ? words.costLeaf.furtherUpThanDown : words.costLeaf.furtherDownThanUp,
      )}
    </p>
  );
}

function mapSpread(
  { low, likely, high }: Chance["total"],
  print: (value: number) => string,
): { low: string; likely: string; high: string } {
  return { low: print(low), likely: print(likely), high: print(high) };
}

function Drivers({ chance }: { chance: Chance }): ReactNode {
  const listed = chance.drivers.filter(({ share }) => share >= WORTH).slice(0, LISTED);
  const rest = 1 - listed.reduce((sum, { share }) => sum + share, 0);
  const most = listed[0]?.share ?? 1;
  if (listed.length === 0) return null;
  return (
    <>
      <h3>{words.costLeaf.whatMakesUnsure}</h3>
      <ol className="drivers">
        {listed.map((driver) => (
          <DriverRow key={driver.id} driver={driver} most={most} />
        ))}
      </ol>
      <p className="soft">
        {words.costLeaf.shareSpreadTotalGoes(
          rest > WORTH ? words.costLeaf.allElseWhatGoes(percentOf(rest)) : "",
        )}
        {listed.some(({ kind }) => kind === "price") && words.costLeaf.priceYourOwnTyped}
      </p>
    </>
  );
}

function DriverRow({ driver, most }: { driver: Driver; most: number }): ReactNode {
  return (
    <li data-driver={driver.id} data-share={driver.share}>
      <span className="text">{driver.name}</span>
      <span className="amount">{percentOf(driver.share)}</span>
      <span
        className={`bar ${driver.kind}`}
        aria-hidden="true"
        style={{ inlineSize: `${(100 * driver.share) / most}%` }}
      />
    </li>
  );
}

/** Share of the variance of the total under which a probe is not worth its hole for the money. */
const HARDLY = 0.03;

function NextProbe({ chance }: { chance: Chance }): ReactNode {
  const { site } = useSite();
  const edit = useEdit();
  const select = useDesk((desk) => desk.select);
  const { nextProbe } = chance;
  const { units, currency } = site;
  if (nextProbe === null) {
    return (
      <>
        <h3>{words.costLeaf.whereProbeNext}</h3>
        <p className="says">{words.costLeaf.noFurtherProbeWould}</p>
      </>
    );
  }
  const [x, y] = nextProbe.at;
  const print = (value: number): string => money(currency).print(value, units);
  const place = (): void => {
    const id = freshId(site, "probe");
    const thickness = [...nextProbe.thickness];
    const note = guessedNote(site);
    edit(words.costLeaf.placeNextProbeEdit, (now) =>
      addProbe(now, {
        id,
        x,
        y,
        thickness,
        ...(note !== undefined && { note }),
      }),
    );
    select({ kind: "probe", id });
  };
  return (
    <div data-next-probe={JSON.stringify(nextProbe.at)}>
      <h3>{words.costLeaf.whereProbeNext}</h3>
      <p>
        {words.costLeaf.eastNorthMarkedGround(
          distance.print(x, units),
          distance.print(y, units),
          earthVolume.print(nextProbe.rockBefore, units),
          earthVolume.print(nextProbe.rockAfter, units),
          print(nextProbe.sdBefore),
          print(nextProbe.sdAfter),
        )}
        {nextProbe.share < HARDLY && words.costLeaf.totalAloneHardlyWorth}{" "}
        {words.costLeaf.largerCircleGroundMore}
      </p>
      <button type="button" className="link" onClick={place}>
        {words.costLeaf.placeProbeThere}
      </button>
    </div>
  );
}
