import { useState } from "react";
import type { PointerEvent, ReactNode } from "react";
import { heightOn } from "../estimate/index.js";
import type { Section, SectionArea } from "../estimate/index.js";
import type { Site } from "../site/index.js";
import { area, distance, elevation, length, ticks } from "../units/index.js";
import { words } from "../words/index.js";
import { EarthPatterns, patternId } from "./EarthPatterns.js";
import type { Frame, SectionFit } from "./fit.js";
import { nameOfWork } from "./names.js";
import { topOver } from "./topOver.js";

interface DrawingProps {
  site: Site;
  section: Section;
  fit: SectionFit;
  frame: Frame;
  /** Size of the whole drawing, CSS px. */
  width: number;
  height: number;
  /** Material ids in the order of the key. */
  materials: readonly string[];
  nameOf: (material: string) => string;
}

type Ring = readonly (readonly [number, number])[];

/** px of a station and of an elevation. */
interface Scale {
  x: (station: number) => number;
  y: (height: number) => number;
}

function path(rings: readonly Ring[], { x, y }: Scale, close: boolean): string {
  return rings
    .map(
      (ring) =>
        `M${ring.map(([s, z]) => `${x(s).toFixed(2)} ${y(z).toFixed(2)}`).join("L")}${close ? "Z" : ""}`,
    )
    .join("");
}

/** The section itself: ground, things in it, surfaces and axes. */
export function SectionDrawing(props: DrawingProps): ReactNode {
  const { site, section, fit, frame, width, height, materials } = props;
  const [pointed, setPointed] = useState<number | null>(null);
  const scale: Scale = {
    x: (station) => fit.left + station * fit.across,
    y: (z) => fit.upper + (fit.top - z) * fit.up,
  };
  const point = (event: PointerEvent<SVGSVGElement>): void => {
    const box = event.currentTarget.getBoundingClientRect();
    const station = (event.clientX - box.left - fit.left) / fit.across;
    setPointed(station >= 0 && station <= section.length ? station : null);
  };
  return (
    <svg
      className="section-drawing"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={words.sectionPanel.sectionGroundOverHeights(
        distance.print(section.length, site.units),
        fit.stretch,
      )}
      onPointerMove={point}
      onPointerDown={point}
      onPointerLeave={() => setPointed(null)}
    >
      <EarthPatterns site={site} materials={materials} />
      <defs>
        <clipPath id="section-frame">
          <rect x={frame.left} y={frame.top} width={frame.width} height={frame.height} />
        </clipPath>
      </defs>
      <Axes {...{ site, section, fit, frame, scale }} />
      <g clipPath="url(#section-frame)">
        {section.areas.map((each, i) => (
          <Piece key={i} {...props} className="section-area" piece={each} scale={scale} />
        ))}
        {section.standing.map((each, i) => (
          <Piece key={i} {...props} className="section-standing" piece={each} scale={scale} />
        ))}
        <path
          className="section-surface"
          data-part="surface"
          d={path(section.surface, scale, false)}
        />
        <path className="section-found" data-part="found" d={path(section.found, scale, false)} />
        <Pipes {...{ site, section, fit, scale }} />
        <Names {...{ site, section, fit, scale, frame }} />
      </g>
      {pointed !== null && <Reading {...{ site, section, frame, scale }} station={pointed} />}
    </svg>
  );
}

function Piece(
  props: DrawingProps & { className: string; piece: SectionArea; scale: Scale },
): ReactNode {
  const { site, section, className, piece, scale, nameOf } = props;
  const owner =
    piece.work === null ? "" : words.sectionPanel.of(nameOfWork(site, section, piece.work));
  return (
    <path
      className={`${className} ${piece.kind}`}
      data-material={piece.material}
      data-area={piece.area}
      d={path([piece.outline, ...piece.holes], scale, true)}
      fill={`url(#${patternId(piece.material)})`}
      fillRule="evenodd"
    >
      <title>{`${nameOf(piece.material)}${owner}, ${area.print(piece.area, site.units, { digits: 1 })}`}</title>
    </path>
  );
}

interface PartProps {
  site: Site;
  section: Section;
  fit: SectionFit;
  scale: Scale;
}

function Axes({ site, section, fit, frame, scale }: PartProps & { frame: Frame }): ReactNode {
  const { units } = site;
  const foot = frame.top + frame.height;
  const heights = ticks(fit.bottom, fit.top, 26 / fit.up, units);
  const stations = ticks(0, section.length, 64 / fit.across, units);
  const unit = units === "us" ? "ft" : "m";
  return (
    <g className="section-axes">
      {heights.map(({ at, text }, i) => (
        <g key={`z${text}`}>
          <line x1={frame.left} x2={frame.left + frame.width} y1={scale.y(at)} y2={scale.y(at)} />
          <text x={frame.left - 6} y={scale.y(at) + 4} textAnchor="end">
            {i === heights.length - 1 ? `${text} ${unit}` : text}
          </text>
        </g>
      ))}
      {stations.map(({ at, text }, i) => (
        <g key={`s${text}`}>
          <line x1={scale.x(at)} x2={scale.x(at)} y1={foot} y2={foot + 4} />
          <text x={scale.x(at)} y={foot + 16} textAnchor="middle">
            {i === 0 ? `${text} ${unit}` : text}
          </text>
        </g>
      ))}
      <line className="foot" x1={frame.left} x2={frame.left + frame.width} y1={foot} y2={foot} />
    </g>
  );
}

/** px that a pipe is drawn at the least. */
const LEAST_PIPE = 3;

function Pipes({ section, fit, scale }: PartProps): ReactNode {
  return (
    <g className="section-pipes">
      {section.pipesAlong.map((pipe, i) => {
        const half = Math.max(LEAST_PIPE / 2, (pipe.outside / 2) * fit.up);
        const line = (way: number): string =>
          pipe.centre.map(([s, z]) => `${scale.x(s)} ${scale.y(z) + way * half}`).join("L");
        const back = [...pipe.centre]
          .reverse()
          .map(([s, z]) => `${scale.x(s)} ${scale.y(z) + half}`)
          .join("L");
        return (
          <path
            key={i}
            data-pipe={pipe.id}
            className={`${pipe.service} ${pipe.laid ? "" : "planned"}`}
            d={`M${line(-1)}L${back}Z`}
          >
            <title>{pipe.name}</title>
          </path>
        );
      })}
      {section.pipes.map((pipe, i) => (
        <ellipse
          key={`x${i}`}
          data-pipe={pipe.id}
          className={`${pipe.service} ${pipe.laid ? "" : "planned"}`}
          cx={scale.x(pipe.centre[0])}
          cy={scale.y(pipe.centre[1])}
          rx={Math.max(LEAST_PIPE, (pipe.breadth / 2) * fit.across)}
          ry={Math.max(LEAST_PIPE, (pipe.outside / 2) * fit.up)}
        >
          <title>{pipe.name}</title>
        </ellipse>
      ))}
    </g>
  );
}

/** Mean breadth of a letter of a name, px. */
const LETTER = 6.8;

/** A name on the drawing, px; with `down`, a line goes from it to what it names. */
interface Name {
  x: number;
  y: number;
  text: string;
  down?: number;
}

/** Names of what stands or lies in the ground, kept from one another. */
function Names({ site, section, scale, frame }: PartProps & { frame: Frame }): ReactNode {
  const built = section.areas.filter((each) => each.kind === "structure");
  const standing = [...new Set(section.standing.map((each) => each.work))].map((work) => ({
    work,
    outline: section.standing.flatMap((each) => (each.work === work ? each.outline : [])),
  }));
  const ground = section.areas.map((each) => each.outline);
  const wanted: Name[] = [
    ...[...built, ...standing].map(({ work, outline }) => {
      const [s, z] = middleOf(outline);
      const text = work === null ? "" : nameOfWork(site, section, work);
      return { x: scale.x(s), y: scale.y(z) + 4, text };
    }),
    // Over the ground with a line down to the pipe: written beside it, the name would hide the trench.
    ...section.pipes.map(({ centre: [s, z], name }) => {
      const half = (LETTER * name.length) / 2 / (scale.x(1) - scale.x(0));
      const top = topOver(ground, s, half) ?? z;
      return { x: scale.x(s), y: scale.y(Math.max(top, z)) - 8, text: name, down: scale.y(z) };
    }),
    ...section.pipesAlong.map(({ centre, name }) => {
      const [s, z] = centre[Math.floor(centre.length / 2)]!;
      return { x: scale.x(s), y: scale.y(z) - 9, text: name };
    }),
  ];
  const placed: typeof wanted = [];
  for (const each of wanted) {
    const half = (LETTER * each.text.length) / 2;
    const most = frame.left + frame.width - half;
    const name = { ...each, x: Math.max(frame.left + half, Math.min(most, each.x)) };
    const clear = (y: number): boolean =>
      placed.every(
        (other) =>
          Math.abs(other.y - y) > 15 ||
          Math.abs(other.x - name.x) > (LETTER / 2) * (other.text.length + name.text.length),
      );
    const seats = each.down === undefined ? [0, 26, -15, 42, -30] : [0, -15, -30, -45];
    const y = seats.map((by) => name.y + by).find(clear);
    if (y !== undefined) placed.push({ ...name, y });
  }
  return (
    <g className="section-names">
      {placed.map(({ x, y, down }, i) =>
        down === undefined ? null : <line key={i} x1={x} x2={x} y1={y + 3} y2={down - 3} />,
      )}
      {placed.map(({ x, y, text }, i) => (
        <text key={i} x={x} y={y} textAnchor="middle">
          {text}
        </text>
      ))}
    </g>
  );
}

function middleOf(ring: Ring): readonly [number, number] {
  const across = ring.map(([s]) => s);
  const up = ring.map(([, z]) => z);
  return [(Math.min(...across) + Math.max(...across)) / 2, (Math.min(...up) + Math.max(...up)) / 2];
}

/** What the ground is under the pointer: how far along, how high, how deep below the ground found. */
function Reading(props: {
  site: Site;
  section: Section;
  frame: Frame;
  scale: Scale;
  station: number;
}): ReactNode {
  const { site, section, frame, scale, station } = props;
  const now = heightOn(section.surface, station);
  const found = heightOn(section.found, station);
  if (now === null || found === null) return null;
  const x = scale.x(station);
  const off = now - found;
  const right = x < frame.left + frame.width - 190;
  const lines = [
    words.sectionPanel.along(distance.print(station, site.units)),
    elevation.print(now, site.units),
    ...(Math.abs(off) < 0.005
      ? []
      : [
          words.sectionPanel.asFound(
            length.print(Math.abs(off), site.units),
            off < 0 ? words.sectionPanel.below : words.sectionPanel.above,
          ),
        ]),
  ];
  return (
    <g className="section-reading" aria-hidden="true">
      <line x1={x} x2={x} y1={frame.top} y2={frame.top + frame.height} />
      <circle cx={x} cy={scale.y(now)} r="3.5" />
      <text textAnchor={right ? "start" : "end"}>
        {lines.map((text, i) => (
          <tspan key={i} x={x + (right ? 8 : -8)} y={frame.top + 13 + i * 15}>
            {text}
          </tspan>
        ))}
      </text>
    </g>
  );
}
