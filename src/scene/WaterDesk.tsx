import { useCallback, type ReactElement } from "react";
import type { Site } from "../site/index.js";
import { area, distance, length } from "../units/index.js";
import { words } from "../words/index.js";
import { arrowAim } from "./arrowAim.js";
import type { SiteSceneProps } from "./props.js";
import type { SceneContents } from "./sceneTargets.js";
import { isOnButton, useToolKeys } from "./useToolKeys.js";
import type { ShownWay, WaterTool } from "./useWater.js";

const { water: says } = words;

interface WaterDeskProps {
  tool: WaterTool;
  contents: SceneContents;
  onKeep: SiteSceneProps["onKeepWay"];
  onEnd: () => void;
}

/** The ways of water so far with their figures, and what to do next. */
export function WaterDesk({ tool, contents, onKeep, onEnd }: WaterDeskProps): ReactElement {
  useToolKeys(
    useCallback((event) => actOn(event, tool, contents), [tool, contents]),
    onEnd,
  );
  const { ways } = tool;
  const drawn = (contents.site.limits ?? []).some(({ kind }) => kind === "ditch");
  return (
    <div
      className="measure-desk water-desk"
      data-testid="water"
      data-empty={ways.length === 0 ? "" : undefined}
    >
      <p role="status" className="measure-say" data-missed={tool.missed ? "" : undefined}>
        {tool.missed ? says.noGround : ways.length === 0 ? says.first : says.next}
      </p>
      {ways.length > 0 && (
        <>
          <WayTable ways={ways} site={contents.site} onKeep={onKeep} />
          <p className="water-note">
            {says.asFound}
            {drawn && ` ${says.ditchesLeftOut}`}
          </p>
        </>
      )}
      <div className="measure-buttons">
        {ways.length > 0 && (
          <button type="button" onClick={tool.takeBack}>
            {says.takeBack}
          </button>
        )}
        {ways.length > 1 && (
          <button type="button" onClick={tool.clear}>
            {says.clear}
          </button>
        )}
        <button type="button" className="strong" data-testid="water-end" onClick={onEnd}>
          {says.done}
        </button>
      </div>
    </div>
  );
}

interface WayTableProps {
  ways: readonly ShownWay[];
  site: Site;
  onKeep: SiteSceneProps["onKeepWay"];
}

function WayTable({ ways, site, onKeep }: WayTableProps): ReactElement {
  const { columns } = says;
  return (
    <div className="measure-scroll">
      <table aria-label={says.ways}>
        <thead>
          <tr>
            <th scope="col">{columns.way}</th>
            <th scope="col">{columns.length}</th>
            <th scope="col">{columns.fall}</th>
            <th scope="col">{columns.hollows}</th>
            <td />
          </tr>
        </thead>
        <tbody>
          {ways.map((way, i) => (
            <tr key={i}>
              <th scope="row">{i + 1}</th>
              <td>{distance.print(way.length, site.units)}</td>
              <td>{distance.print(way.fall, site.units)}</td>
              <td data-none={way.hollows.length === 0 ? "" : undefined}>
                {hollowsText(way, site.units)}
              </td>
              <td>
                {isKept(way, site) ? (
                  says.kept
                ) : (
                  <button
                    type="button"
                    aria-label={says.keepThis(String(i + 1))}
                    onClick={() => onKeep(way.path)}
                  >
                    <span className="keep-long">{says.keep}</span>
                    <span className="keep-short">{says.columns.keep}</span>
                  </button>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** "0.12 m deep, 14 m²" of each hollow that the way fills. */
function hollowsText({ hollows }: ShownWay, units: Site["units"]): string {
  if (hollows.length === 0) return says.noHollow;
  return hollows
    .map(
      (pool) =>
        `${says.hollowDeep(length.print(pool.depth, units))}, ${area.print(pool.area, units)}`,
    )
    .join("; ");
}

/** m within which a flood path begins where a way does. */
const SAME = 0.02;

/** Whether the site has a flood path that begins where this way does. */
function isKept({ at }: ShownWay, { limits }: Site): boolean {
  return (limits ?? []).some(({ kind, path }) => {
    const [first] = path ?? [];
    if (kind !== "flood-path" || first === undefined) return false;
    return Math.hypot(first[0] - at[0], first[1] - at[1]) < SAME;
  });
}

/** Arrows move the mark, Space or Enter shows the way, Backspace takes back; whether it was one. */
function actOn(event: KeyboardEvent, tool: WaterTool, { frame, site }: SceneContents): boolean {
  if (event.key === "Backspace") {
    tool.takeBack();
    return true;
  }
  const to = arrowAim(event, tool.hover ?? tool.ways.at(-1)?.at ?? null, frame, site.units);
  if (to !== null) {
    tool.hoverAt(to);
    return true;
  }
  if (isOnButton(event)) return false;
  if ((event.key !== " " && event.key !== "Enter") || tool.hover === null) return false;
  tool.tap(tool.hover);
  return true;
}
