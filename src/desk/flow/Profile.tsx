import type { ReactNode } from "react";
import type { PipeCheck } from "../parts.js";
import { elevation, length } from "../../units/index.js";
import { useSite } from "../useSite.js";

const WIDE = 336;
const HIGH = 128;
const SIDE = 8;
const TOP = 18;
const FOOT = 22;

/**
 * The ground and the pipe along its path, stretched upward so that the fall can be seen; how much
 * is written under it. Nothing is drawn where the survey does not reach.
 */
export function Profile({ check }: { check: PipeCheck }): ReactNode {
  const { units } = useSite().site;
  const known = check.stations.filter((one) => Number.isFinite(one.ground));
  const first = check.stations[0];
  const last = check.stations.at(-1);
  if (known.length < 2 || first === undefined || last === undefined || check.length <= 0) {
    return <p className="says">The survey does not reach along this pipe.</p>;
  }
  const heights = check.stations.flatMap((one) =>
    Number.isFinite(one.ground) ? [one.ground, one.invert] : [one.invert],
  );
  const lowest = Math.min(...heights);
  const highest = Math.max(...heights);
  const tall = Math.max(highest - lowest, 0.3);
  const across = (WIDE - 2 * SIDE) / check.length;
  const up = (HIGH - TOP - FOOT) / tall;
  const x = (station: number): number => SIDE + station * across;
  const y = (z: number): number => HIGH - FOOT - (z - lowest) * up;
  const at = (station: number, z: number): string => `${x(station).toFixed(1)},${y(z).toFixed(1)}`;
  const ground = known.map((one) => at(one.station, one.ground));
  const inverts = check.stations.map((one) => at(one.station, one.invert));
  const from = known[0]?.station ?? 0;
  const to = known.at(-1)?.station ?? 0;
  const colour = check.service === "gravity" ? "var(--cut)" : "var(--fill)";
  return (
    <svg
      className="profile"
      viewBox={`0 0 ${WIDE} ${HIGH}`}
      role="img"
      aria-label={`Profile of ${check.name}: ground and invert over ${length.print(check.length, units)}`}
    >
      <polygon
        points={`${ground.join(" ")} ${x(to)},${HIGH - FOOT + 6} ${x(from)},${HIGH - FOOT + 6}`}
        fill="var(--earth-soil)"
        opacity="0.35"
      />
      <polyline points={ground.join(" ")} fill="none" stroke="var(--ink)" strokeWidth="1.5" />
      <polyline
        points={inverts.join(" ")}
        fill="none"
        stroke={colour}
        strokeWidth={Math.max(3, Math.min(8, check.inside * up))}
        opacity="0.85"
      />
      {check.stations.map((one) => (
        <line
          key={one.station}
          x1={x(one.station)}
          x2={x(one.station)}
          y1={Number.isFinite(one.ground) ? y(one.ground) : y(one.invert)}
          y2={HIGH - FOOT + 6}
          stroke="var(--hairline)"
          strokeWidth="0.7"
        />
      ))}
      <g fontSize="11" fill="var(--ink)" stroke="none">
        <text x={SIDE} y={12}>
          {Number.isFinite(first.ground)
            ? `ground ${elevation.print(first.ground, units)}`
            : "ground"}
        </text>
        <text x={WIDE - SIDE} y={12} textAnchor="end">
          {Number.isFinite(last.ground) ? elevation.print(last.ground, units) : ""}
        </text>
        <text x={SIDE} y={HIGH - 4}>
          invert {elevation.print(first.invert, units)}
        </text>
        <text x={WIDE / 2} y={HIGH - 4} textAnchor="middle" fill="var(--ink-soft)">
          height × {(up / across).toFixed(up / across < 10 ? 1 : 0)}
        </text>
        <text x={WIDE - SIDE} y={HIGH - 4} textAnchor="end">
          {elevation.print(last.invert, units)}
        </text>
      </g>
    </svg>
  );
}
