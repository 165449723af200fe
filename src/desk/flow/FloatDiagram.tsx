import type { ReactNode } from "react";
import { words } from "../../words/index.js";
import type { PressureResult } from "../parts.js";
import { elevation, length } from "../../units/index.js";
import { useSite } from "../useSite.js";
import { spread } from "./ticks.js";

const WIDE = 336;
const HIGH = 228;
const TOP = 14;
const FOOT = 16;
const BOX = 130;
const LABELS = BOX + 34;

interface Level {
  id: string;
  name: string;
  depth: number;
}

/** The float levels that the chamber has room for, from the cover down. */
function levelsOf(result: PressureResult): Level[] {
  const plan = result.dose?.plan;
  const { floor, cover } = result.water;
  const all: { id: string; name: string; depth: number | null | undefined }[] = [
    { id: "cover", name: words.flowLeaf.cover, depth: cover - floor },
    { id: "full", name: words.flowLeaf.reserveFull, depth: plan?.full },
    { id: "alarm", name: words.flowLeaf.alarm, depth: plan?.alarm },
    { id: "on", name: words.flowLeaf.pumpOn, depth: plan?.on },
    { id: "off", name: words.flowLeaf.pumpOff, depth: result.water.low - floor },
    { id: "floor", name: words.flowLeaf.floor, depth: 0 },
  ];
  return all.flatMap(({ depth, ...rest }) =>
    depth === null || depth === undefined ? [] : [{ ...rest, depth }],
  );
}

/** The chamber to scale with its float levels, each as a depth and as an elevation. */
export function FloatDiagram({ result }: { result: PressureResult }): ReactNode {
  const { units } = useSite().site;
  const levels = levelsOf(result);
  const { floor, cover } = result.water;
  const tall = Math.max(cover - floor, 0.1);
  const up = (HIGH - TOP - FOOT) / tall;
  const y = (depth: number): number => HIGH - FOOT - depth * up;
  const texts = spread(
    levels.map(({ depth }) => y(depth)),
    30,
  );
  const on = levels.find(({ id }) => id === "on");
  const off = levels.find(({ id }) => id === "off");
  return (
    <figure className="drawing">
      <svg
        viewBox={`0 0 ${WIDE} ${HIGH + 18}`}
        role="img"
        aria-label={words.flowLeaf.floatLevelsOverChambers(
          levels.map(({ name, depth }) => `${name} ${length.print(depth, units)}`).join(", "),
        )}
      >
        <rect
          x="8"
          y={y(tall)}
          width={BOX - 8}
          height={tall * up}
          fill="var(--paper)"
          stroke="var(--ink)"
          strokeWidth="2.5"
        />
        <rect
          x="9.5"
          y={y(off?.depth ?? 0)}
          width={BOX - 11}
          height={Math.max(0, (off?.depth ?? 0) * up - 1.5)}
          fill="var(--fill)"
          opacity="0.35"
        />
        {on !== undefined && off !== undefined && (
          <rect
            x="9.5"
            y={y(on.depth)}
            width={BOX - 11}
            height={(on.depth - off.depth) * up}
            fill="var(--fill)"
            opacity="0.2"
          />
        )}
        {levels.map(({ id, name, depth }, i) => {
          const at = texts[i] ?? y(depth);
          return (
            <g key={id} fontSize="11.5" fill="var(--ink)">
              <path
                d={`M10,${y(depth)}H${BOX}L${LABELS - 6},${at}`}
                fill="none"
                stroke={id === "alarm" ? "var(--stake)" : "var(--ink)"}
                strokeDasharray={id === "floor" || id === "cover" ? "none" : "5 3"}
              />
              <text x={LABELS} y={at - 1} fontWeight="600">
                {name} {length.print(depth, units)}
              </text>
              <text x={LABELS} y={at + 12} fill="var(--ink-soft)">
                {words.flowLeaf.atPlace(elevation.print(floor + depth, units))}
              </text>
            </g>
          );
        })}
      </svg>
    </figure>
  );
}
