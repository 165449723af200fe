import type { ReactNode } from "react";
import { heightOn } from "../../estimate/index.js";
import type { FoundLayers, ProfileEvent } from "../../estimate/index.js";
import { length, ticks } from "../../units/index.js";
import type { Tick } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { PipeCheck } from "../parts.js";
import { EarthPatterns, patternId } from "../../drawn/index.js";
import { useSite } from "../useSite.js";
import { numberPlaces } from "./numberPlaces.js";

const WIDE = 336;
/** px of the ground's frame, and of what stands about it. */
const TALL = 168;
/** px of a figure on the axis, and what stands about it. */
const FIGURE = 6.3;
const BESIDE = 10;
const RIGHT = 10;
const FOOT = 34;
/** px between the middles of two numbers, and for a row of them. */
const NUMBER = 18;

interface DrawingProps {
  check: PipeCheck;
  events: readonly ProfileEvent[];
  layers: FoundLayers;
  materials: readonly string[];
  /** Outside diameter, m. */
  outside: number;
  reach: { lowest: number; highest: number };
  /** Id that keeps this drawing's patterns its own. */
  within: string;
  /** Whether the ground before the trench differs from the ground as found. */
  foundApart: boolean;
}

interface Frame {
  x: (station: number) => number;
  y: (z: number) => number;
  across: number;
  up: number;
  top: number;
  foot: number;
}

type Line = readonly (readonly [number, number])[];

const pathOf = (line: Line, { x, y }: Frame): string =>
  `M${line.map(([s, z]) => `${x(s).toFixed(2)} ${y(z).toFixed(2)}`).join("L")}`;

/** Ground, layers, pipe and numbered things along it. */
export function ProfileDrawing(props: DrawingProps): ReactNode {
  const { check, events, materials, reach, within } = props;
  const { site } = useSite();
  const up = TALL / (reach.highest - reach.lowest);
  const heights = ticks(reach.lowest, reach.highest, 26 / up, site.units);
  const left = BESIDE + FIGURE * Math.max(0, ...heights.map(({ text }) => text.length));
  const across = (WIDE - left - RIGHT) / check.length;
  const x = (station: number): number => left + station * across;
  const numbers = numberPlaces(
    events.map((event) => x(event.station)),
    NUMBER,
    left,
    WIDE - RIGHT - 1,
  );
  const top = 6 + NUMBER * (1 + Math.max(-1, ...numbers.map(({ row }) => row))) + 8;
  const y = (z: number): number => top + (reach.highest - z) * up;
  const frame: Frame = { x, y, across, up, top, foot: top + TALL };
  const stretch = up / across;
  return (
    <svg
      viewBox={`0 0 ${WIDE} ${frame.foot + FOOT}`}
      role="img"
      aria-label={words.flowLeaf.profileOverGroundLayers(
        check.name,
        length.print(check.length, site.units),
      )}
    >
      <EarthPatterns site={site} materials={materials} within={within} />
      <Axes check={check} frame={frame} heights={heights} />
      <Earth {...props} frame={frame} />
      <Pipe check={check} frame={frame} />
      {events.map((event, i) => (
        <Numbered
          key={i}
          event={event}
          place={numbers[i]!}
          ground={heightOn([groundOf(check)], event.station)}
          service={check.service}
          inside={check.inside}
          frame={frame}
        />
      ))}
      {/* Over all lines that lead to others. */}
      {numbers.map((place, i) => (
        <NumberAt key={i} x={place.x} y={rowAt(place.row)} number={i + 1} />
      ))}
      <text
        x={WIDE / 2}
        y={frame.foot + 29}
        fontSize="11"
        textAnchor="middle"
        fill="var(--ink-soft)"
      >
        {words.flowLeaf.alongUpHeights(
          site.units === "us" ? "ft" : "m",
          stretch.toFixed(stretch < 10 ? 1 : 0),
        )}
      </text>
    </svg>
  );
}

const groundOf = ({ stations }: PipeCheck): Line =>
  stations.flatMap(({ station, ground }) => (Number.isFinite(ground) ? [[station, ground]] : []));

function Axes(props: { check: PipeCheck; frame: Frame; heights: readonly Tick[] }): ReactNode {
  const { check, frame, heights } = props;
  const { units } = useSite().site;
  return (
    <g className="section-axes" fontSize="11">
      {heights.map(({ at, text }) => (
        <g key={`z${text}`}>
          <line x1={frame.x(0) - 4} x2={WIDE - RIGHT} y1={frame.y(at)} y2={frame.y(at)} />
          <text x={frame.x(0) - 6} y={frame.y(at) + 4} textAnchor="end">
            {text}
          </text>
        </g>
      ))}
      {ticks(0, check.length, 44 / frame.across, units).map(({ at, text }) => (
        <g key={`s${text}`}>
          <line x1={frame.x(at)} x2={frame.x(at)} y1={frame.foot} y2={frame.foot + 4} />
          <text x={frame.x(at)} y={frame.foot + 15} textAnchor="middle">
            {text}
          </text>
        </g>
      ))}
    </g>
  );
}

/** Layers as found, cut off at the ground as it is before the trench; what was placed shows plain. */
function Earth(props: DrawingProps & { frame: Frame }): ReactNode {
  const { check, layers, reach, within, foundApart, frame } = props;
  const ground = groundOf(check);
  const [first, last] = [ground[0], ground.at(-1)];
  if (first === undefined || last === undefined) return null;
  const under = `${pathOf([...ground, [last[0], reach.lowest], [first[0], reach.lowest]], frame)}Z`;
  const clip = `${patternId("ground", within)}-clip`;
  return (
    <>
      <defs>
        <clipPath id={clip}>
          <path d={under} />
        </clipPath>
      </defs>
      <path d={under} fill="var(--earth-fill)" />
      <g clipPath={`url(#${clip})`}>
        {layers.areas.map((area, i) => (
          <path
            key={i}
            className="section-area natural"
            data-material={area.material}
            d={[area.outline, ...area.holes].map((ring) => `${pathOf(ring, frame)}Z`).join("")}
            fill={`url(#${patternId(area.material, within)})`}
            fillRule="evenodd"
          />
        ))}
      </g>
      {foundApart &&
        layers.surface.map((line, i) => (
          <path key={i} className="section-found" d={pathOf(line, frame)} />
        ))}
      <path className="section-surface" data-part="ground" d={pathOf(ground, frame)} />
    </>
  );
}

/** px that a bore is drawn at the least. */
const LEAST_BORE = 3;

function Pipe({ check, frame }: { check: PipeCheck; frame: Frame }): ReactNode {
  const bore = Math.max(LEAST_BORE, check.inside * frame.up);
  const line = check.stations.map(({ station, invert }) => [station, invert] as const);
  const crown = [...line].reverse().map(([s, z]) => `${frame.x(s)} ${frame.y(z) - bore}`);
  return (
    <g className="section-pipes">
      <path
        className={check.service}
        data-part="pipe"
        d={`${pathOf(line, frame)}L${crown.join("L")}Z`}
      />
    </g>
  );
}

const rowAt = (row: number): number => 6 + NUMBER / 2 + NUMBER * row;

/** One thing along the pipe, drawn where it is, with a line up to its number. */
function Numbered(props: {
  event: ProfileEvent;
  place: { x: number; row: number };
  ground: number | null;
  service: PipeCheck["service"];
  inside: number;
  frame: Frame;
}): ReactNode {
  const { event, place, ground, inside, frame } = props;
  const x = frame.x(event.station);
  const bore = Math.max(LEAST_BORE, inside * frame.up);
  const surface = frame.y(ground ?? event.invert);
  const middle = frame.y(event.invert) - bore / 2;
  const numberAt = rowAt(place.row);
  const end = event.kind === "cleanout" ? Math.min(surface, middle) - 4 : middle;
  const leader = `M${place.x} ${numberAt}L${x} ${Math.min(frame.top, end)}L${x} ${end}`;
  return (
    <g data-event={event.kind}>
      <path d={leader} fill="none" stroke="var(--card)" strokeWidth="2.6" />
      <path d={leader} fill="none" stroke="var(--ink)" strokeWidth="0.9" />
      <Sign event={event} x={x} middle={middle} surface={surface} bore={bore} frame={frame} />
    </g>
  );
}

function NumberAt({ x, y, number }: { x: number; y: number; number: number }): ReactNode {
  return (
    <>
      <circle cx={x} cy={y} r="8" fill="var(--card)" stroke="var(--ink)" />
      <text x={x} y={y + 4} fontSize="11" fontWeight="700" textAnchor="middle" fill="var(--ink)">
        {number}
      </text>
    </>
  );
}

function Sign(props: {
  event: ProfileEvent;
  x: number;
  middle: number;
  surface: number;
  bore: number;
  frame: Frame;
}): ReactNode {
  const { event, x, middle, surface, bore, frame } = props;
  const look = { fill: "#fffaf0", stroke: "#14181a", strokeWidth: 1.3 };
  switch (event.kind) {
    case "cleanout":
      return (
        <path
          d={`M${x - 2} ${middle}V${surface}H${x - 4}V${surface - 4}H${x + 4}V${surface}H${x + 2}V${middle}Z`}
          {...look}
        />
      );
    case "bend":
      return <path d={`M${x} ${middle - 5}l5 5l-5 5l-5 -5Z`} {...look} />;
    case "crossing":
      return event.other === null ? null : (
        <ellipse
          cx={x}
          cy={frame.y(event.other) - Math.max(LEAST_BORE, event.otherInside * frame.up) / 2}
          rx={Math.max(3, (event.otherInside / 2) * frame.across)}
          ry={Math.max(3, (event.otherInside / 2) * frame.up)}
          {...look}
        />
      );
    case "joint":
      return event.other === null ? null : (
        <rect x={x - 3} y={frame.y(event.other) - bore - 3} width="6" height={bore + 6} {...look} />
      );
  }
}
