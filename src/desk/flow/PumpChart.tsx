import type { ReactNode } from "react";
import { ColumnHeads } from "../../drawn/index.js";
import { words } from "../../words/index.js";
import type { PressureResult } from "../parts.js";
import { flow, head } from "../../units/index.js";
import type { Measure } from "../../units/index.js";
import { useSite } from "../useSite.js";
import { roundTicks } from "./ticks.js";

const WIDE = 336;
const HIGH = 236;
const LEFT = 34;
const RIGHT = 8;
const TOP = 10;
const FOOT = 34;

interface Frame {
  x: (flow: number) => number;
  y: (head: number) => number;
  mostFlow: number;
  mostHead: number;
}

type Point = readonly [flow: number, head: number];

function frameOf(result: PressureResult): Frame {
  const used = result.pumps.find((pump) => pump.id === result.pump);
  const curve = used?.curve ?? [];
  const flows = [result.wanted.flow.value, result.flow.value, curve.at(-1)?.flow ?? 0];
  const heads = [result.wanted.head.value, result.head.value, curve[0]?.head ?? 0];
  const mostFlow = 1.08 * Math.max(...flows);
  const mostHead = 1.1 * Math.max(...heads, 1);
  return {
    mostFlow,
    mostHead,
    x: (at) => LEFT + (at / mostFlow) * (WIDE - LEFT - RIGHT),
    y: (at) => HIGH - FOOT - (at / mostHead) * (HIGH - FOOT - TOP),
  };
}

function lineOf(points: readonly Point[], { x, y, mostFlow }: Frame): string {
  return points
    .filter(([at, up]) => at <= mostFlow && Number.isFinite(up))
    .map(([at, up]) => `${x(at).toFixed(1)},${y(up).toFixed(1)}`)
    .join(" ");
}

function Axes({ frame }: { frame: Frame }): ReactNode {
  const { units } = useSite().site;
  const marks = (measure: Measure, most: number, wanted: number): { at: number; text: string }[] =>
    roundTicks(0, measure.toSystem(most, units), wanted).map((tick) => ({
      at: measure.fromSystem(tick, units),
      text: String(Number(tick.toPrecision(6))),
    }));
  const bottom = HIGH - FOOT;
  return (
    <g fontSize="11" fill="var(--ink)" stroke="none">
      {marks(flow, frame.mostFlow, 5).map(({ at, text }) => (
        <g key={text}>
          <line x1={frame.x(at)} x2={frame.x(at)} y1={TOP} y2={bottom} stroke="var(--rule)" />
          <text x={frame.x(at)} y={bottom + 14} textAnchor="middle">
            {text}
          </text>
        </g>
      ))}
      {marks(head, frame.mostHead, 5).map(({ at, text }) => (
        <g key={text}>
          <line
            x1={LEFT}
            x2={WIDE - RIGHT}
            y1={frame.y(at)}
            y2={frame.y(at)}
            stroke="var(--rule)"
          />
          <text x={LEFT - 5} y={frame.y(at) + 4} textAnchor="end">
            {text}
          </text>
        </g>
      ))}
      <path d={`M${LEFT},${TOP}V${bottom}H${WIDE - RIGHT}`} fill="none" stroke="var(--ink)" />
      <text x={WIDE - RIGHT} y={HIGH - 5} textAnchor="end">
        {words.flowLeaf.flowAxis(flow.unitLabel(units))}
      </text>
      <text x={LEFT + 5} y={TOP + 10}>
        {words.flowLeaf.headAxis(head.unitLabel(units))}
      </text>
    </g>
  );
}

/** The pump's curve against what the system asks, and the table behind it. */
export function PumpChart({ result }: { result: PressureResult }): ReactNode {
  const { units } = useSite().site;
  const frame = frameOf(result);
  const used = result.pumps.find((pump) => pump.id === result.pump);
  const curve = (used?.curve ?? []).map((one): Point => [one.flow, one.head]);
  const low = result.system.map((one): Point => [one.flow, one.low]);
  const high = result.system.map((one): Point => [one.flow, one.high ?? NaN]);
  const { x, y } = frame;
  const meets = used?.outcome === "runs" || used?.outcome === "off-curve";
  const meeting = words.flowLeaf.flowAtHead(
    flow.print(result.flow.value, units),
    head.print(result.head.value, units),
  );
  const wanted = words.flowLeaf.flowAtHead(
    flow.print(result.wanted.flow.value, units),
    head.print(result.wanted.head.value, units),
  );
  return (
    <figure className="drawing">
      <svg
        viewBox={`0 0 ${WIDE} ${HIGH}`}
        role="img"
        data-chart="pump"
        aria-label={words.flowLeaf.pumpSystemWanted(
          meets ? words.flowLeaf.theyMeetAt(meeting) : words.flowLeaf.theyDoNotMeet,
          wanted,
        )}
      >
        <Axes frame={frame} />
        <g fill="none" strokeWidth="1.8">
          <polyline
            points={lineOf(high, frame)}
            stroke="var(--fill)"
            strokeDasharray="3 4"
            strokeWidth="1.3"
          />
          <polyline points={lineOf(low, frame)} stroke="var(--fill)" />
          <polyline points={lineOf(curve, frame)} stroke="var(--ink)" />
        </g>
        <rect
          x={x(result.wanted.flow.value) - 4.5}
          y={y(result.wanted.head.value) - 4.5}
          width="9"
          height="9"
          fill="var(--card)"
          stroke="var(--ink)"
          strokeWidth="1.4"
        />
        {meets && (
          <circle
            cx={x(result.flow.value)}
            cy={y(result.head.value)}
            r="5.5"
            fill="var(--stake)"
            stroke="var(--card)"
            strokeWidth="1.5"
          />
        )}
      </svg>
      <figcaption>
        <span className="key">
          <Key line="ink" /> {used?.name ?? words.flowLeaf.pump}
        </span>
        <span className="key">
          <Key line="fill" /> {words.flowLeaf.systemWaterLow}
        </span>
        {result.water.high !== null && (
          <span className="key">
            <Key line="fill" dashed /> {words.flowLeaf.waterHigh}
          </span>
        )}
        <span className="key">
          <svg width="12" height="12" aria-hidden>
            <circle cx="6" cy="6" r="5" fill="var(--stake)" />
          </svg>{" "}
          {words.flowLeaf.runsAtKey}
        </span>
        <span className="key">
          <svg width="12" height="12" aria-hidden>
            <rect x="2" y="2" width="8" height="8" fill="var(--card)" stroke="var(--ink)" />
          </svg>{" "}
          {words.flowLeaf.wantedKey}
        </span>
      </figcaption>
      <ChartTable result={result} />
    </figure>
  );
}

function Key({ line, dashed = false }: { line: "ink" | "fill"; dashed?: boolean }): ReactNode {
  return (
    <svg width="20" height="8" aria-hidden>
      <line
        x1="0"
        x2="20"
        y1="4"
        y2="4"
        stroke={`var(--${line})`}
        strokeWidth="2"
        strokeDasharray={dashed ? "3 4" : "none"}
      />
    </svg>
  );
}

/** Every fourth sample of the curves. */
function ChartTable({ result }: { result: PressureResult }): ReactNode {
  const { units } = useSite().site;
  const used = result.pumps.find((pump) => pump.id === result.pump);
  const rows = (used?.curve ?? []).filter((_, i) => i % 4 === 0);
  const asks = (at: number): string => {
    const wanted = asksAt(result, at);
    return wanted === null ? "more" : head.print(wanted, units);
  };
  return (
    <details className="working">
      <summary>
        <span className="text">{words.flowLeaf.figuresChart}</span>
      </summary>
      <div className="inside">
        <table className="table">
          <ColumnHeads
            names={[words.flowLeaf.flowColumn, words.flowLeaf.pumpGives, words.flowLeaf.systemAsks]}
          />
          <tbody>
            {rows.map((row) => (
              <tr key={row.flow}>
                <th scope="row">{flow.print(row.flow, units)}</th>
                <td>{head.print(row.head, units)}</td>
                <td>{asks(row.flow)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}

/** What the system asks at a flow, between its samples, m; null beyond the last of them. */
function asksAt({ system }: PressureResult, at: number): number | null {
  const after = system.findIndex((one) => one.flow >= at);
  const [b, a] = [system[after], system[after - 1]];
  if (b === undefined) return null;
  if (a === undefined || b.flow === a.flow) return b.low;
  return a.low + ((b.low - a.low) * (at - a.flow)) / (b.flow - a.flow);
}
