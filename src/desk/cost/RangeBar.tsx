import type { ReactNode } from "react";
import { words } from "../../words/index.js";
import type { Range } from "../parts.js";
import { money } from "../../units/index.js";
import { useSite } from "../useSite.js";

const WIDE = 336;
const SIDE = 4;

/** Low, likely and high on one line, drawn to scale from nothing to the high. */
export function RangeBar({ range, currency }: { range: Range; currency: string }): ReactNode {
  const { units } = useSite().site;
  const print = (value: number): string => money(currency).print(value, units);
  const x = (value: number): number =>
    SIDE + (range.high > 0 ? (value / range.high) * (WIDE - 2 * SIDE) : 0);
  return (
    <svg
      className="range-bar"
      viewBox={`0 0 ${WIDE} 44`}
      role="img"
      aria-label={words.costLeaf.costFromLikely(
        print(range.low),
        print(range.high),
        print(range.likely),
      )}
    >
      <line x1={SIDE} x2={WIDE - SIDE} y1="24" y2="24" stroke="var(--ink)" />
      <rect
        x={x(range.low)}
        y="18"
        width={Math.max(1, x(range.high) - x(range.low))}
        height="12"
        fill="var(--paper-shade)"
        stroke="var(--ink)"
      />
      <rect x={x(range.likely) - 2} y="14" width="4" height="20" fill="var(--stake)" />
      <g fontSize="12" fill="var(--ink)">
        <text x={x(range.low)} y="42" textAnchor="middle">
          {print(range.low)}
        </text>
        <text x={Math.min(x(range.likely), WIDE - 60)} y="11" textAnchor="middle" fontWeight="700">
          {print(range.likely)}
        </text>
        <text x={WIDE - SIDE} y="42" textAnchor="end">
          {print(range.high)}
        </text>
      </g>
    </svg>
  );
}
