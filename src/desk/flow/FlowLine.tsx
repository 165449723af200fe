import type { ReactNode } from "react";
import { words } from "../../words/index.js";
import type { OutletJoint, PipeCheck, PressureResult } from "../parts.js";
import { elevation, length, pipeSlope } from "../../units/index.js";
import { useSite } from "../useSite.js";
import { spread } from "./ticks.js";
import { wayOf, type Way, type WayMark } from "./way.js";

const WIDE = 336;
const HIGH = 190;
const SIDE = 14;
const TOP = 22;
const FOOT = 16;
/** Between the middles of two numbers. */
const APART = 18;

interface Frame {
  x: (along: number) => number;
  y: (z: number) => number;
  up: number;
  across: number;
}

function frameOf(way: Way): Frame {
  const heights = way.parts.flatMap((part) => part.heights);
  const low = Math.min(...heights);
  const high = Math.max(...heights);
  const tall = Math.max(high - low, 0.5);
  const across = (WIDE - 2 * SIDE) / Math.max(way.length, 0.1);
  const up = (HIGH - TOP - FOOT) / tall;
  return {
    x: (along) => SIDE + along * across,
    y: (z) => HIGH - FOOT - (z - low) * up,
    up,
    across,
  };
}

const pointsOf = (line: readonly (readonly [number, number])[], { x, y }: Frame): string =>
  line.map(([along, z]) => `${x(along).toFixed(1)},${y(z).toFixed(1)}`).join(" ");

/** The way of the water from the building to the bed, with its heights, as one drawing and a table. */
export function FlowLine(props: {
  pipes: readonly PipeCheck[];
  pressure: readonly PressureResult[];
  outlets: readonly OutletJoint[];
}): ReactNode {
  const { site, schemeId } = useSite();
  const { units } = site;
  const works = site.schemes.find((scheme) => scheme.id === schemeId)?.works ?? [];
  const way = wayOf(works, props.pipes, props.pressure, props.outlets);
  if (way === null) return null;
  const frame = frameOf(way);
  // Numbers that would lie on each other stand side by side.
  const asides = spread(
    way.marks.map((mark) => frame.x(mark.along)),
    APART,
  );
  const told = way.marks.map((mark) => `${mark.name} ${elevation.print(mark.z, units)}`).join(", ");
  return (
    <figure className="drawing" data-drawing="way">
      <svg
        viewBox={`0 0 ${WIDE} ${HIGH + 16}`}
        role="img"
        aria-label={words.flowLeaf.wayWater(told)}
      >
        <Drawn way={way} frame={frame} />
        {way.marks.map((mark, i) => (
          <MarkAt
            key={`${mark.name} ${i}`}
            mark={mark}
            number={i + 1}
            aside={asides[i] ?? frame.x(mark.along)}
            frame={frame}
          />
        ))}
        <text x={WIDE / 2} y={HIGH + 12} fontSize="11" textAnchor="middle" fill="var(--ink-soft)">
          {words.flowLeaf.alongPipesHeight(
            length.print(way.length, units),
            (frame.up / frame.across).toFixed(frame.up / frame.across < 10 ? 1 : 0),
          )}
        </text>
      </svg>
      <figcaption>
        <table className="table way">
          <tbody>
            {way.marks.map((mark, i) => (
              <tr key={`${mark.name} ${i}`}>
                <th scope="row">
                  <span className="number">{i + 1}</span> {mark.name}
                </th>
                <td>{elevation.print(mark.z, units)}</td>
              </tr>
            ))}
          </tbody>
        </table>
        {way.says.map(({ text, good, fall }) => (
          <p key={text} className={`verdict ${good ? "runs" : "wrong"}`}>
            {text}
            {fall !== undefined && ` ${pipeSlope.print(Math.abs(fall), units)}`}
            {good && fall !== undefined ? words.flowLeaf.runs : ""}
          </p>
        ))}
      </figcaption>
    </figure>
  );
}

function Drawn({ way, frame }: { way: Way; frame: Frame }): ReactNode {
  const { x, y } = frame;
  return way.parts.map((part, i) => {
    switch (part.kind) {
      case "ground":
        return (
          <polyline
            key={i}
            points={pointsOf(part.line, frame)}
            fill="none"
            stroke="var(--earth-soil)"
            strokeWidth="2.5"
          />
        );
      case "drain":
      case "main":
        return (
          <polyline
            key={i}
            points={pointsOf(part.line, frame)}
            fill="none"
            stroke={part.kind === "drain" ? "var(--cut)" : "var(--fill)"}
            strokeWidth="3.5"
          />
        );
      case "energy":
        return (
          <polyline
            key={i}
            points={pointsOf(part.line, frame)}
            fill="none"
            stroke="var(--fill)"
            strokeDasharray="2 3"
            strokeWidth="1.3"
          />
        );
      case "box":
        return (
          <rect
            key={i}
            x={x(part.from)}
            y={y(part.top)}
            width={Math.max(6, x(part.to) - x(part.from))}
            height={Math.max(3, y(part.bottom) - y(part.top))}
            fill={part.water ? "var(--fill)" : "var(--paper-shade)"}
            fillOpacity={part.water ? 0.35 : 1}
            stroke={part.water ? "none" : "var(--ink)"}
            strokeWidth="1.5"
          />
        );
    }
  });
}

function MarkAt(props: {
  mark: WayMark;
  number: number;
  /** Where the number stands, across. */
  aside: number;
  frame: Frame;
}): ReactNode {
  const { mark, number, aside, frame } = props;
  const [at, up] = [frame.x(mark.along), frame.y(mark.z)];
  const above = up > 34 ? -15 : 17;
  return (
    <g>
      <line x1={at} y1={up} x2={aside} y2={up + above} stroke="var(--ink)" strokeWidth="0.8" />
      <circle cx={at} cy={up} r="2.4" fill="var(--ink)" />
      <circle cx={aside} cy={up + above} r="8" fill="var(--card)" stroke="var(--ink)" />
      <text
        x={aside}
        y={up + above + 4}
        fontSize="11"
        fontWeight="700"
        textAnchor="middle"
        fill="var(--ink)"
      >
        {number}
      </text>
    </g>
  );
}
