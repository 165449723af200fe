import { useState } from "react";
import type { ReactNode } from "react";
import { ColumnHeads } from "../../drawn/index.js";
import { heightOn, layersAt } from "../../estimate/index.js";
import type { FoundLayers, ProfileEvent } from "../../estimate/index.js";
import type { Site } from "../../site/index.js";
import { distance, elevation, length } from "../../units/index.js";
import { words } from "../../words/index.js";
import type { PipeCheck } from "../parts.js";
import { nameOfMaterial } from "../../sheets/index.js";
import { useSite } from "../useSite.js";

/** m: an invert nearer than this to a tank's meets it. */
const MEETS = 0.0005;

function wordsOf(event: ProfileEvent, units: Site["units"]): string {
  switch (event.kind) {
    case "cleanout":
      return words.flowLeaf.cleanout;
    case "bend":
      return words.flowLeaf.bendOf(Math.round(event.measure));
    case "crossing":
      return `${event.over ? words.flowLeaf.overCapital : words.flowLeaf.underCapital} ${event.name}, ${
        event.measure < 0
          ? words.flowLeaf.throughIt
          : words.flowLeaf.clear(length.print(event.measure, units))
      }`;
    case "joint": {
      const off = Math.abs(event.measure);
      const side = event.over ? "inlet" : "outlet";
      const how =
        off < MEETS
          ? words.flowLeaf.meetsItsInvert
          : words.flowLeaf.itsInvert(
              length.print(off, units, { digits: 2 }),
              event.measure > 0 ? words.flowLeaf.above : words.flowLeaf.below,
            );
      return `${event.name} ${side}, ${how}`;
    }
  }
}

/** What the numbers in a profile stand for. */
export function EventTable({ events }: { events: readonly ProfileEvent[] }): ReactNode {
  const { units } = useSite().site;
  if (events.length === 0) return null;
  return (
    <table className="table way" aria-label={words.flowLeaf.alongThePipe}>
      <tbody>
        {events.map((event, i) => (
          <tr key={i}>
            <th scope="row">
              <span className="number">{i + 1}</span> {wordsOf(event, units)}
            </th>
            <td style={{ whiteSpace: "nowrap" }}>
              {words.flowLeaf.atPlace(distance.print(event.station, units, { digits: 1 }))}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface FiguresProps {
  check: PipeCheck;
  events: readonly ProfileEvent[];
  layers: FoundLayers;
  materials: readonly string[];
  /** Outside diameter, m. */
  outside: number;
}

/** The figures behind a profile, made when it is opened. */
export function ProfileFigures(props: FiguresProps): ReactNode {
  const [open, setOpen] = useState(false);
  return (
    <details className="working" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <span className="text">{words.flowLeaf.figuresProfile}</span>
      </summary>
      {open && (
        <div className="inside">
          <Heights {...props} />
          <Layers {...props} />
        </div>
      )}
    </details>
  );
}

interface Row {
  station: number;
  /** NaN beyond the survey. */
  ground: number;
  invert: number;
}

/** Ends, breaks of the ground and numbered things, by station, each once. */
function rowsOf({ check, events }: FiguresProps): Row[] {
  const ground = check.stations.flatMap(({ station, ground: z }) =>
    Number.isFinite(z) ? [[station, z] as const] : [],
  );
  const between = events
    .filter(({ station }) => check.stations.every((one) => Math.abs(one.station - station) > 1e-6))
    .map(({ station, invert }) => ({
      station,
      invert,
      ground: heightOn([ground], station) ?? NaN,
    }));
  return [...check.stations, ...between].sort((a, b) => a.station - b.station);
}

function Heights(props: FiguresProps): ReactNode {
  const { units } = useSite().site;
  const { check, outside } = props;
  const height = (z: number): string => (Number.isFinite(z) ? elevation.print(z, units) : "–");
  return (
    <table className="table">
      <ColumnHeads
        names={[
          words.flowLeaf.along,
          words.flowLeaf.ground,
          words.flowLeaf.invert,
          words.flowLeaf.cover,
        ]}
      />
      <tbody>
        {rowsOf(props).map(({ station, ground, invert }, i) => (
          <tr key={i}>
            <th scope="row">{distance.print(station, units, { digits: 1 })}</th>
            <td>{height(ground)}</td>
            <td>{height(invert)}</td>
            <td>{height(ground - invert - (outside + check.inside) / 2)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Top of every layer as found under each station, and the one that the pipe's underside is in. */
function Layers(props: FiguresProps): ReactNode {
  const { site } = useSite();
  const { check, layers, materials, outside } = props;
  const wall = (outside - check.inside) / 2;
  return (
    <div
      tabIndex={0}
      role="region"
      aria-label={words.flowLeaf.layersAlong(check.name)}
      style={{ overflowX: "auto" }}
    >
      <table className="table">
        <thead>
          <tr>
            <th scope="col">{words.flowLeaf.topFoundAlong}</th>
            {materials.map((material) => (
              <th scope="col" key={material}>
                {nameOfMaterial(site, material)}
              </th>
            ))}
            <th scope="col">{words.flowLeaf.pipeLiesIn}</th>
          </tr>
        </thead>
        <tbody style={{ whiteSpace: "nowrap" }}>
          {rowsOf(props).map(({ station, invert }, i) => {
            const found = layersAt(layers.areas, station, check.length);
            const low = invert - wall;
            const holds = found.find(({ top, bottom }) => low < top && low >= bottom);
            return (
              <tr key={i}>
                <th scope="row">{distance.print(station, site.units, { digits: 1 })}</th>
                {materials.map((material) => {
                  const layer = found.find((one) => one.material === material);
                  return (
                    <td key={material}>
                      {layer === undefined ? "–" : elevation.print(layer.top, site.units)}
                    </td>
                  );
                })}
                <td>{holds === undefined ? "–" : nameOfMaterial(site, holds.material)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
