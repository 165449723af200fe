import { useMemo, type ReactNode } from "react";
import { ColumnHeads } from "../../drawn/index.js";
import { hollowsOf, lineOnGround } from "../../estimate/index.js";
import { limitKind, ruleOf, type Limit } from "../../site/index.js";
import { useDesk } from "../../store/index.js";
import { area, distance, elevation, length, plainNumber } from "../../units/index.js";
import { words } from "../../words/index.js";
import { useSite } from "../useSite.js";
import type { Runoff } from "../parts.js";
import { limitNames, meetNames } from "./meetNames.js";
import { planLength } from "./planLength.js";
import { useDrains } from "./useDrains.js";

const says = words.water.site;

/** Water on the ground as found: what drains to each work, drawn ditches, hollows. */
export function SiteWater(): ReactNode {
  const ditches = (useSite().site.limits ?? []).filter(({ kind }) => kind === "ditch");
  return (
    <section aria-label={says.title} className="site-water">
      <h2>
        {says.title} <span className="aside">{says.aside}</span>
      </h2>
      <WorkTable />
      {ditches.length > 0 && <DitchTable ditches={ditches} />}
      <HollowTable />
      <p className="soft">{says.how}</p>
    </section>
  );
}

function WorkTable(): ReactNode {
  const { site, schemeId, estimate } = useSite();
  const works = site.schemes.find(({ id }) => id === schemeId)?.works ?? [];
  const rows = estimate?.runoff ?? [];
  const { units } = site;
  const { columns } = says;
  const shown = useDrains()?.work ?? null;
  if (rows.length === 0) return <p className="says">{says.noWorks}</p>;
  const ditchText = ({ ditch, ditchMeets, ditchLimits }: Runoff): string => {
    if (ditch === null) return says.none;
    const long = distance.print(planLength(ditch), units);
    const met = [meetNames(site, schemeId, ditchMeets), limitNames(site, ditchLimits)];
    const names = met.filter((some) => some !== "").join(", ");
    return names === "" ? long : says.meets(long, names);
  };
  // The view stays as it is: close to the work the slope above it would not be seen.
  const show = (id: string): void => {
    const desk = useDesk.getState();
    if (id !== shown) desk.select({ kind: "work", id });
    desk.show({ leaf: "survey", draining: id !== shown });
  };
  return (
    <div className="table-scroll">
      <table className="table" aria-label={says.works}>
        <thead>
          <tr>
            <th scope="col">{columns.work}</th>
            <th scope="col">
              {columns.drains} {area.unitLabel(units)}
            </th>
            <th scope="col">{columns.stands}</th>
            <th scope="col">{columns.ditch}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => {
            const name = works.find(({ id }) => id === row.work)?.name ?? row.work;
            return (
              <tr key={row.work}>
                <th scope="row">
                  <button
                    type="button"
                    className="link"
                    title={says.showOne(name)}
                    aria-pressed={row.work === shown}
                    onClick={() => show(row.work)}
                  >
                    {name}
                  </button>
                </th>
                <td>{row.area > 0 ? area.print(row.area, units, { bare: true }) : says.none}</td>
                <td>{row.standing > 0 ? length.print(row.standing, units) : says.none}</td>
                <td>{ditchText(row)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}

function DitchTable({ ditches }: { ditches: readonly Limit[] }): ReactNode {
  const { site } = useSite();
  const { units } = site;
  const { ditchColumns: columns } = says;
  const select = useDesk((desk) => desk.select);
  return (
    <>
      <h3>{says.ditches}</h3>
      <div className="table-scroll">
        <table className="table" aria-label={says.ditches}>
          <ColumnHeads names={[columns.ditch, columns.length, columns.high, columns.low]} />
          <tbody>
            {ditches.map((ditch) => {
              const line = lineOnGround(site, ditch.path ?? []);
              return (
                <tr key={ditch.id}>
                  <th scope="row">
                    <button
                      type="button"
                      className="link"
                      onClick={() => select({ kind: "limit", id: ditch.id })}
                    >
                      {ditch.name ?? limitKind(ditch.kind)?.name ?? ditch.kind}
                    </button>
                  </th>
                  {line === null ? (
                    <td colSpan={3}>{says.offSurvey}</td>
                  ) : (
                    <>
                      <td>{distance.print(line.length, units)}</td>
                      <td>{elevation.print(line.high, units)}</td>
                      <td>
                        {line.high === line.low ? says.level : elevation.print(line.low, units)}
                      </td>
                    </>
                  )}
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
      <p className="soft">{says.ditchSays}</p>
    </>
  );
}

/** Hollows listed; a rough survey may have hundreds. */
const MOST = 8;

function HollowTable(): ReactNode {
  const { site } = useSite();
  const { units, survey, rules } = site;
  const { hollowColumns: columns } = says;
  // eslint-disable-next-line react-hooks/exhaustive-deps
  const hollows = useMemo(() => hollowsOf(site), [survey, rules]);
  const least = ruleOf(site, "hollow-from").value;
  if (hollows.length === 0) {
    return <p className="says">{says.noHollows(length.print(least, units))}</p>;
  }
  return (
    <>
      <h3>{says.hollows}</h3>
      <div className="table-scroll">
        <table className="table" aria-label={says.hollows}>
          <ColumnHeads names={[columns.hollow, columns.deep, columns.area, columns.spills]} />
          <tbody>
            {hollows.slice(0, MOST).map(({ lowest, depth, area: wide, level }) => (
              <tr key={`${lowest[0]} ${lowest[1]}`}>
                <th scope="row">
                  {distance.print(lowest[0], units, { bare: true })},{" "}
                  {distance.print(lowest[1], units)}
                </th>
                <td>{length.print(depth, units)}</td>
                <td>{area.print(wide, units)}</td>
                <td>{elevation.print(level, units)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {hollows.length > MOST && (
        <p className="soft">{says.more(plainNumber(hollows.length - MOST, 0))}</p>
      )}
    </>
  );
}
