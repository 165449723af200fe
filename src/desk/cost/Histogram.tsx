import type { ReactNode } from "react";
import type { Chance } from "../../chance/index.js";
import { money, plainNumber } from "../../units/index.js";
import { words } from "../../words/index.js";
import { useSite } from "../useSite.js";

const WIDE = 336;
const HIGH = 64;
const FOOT = 18;

/** How often the total came out where, with its low, likely and high marked. The table follows it. */
export function Histogram({ chance }: { chance: Chance }): ReactNode {
  const { units, currency } = useSite().site;
  const { totalCounts: bars, total } = chance;
  const print = (value: number): string => money(currency).print(value, units);
  const most = Math.max(...bars.counts);
  const step = WIDE / bars.counts.length;
  const x = (value: number): number =>
    bars.to > bars.from ? (WIDE * (value - bars.from)) / (bars.to - bars.from) : WIDE / 2;
  const inside = (at: number): number => Math.min(Math.max(at, 30), WIDE - 30);
  return (
    <svg
      className="range-bar counts"
      viewBox={`0 0 ${WIDE} ${HIGH + FOOT + 14}`}
      role="img"
      aria-label={words.costLeaf.totalsRunsOneTen(
        plainNumber(chance.runs, 0),
        print(total.low),
        print(total.likely),
        print(total.high),
      )}
    >
      {bars.counts.map((count, i) => {
        const middle = bars.from + ((i + 0.5) * (bars.to - bars.from)) / bars.counts.length;
        const within = middle >= total.low && middle <= total.high;
        const tall = (HIGH * count) / most;
        return (
          <rect
            key={i}
            x={i * step + 0.5}
            y={14 + HIGH - tall}
            width={step - 1}
            height={tall}
            fill={within ? "var(--hairline)" : "var(--paper-shade)"}
            stroke="var(--ink-soft)"
            strokeWidth="0.5"
          />
        );
      })}
      <line x1="0" x2={WIDE} y1={14 + HIGH} y2={14 + HIGH} stroke="var(--ink)" />
      <line
        x1={x(total.likely)}
        x2={x(total.likely)}
        y1="13"
        y2={18 + HIGH}
        stroke="var(--stake)"
        strokeWidth="3"
      />
      <g fontSize="12" fill="var(--ink)" textAnchor="middle">
        <text x={inside(x(total.likely))} y="10" fontWeight="700">
          {print(total.likely)}
        </text>
        {[total.low, total.high].map((value, k) => (
          <g key={k}>
            <line
              x1={x(value)}
              x2={x(value)}
              y1={10 + HIGH}
              y2={19 + HIGH}
              stroke="var(--ink)"
              strokeWidth="1.5"
            />
            <text x={inside(x(value))} y={HIGH + FOOT + 12}>
              {print(value)}
            </text>
          </g>
        ))}
      </g>
    </svg>
  );
}
