import type { ReactNode } from "react";
import { ColumnHeads } from "../../drawn/index.js";
import type { HoleLayer, HoleReport } from "../../estimate/index.js";
import { classRun, ruleOf } from "../../site/index.js";
import type { Trench, Tank, Work } from "../../site/index.js";
import { length, wallSlope } from "../../units/index.js";
import { words } from "../../words/index.js";
import { useSite } from "../useSite.js";
import { ShieldSection } from "./ShieldSection.js";
import { SlopeHole } from "./SlopeHole.js";
import { useChange } from "./useChange.js";

const { hole: said, classes } = words.trench;

function LayerRow({ layer }: { layer: HoleLayer }): ReactNode {
  const { units } = useSite().site;
  const steep = layer.drawn < layer.wanted - 1e-9;
  return (
    <tr data-layer={layer.layer ?? ""} data-class={layer.class}>
      <th scope="row">
        {layer.name}
        <small>{said.thick(length.print(layer.thickness, units))}</small>
      </th>
      <td>
        {classes[layer.class]}
        {layer.submerged && <small>{said.wet}</small>}
      </td>
      <td>{wallSlope.print(layer.wanted, units)}</td>
      <td className={steep ? "short" : undefined}>
        {wallSlope.print(layer.drawn, units)}
        {steep && <small>{said.tooSteep}</small>}
      </td>
    </tr>
  );
}

function waterText({ water }: HoleReport, print: (value: number) => string): string {
  if (water === null) return said.waterUnknown;
  const at = water.met ? said.waterMet(print(water.depth)) : said.waterSeason(print(water.depth));
  const over = water.overFloor > 0 ? said.overFloor(print(water.overFloor)) : said.underFloor;
  return `${at}: ${over}`;
}

function HoleFacts({ hole }: { hole: HoleReport }): ReactNode {
  const { site } = useSite();
  const print = (value: number): string => length.print(value, site.units);
  const longest = Math.max(0, ...hole.ladders.map((one) => one.length));
  const from = ruleOf(site, "way-out-from").value;
  return (
    <table className="table hole-facts">
      <tbody>
        <tr>
          <th scope="row">{said.face}</th>
          <td>{said.faceIs(print(hole.face))}</td>
        </tr>
        {hole.width !== null && hole.layers.length > 0 && (
          <>
            <tr>
              <th scope="row">{said.top}</th>
              <td>{print(hole.width.wanted)}</td>
            </tr>
            <tr>
              <th scope="row">{said.topDrawn}</th>
              <td>{print(hole.width.drawn)}</td>
            </tr>
          </>
        )}
        <tr data-ladders={hole.ladders.length}>
          <th scope="row">{said.ladders}</th>
          <td>
            {hole.ladders.length === 0
              ? said.noLadder(print(from))
              : said.ladder(String(hole.ladders.length), print(longest))}
          </td>
        </tr>
        <tr>
          <th scope="row">{said.water}</th>
          <td>{waterText(hole, print)}</td>
        </tr>
      </tbody>
    </table>
  );
}

/** Whether the hole is open a day only, which type A soil may stand steeper for. */
function OpenDay({ work, hole }: { work: Tank | Trench; hole: HoleReport }): ReactNode {
  const { site } = useSite();
  const change = useChange<Tank | Trench>(work);
  return (
    <label className="tick hole-open">
      <input
        type="checkbox"
        checked={work.openDay === true}
        disabled={work.locked === true}
        onChange={(event) =>
          change(said.openStep, { openDay: event.target.checked ? true : undefined })
        }
      />
      <span>
        {said.openDay}
        {hole.shortTerm && (
          <small>
            {said.openDayUsed(
              wallSlope.print(classRun("type-a-short"), site.units),
              length.print(ruleOf(site, "short-open-depth").value, site.units),
            )}
          </small>
        )}
      </span>
    </label>
  );
}

/** The walls of a work's hole: layer, class, run wanted and drawn; ladders, water, a shield. */
export function HoleTable({ work }: { work: Work }): ReactNode {
  const { estimate } = useSite();
  const hole = estimate?.holes.find((one) => one.work === work.id);
  if (hole === undefined) return null;
  return <HoleOf work={work} hole={hole} />;
}

function HoleOf({ work, hole }: { work: Work; hole: HoleReport }): ReactNode {
  const { site } = useSite();
  const { change: walls } = hole;
  return (
    <section aria-label={`${said.title}: ${work.name}`} className="hole" data-hole={work.id}>
      <h2>
        {said.title}{" "}
        {hole.layersOver !== null && (
          <span className="aside">{said.over(length.print(hole.layersOver, site.units))}</span>
        )}
      </h2>
      {hole.layers.length > 0 && (
        <table className="table hole-layers">
          <ColumnHeads names={[said.layer, said.class, said.wanted, said.drawn]} />
          <tbody>
            {hole.layers.map((layer, index) => (
              <LayerRow key={layer.layer ?? `fill ${index}`} layer={layer} />
            ))}
          </tbody>
        </table>
      )}
      {hole.layers.some((one) => one.class === "untyped" && one.layer !== null) && (
        <p className="says fine">{said.untypedLayer}</p>
      )}
      {hole.layers.some((one) => one.class === "untyped" && one.layer === null) && (
        <p className="says fine">{said.untypedFill}</p>
      )}
      {walls !== null && <SlopeHole work={work} walls={walls} />}
      {walls === null && hole.layers.length > 0 && <p className="says">{said.asWanted}</p>}
      <HoleFacts hole={hole} />
      {(work.kind === "tank" || work.kind === "trench") && <OpenDay work={work} hole={hole} />}
      <p className="says fine">{said.note}</p>
      <ShieldSection work={work} />
    </section>
  );
}
