import { useMemo, useState, type ReactNode } from "react";
import { estimate as reckon, type Estimate } from "../../estimate/index.js";
import {
  copyScheme,
  freshSchemeId,
  removeScheme,
  renameScheme,
  type Scheme,
  type Site,
} from "../../site/index.js";
import { fiveFigures, simulate, useChance, useDesk } from "../../store/index.js";
import { earthVolume, haulMass, hours, money, plainNumber } from "../../units/index.js";
import { words } from "../../words/index.js";
import { NameField } from "../fields/NameField.js";
import { useEdit, useSite } from "../useSite.js";

/** One figure of every scheme: how it prints, and whether less of it is better. */
interface Row {
  name: string;
  of: (way: Way) => number | null;
  print: (value: number, way: Way) => string;
  /** More of it is better. */
  more?: true;
}

/** A scheme with its estimate, and its simulation where there is one of this very site. */
interface Way {
  scheme: Scheme;
  answer: Estimate;
  site: Site;
  range: { low: number; likely: number; high: number } | null;
}

/** The schemes of the site side by side: quantities, days, cost, findings. */
export function Compare(): ReactNode {
  const { site, schemeId } = useSite();
  const [open, setOpen] = useState(false);
  return (
    <section aria-label={words.costLeaf.schemesSideSide} className="compare">
      <h2>
        {words.costLeaf.sideBySide}{" "}
        <span className="aside">
          {words.costLeaf.schemes(site.schemes.length, plainNumber(site.schemes.length, 0))}
        </span>
      </h2>
      <details
        className="working"
        data-testid="compare"
        onToggle={(event) => setOpen(event.currentTarget.open)}
      >
        <summary>
          <span className="text">{words.costLeaf.compareAllSchemes}</span>
        </summary>
        {open && <Ways />}
      </details>
      <SchemeTools key={schemeId} />
    </section>
  );
}

function useWays(): Way[] {
  const { site, schemeId, estimate } = useSite();
  const latest = useChance((state) => state.latest);
  const answers = useMemo(
    () =>
      site.schemes.map((scheme) =>
        scheme.id === schemeId && estimate !== null ? estimate : reckon(site, scheme.id),
      ),
    [site, schemeId, estimate],
  );
  return site.schemes.map((scheme, i) => {
    const made = latest.get(scheme.id);
    const range = made?.site === site ? made.chance.total : null;
    return { scheme, answer: answers[i]!, site, range };
  });
}

function rowsOf(site: Site): Row[] {
  const { units, currency } = site;
  const volume = (value: number): string => earthVolume.print(value, units, { digits: 1 });
  const price = (value: number): string => money(currency).print(value, units);
  const count = (value: number): string => plainNumber(value, 0);
  const figures = (way: Way) => fiveFigures(way.answer, way.site);
  const sum = (values: readonly number[]): number => values.reduce((all, each) => all + each, 0);
  const found = (way: Way, level: string): number =>
    way.answer.findings.filter((one) => one.level === level && one.accepted === undefined).length;
  return [
    { name: words.costLeaf.cut, of: (way) => figures(way).cut, print: volume },
    { name: words.costLeaf.rock, of: (way) => figures(way).rock, print: volume },
    { name: words.costLeaf.spoilToMove, of: (way) => figures(way).spoil, print: volume },
    {
      name: words.costLeaf.broughtIn,
      of: ({ answer }) => sum(answer.cost.loads.imports.map(({ mass }) => mass.value)),
      print: (value) => haulMass.print(value, units, { digits: 0 }),
    },
    {
      name: words.costLeaf.truckloadsIn,
      of: ({ answer }) => sum(answer.cost.loads.imports.map(({ loads }) => loads.value)),
      print: count,
    },
    {
      name: words.costLeaf.diggersHours,
      of: ({ answer }) => answer.machines.hours.likely,
      print: (value) => hours.print(value, units),
    },
    { name: words.costLeaf.diggersDays, of: (way) => figures(way).days, print: count },
    {
      name: words.costLeaf.firstDayLast,
      of: ({ answer }) => answer.machines.job.schedule.likely.calendarDays,
      print: count,
    },
    {
      name: words.costLeaf.costEveryLikelyFigure,
      of: (way) => figures(way).cost.likely,
      print: price,
    },
    { name: words.costLeaf.costLow, of: ({ range }) => range?.low ?? null, print: price },
    { name: words.costLeaf.costMiddle, of: ({ range }) => range?.likely ?? null, print: price },
    { name: words.costLeaf.costHigh, of: ({ range }) => range?.high ?? null, print: price },
    {
      name: words.costLeaf.fieldAreaWanted,
      of: ({ answer }) => {
        const { areaWanted, field } = answer.flow.sizing;
        return areaWanted === undefined ? null : field.value / areaWanted.value;
      },
      print: (value) => `${plainNumber(100 * value, 0)}%`,
      more: true,
    },
    { name: words.costLeaf.stops, of: (way) => found(way, "stop"), print: count },
    { name: words.costLeaf.cautions, of: (way) => found(way, "caution"), print: count },
  ];
}

function Ways(): ReactNode {
  const { site, schemeId } = useSite();
  const ways = useWays();
  const rows = useMemo(() => rowsOf(site), [site]);
  const chooseScheme = useDesk((desk) => desk.chooseScheme);
  const running = useChance((state) => state.running);
  const here = ways.find(({ scheme }) => scheme.id === schemeId);
  const missing = ways.some(({ range }) => range === null);
  return (
    <div className="inside">
      <div
        className="wide-table"
        role="region"
        aria-label={words.costLeaf.schemesCompared}
        tabIndex={0}
      >
        <table className="table ways">
          <thead>
            <tr>
              <th scope="col">
                <span className="unseen">{words.costLeaf.figure}</span>
              </th>
              {ways.map(({ scheme, answer }) => (
                <th scope="col" key={scheme.id} data-scheme={scheme.id}>
                  <button
                    type="button"
                    className="link"
                    aria-pressed={scheme.id === schemeId}
                    onClick={() => chooseScheme(scheme.id)}
                  >
                    {scheme.name}
                  </button>
                  <small>{answer.machines.digger.name}</small>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <CompareRow key={row.name} row={row} ways={ways} here={here} />
            ))}
          </tbody>
        </table>
      </div>
      <p className="soft">{words.costLeaf.underEachFigureStands}</p>
      {running !== null ? (
        <p className="says" role="status">
          {words.costLeaf.drawing(
            site.schemes.find(({ id }) => id === running.schemeId)?.name ?? words.costLeaf.aScheme,
            Math.round(100 * running.share),
          )}
        </p>
      ) : (
        missing && (
          <button
            type="button"
            className="button"
            onClick={() =>
              simulate(
                site,
                site.schemes.map(({ id }) => id),
              )
            }
          >
            {words.costLeaf.workOutEverySchemes}
          </button>
        )
      )}
    </div>
  );
}

/** A difference smaller than this share of a figure is none. */
const NOTICED = 1e-6;

function CompareRow(props: { row: Row; ways: readonly Way[]; here: Way | undefined }): ReactNode {
  const { row, ways, here } = props;
  const values = ways.map((way) => row.of(way));
  const known = values.filter((value) => value !== null);
  const least = row.more === true ? Math.max(...known) : Math.min(...known);
  const base = here === undefined ? null : row.of(here);
  const differ = known.some((value) => Math.abs(value - least) > NOTICED * Math.abs(least));
  return (
    <tr className={differ ? "differs" : ""}>
      <th scope="row">{row.name}</th>
      {ways.map((way, i) => {
        const value = values[i] ?? null;
        if (value === null) return <td key={way.scheme.id}>–</td>;
        const by = base === null ? 0 : value - base;
        const best = differ && value === least;
        return (
          <td key={way.scheme.id} data-value={value}>
            {best ? <strong>{row.print(value, way)}</strong> : row.print(value, way)}
            {Math.abs(by) > NOTICED * Math.abs(base ?? 0) && (
              <small>
                {by > 0 ? "+" : "−"}
                {row.print(Math.abs(by), way)}
              </small>
            )}
          </td>
        );
      })}
    </tr>
  );
}

/** Copies, renames and removes the scheme on the desk. */
function SchemeTools(): ReactNode {
  const { site, schemeId } = useSite();
  const edit = useEdit();
  const chooseScheme = useDesk((desk) => desk.chooseScheme);
  const scheme = site.schemes.find(({ id }) => id === schemeId);
  if (scheme === undefined) return null;
  const copy = (): void => {
    const id = freshSchemeId(site);
    const name = words.costLeaf.anotherWay(scheme.name);
    edit(words.costLeaf.copyEdit(scheme.name), (now) => copyScheme(now, schemeId, { id, name }));
    chooseScheme(id);
  };
  const remove = (): void => {
    const next = site.schemes.find(({ id }) => id !== schemeId);
    if (next === undefined) return;
    chooseScheme(next.id);
    edit(words.costLeaf.removeEdit(scheme.name), (now) => removeScheme(now, schemeId));
  };
  return (
    <div className="form">
      <NameField
        label={words.costLeaf.nameScheme}
        name="scheme-name"
        value={scheme.name}
        onCommit={(name) =>
          edit(words.costLeaf.renameTheSchemeEdit, (now) => renameScheme(now, schemeId, name))
        }
      />
      <div className="tools">
        <button type="button" className="link" onClick={copy}>
          {words.costLeaf.copySchemeChange}
        </button>
        {site.schemes.length > 1 && (
          <button type="button" className="link" onClick={remove}>
            {words.costLeaf.removeThisScheme}
          </button>
        )}
      </div>
    </div>
  );
}
