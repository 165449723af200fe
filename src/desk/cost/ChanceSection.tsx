import type { ReactNode } from "react";
import { DEFAULT_RANGE, DEFAULT_SHARE, type Chance, type Driver } from "../../chance/index.js";
import { addProbe, freshId, setDoubt } from "../../site/index.js";
import { guessedNote, simulate, useDesk } from "../../store/index.js";
import { distance, earthVolume, hours, length, money, plainNumber } from "../../units/index.js";
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
      aria-label="How sure it is"
      className={current ? "" : "stale"}
      data-chance={current ? "now" : "before"}
    >
      <h2>
        How sure it is <span className="aside">nine in ten are below the high</span>
      </h2>
      {fault !== null && (
        <p role="alert">
          The ranges could not be worked out: {fault}.{" "}
          <button type="button" className="link" onClick={() => simulate(site, [schemeId])}>
            Try again
          </button>
        </p>
      )}
      {share !== null && (
        <p className="says" role="status">
          Drawing what is not known, again and again… {Math.round(100 * share)}%{" "}
          <progress max={1} value={share} aria-label="How far the drawing is" />
        </p>
      )}
      {chance === null && share === null && fault === null && (
        <p className="says">The ranges are worked out when nothing moves for a moment.</p>
      )}
      {chance !== null && !current && share === null && (
        <p className="says">The ranges below are of the site before the last change.</p>
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
    { name: "Total", ...mapSpread(chance.total, print) },
    { name: "First day to last", ...mapSpread(chance.jobDays, whole) },
    { name: "Digger's days", ...mapSpread(chance.days, whole) },
    { name: "Digger's hours", ...mapSpread(chance.hours, (h) => hours.print(h, units)) },
    { name: "Rock in all", ...mapSpread(chance.rock, volume) },
    { name: "Hard rock", ...mapSpread(chance.hardRock, volume) },
    { name: "Truckloads", ...mapSpread(chance.loads, whole) },
  ];
  return (
    <>
      <Histogram chance={chance} />
      <Skew chance={chance} />
      <table className="table three" data-chance-total={chance.total.likely}>
        <thead>
          <tr>
            <th scope="col">
              <span className="unseen">Figure</span>
            </th>
            <th scope="col">
              <Term id="lowHigh">Low</Term>
            </th>
            <th scope="col">
              <Term id="simulationMiddle">Likely</Term>
            </th>
            <th scope="col">High</th>
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
          <span className="text">How these are worked out</span>
          <span className="amount">{plainNumber(chance.runs, 0)} runs</span>
        </summary>
        <div className="inside">
          <p>
            Every run draws how thick each layer is between and beyond the probes (the farther from
            one, the less sure; nothing at a probe itself; where a probe stopped, as thick or
            thicker), how fast the machine works, how earth swells and what things cost, and then
            reckons hours, hire, loads and money just as the lines below. One run in ten is below
            the low, one in ten above the high, half below the likely. Holes keep their shape.
          </p>
          <p className="soft">
            Drawn from triangles between the ends of {chance.drawn.length} figures; layers as normal
            fields with an exponential covariance (Isaaks and Srivastava, An Introduction to Applied
            Geostatistics, 1989). Seed {chance.seed}: the same site gives the same ranges.
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
        label="A probe tells of the ground within"
        name="doubt-range"
        value={doubt?.range}
        measure={length}
        least={1}
        usual={DEFAULT_RANGE}
        onCommit={(range) => edit("reach of a probe", (now) => setDoubt(now, { range }))}
        onClear={() => edit("reach of a probe", (now) => setDoubt(now, { range: undefined }))}
      />
      <ShareField
        label="A layer differs by at least"
        name="doubt-share"
        value={doubt?.share}
        most={2}
        usual={`${100 * DEFAULT_SHARE}%`}
        note="Standard deviation as a share of the mean; more where the probes differ more. Our choice, no source."
        onCommit={(share) => edit("doubt of a layer", (now) => setDoubt(now, { share }))}
        onClear={() => edit("doubt of a layer", (now) => setDoubt(now, { share: undefined }))}
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
      Every likely figure added up gives {print(likely)}; half of the runs come out{" "}
      {off > 0 ? "above" : "below"} {print(chance.total.likely)}, because most figures can go{" "}
      {off > 0 ? "further up than down" : "further down than up"}.
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
      <h3>What makes it unsure</h3>
      <ol className="drivers">
        {listed.map((driver) => (
          <DriverRow key={driver.id} driver={driver} most={most} />
        ))}
      </ol>
      <p className="soft">
        Share of the spread of the total that goes with each
        {rest > WORTH ? `; all else, and what goes together, ${percentOf(rest)}` : ""}.
        {listed.some(({ kind }) => kind === "price") &&
          " A price of your own, typed in below, is taken as sure."}
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
        <h3>Where to probe next</h3>
        <p className="says">
          No further probe would narrow the total by much: what is left unsure is not the ground.
        </p>
      </>
    );
  }
  const [x, y] = nextProbe.at;
  const print = (value: number): string => money(currency).print(value, units);
  const place = (): void => {
    const id = freshId(site, "probe");
    const thickness = [...nextProbe.thickness];
    const note = guessedNote(site);
    edit("place the next probe", (now) =>
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
      <h3>Where to probe next</h3>
      <p>
        {distance.print(x, units)} east, {distance.print(y, units)} north: marked on the ground.
        Knowing the layers there narrows the spread of the rock from ±
        {earthVolume.print(nextProbe.rockBefore, units)} to ±
        {earthVolume.print(nextProbe.rockAfter, units)} and of the total from ±
        {print(nextProbe.sdBefore)} to ±{print(nextProbe.sdAfter)} (one standard deviation).
        {nextProbe.share < HARDLY && " For the total alone it is hardly worth digging."} The larger
        a circle on the ground, the more a probe there would tell.
      </p>
      <button type="button" className="link" onClick={place}>
        Place a probe there
      </button>
    </div>
  );
}
