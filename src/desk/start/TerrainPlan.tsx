import { useMemo } from "react";
import type { ReactNode } from "react";
import { contours, lotEdge } from "../../estimate/index.js";
import type { PlanPoint, Site } from "../../site/index.js";
import { elevation, FOOT, length } from "../../units/index.js";
import { words } from "../../words/index.js";

const WIDE = 460;
const MOST_TALL = 380;
const SIDE = 14;
const ABOUT_LINES = 12;
const MOST_DOTS = 600;

/** A tidy step between contours, m: 1, 2 or 5 of the site's own unit, for about a dozen lines. */
function contourStep(rise: number, units: Site["units"]): number {
  const unit = units === "us" ? FOOT : 1;
  const wanted = Math.max(rise / unit / ABOUT_LINES, 0.1);
  const scale = 10 ** Math.floor(Math.log10(wanted));
  const tidy = [1, 2, 5, 10].find((step) => step * scale >= wanted) ?? 10;
  return tidy * scale * unit;
}

/** The ground of a new site in plan: contours from the engine's own triangles, and its points. */
export function TerrainPlan({ site }: { site: Site | null }): ReactNode {
  const drawn = useMemo(() => {
    if (site === null) return null;
    const { points } = site.survey;
    const heights = points.map((point) => point.z);
    const low = Math.min(...heights);
    const high = Math.max(...heights);
    const step = contourStep(high - low, site.units);
    return { edge: lotEdge(site), lines: contours(site, step), low, high, step };
  }, [site]);
  if (site === null || drawn === null) {
    return (
      <div className="no-terrain">
        <p className="slab">{words.startPage.groundAppearsHere}</p>
        <p className="soft">{words.startPage.soonThreePointsThere}</p>
      </div>
    );
  }
  const xs = drawn.edge.map(([x]) => x);
  const ys = drawn.edge.map(([, y]) => y);
  const [west, south, north] = [Math.min(...xs), Math.min(...ys), Math.max(...ys)];
  const across = Math.max(Math.max(...xs) - west, 0.01);
  const deep = Math.max(north - south, 0.01);
  const scale = Math.min((WIDE - 2 * SIDE) / across, (MOST_TALL - 2 * SIDE) / deep);
  const tall = deep * scale + 2 * SIDE;
  const inset = (WIDE - across * scale) / 2;
  const place = ([x, y]: PlanPoint | readonly [number, number]): string =>
    `${(inset + (x - west) * scale).toFixed(1)},${(SIDE + (north - y) * scale).toFixed(1)}`;
  return (
    <figure>
      <svg
        className="terrain-plan"
        viewBox={`0 0 ${WIDE} ${tall.toFixed(0)}`}
        role="img"
        aria-label={words.startPage.groundPlanNorthUp(site.survey.points.length)}
        data-contours={drawn.lines.length}
      >
        <polygon
          points={drawn.edge.map(place).join(" ")}
          fill="#c3bd8c"
          stroke="var(--ink)"
          strokeWidth="1.5"
        />
        {drawn.lines.map((line, index) => (
          <polyline
            key={index}
            points={line.line.map(place).join(" ")}
            fill="none"
            stroke="#6b4a22"
            strokeWidth={line.heavy ? 1.6 : 0.7}
          />
        ))}
        {site.survey.points.slice(0, MOST_DOTS).map((point) => {
          const [x, y] = place([point.x, point.y]).split(",");
          return <circle key={point.id} cx={x} cy={y} r="1.8" fill="#26323a" />;
        })}
      </svg>
      <figcaption className="soft">
        {words.startPage.contourEveryNorthUp(
          elevation.print(drawn.low, site.units),
          elevation.print(drawn.high, site.units),
          length.print(drawn.step, site.units),
        )}
      </figcaption>
    </figure>
  );
}
