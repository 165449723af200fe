import type { ReactNode } from "react";
import { earthVolume } from "../../units/index.js";
import type { Work } from "../../site/index.js";
import { useDesk } from "../../store/index.js";
import type { PlaceKind } from "../../store/index.js";
import { idsOf, sumOf } from "../amounts.js";
import { Findings, findingsAt } from "../Findings.js";
import { WorkSwatch } from "../Swatch.js";
import { useSite } from "../useSite.js";
import { DigQuantities } from "./DigQuantities.js";
import { WorkForm } from "./WorkForm.js";

const PLACES: readonly { kind: PlaceKind; name: string }[] = [
  { kind: "tank", name: "tank" },
  { kind: "pad", name: "pad" },
  { kind: "trench", name: "trench" },
  { kind: "bed", name: "raised bed" },
  { kind: "building", name: "building" },
];

/** The buttons that start placing. */
export function PlaceButtons(): ReactNode {
  const start = useDesk((desk) => desk.startPlacing);
  return (
    <div className="place-row" role="group" aria-label="Place a new work">
      <span className="soft">+ Place a</span>
      {PLACES.map(({ kind, name }, index) => (
        <span key={kind} className="place-row">
          {index > 0 && (
            <span className="dot" aria-hidden="true">
              ·
            </span>
          )}
          <button type="button" className="link" onClick={() => start(kind)}>
            {name}
          </button>
        </span>
      ))}
    </div>
  );
}

function WorkRow({ work }: { work: Work }): ReactNode {
  const { site, estimate } = useSite();
  const picked = useDesk((desk) => desk.selected?.kind === "work" && desk.selected.id === work.id);
  const select = useDesk((desk) => desk.select);
  const quantities = estimate?.works.find((one) => one.id === work.id);
  const cut = quantities === undefined ? undefined : sumOf(quantities.cut);
  return (
    <li>
      <button
        type="button"
        className="row"
        aria-pressed={picked}
        data-work={work.id}
        data-cut={cut}
        onClick={() => select(picked ? null : { kind: "work", id: work.id })}
      >
        <WorkSwatch kind={work.kind} />
        <span className="text">{work.name}</span>
        <span className="amount">
          {cut === undefined || cut === 0 ? "–" : earthVolume.print(cut, site.units)}
        </span>
      </button>
    </li>
  );
}

/** The works in building order, the one that is picked with its form, and the whole dig. */
export function DigLeaf(): ReactNode {
  const { site, schemeId, estimate } = useSite();
  const selected = useDesk((desk) => desk.selected);
  const works = site.schemes.find((scheme) => scheme.id === schemeId)?.works ?? [];
  const work = works.find((one) => selected?.kind === "work" && one.id === selected.id);
  return (
    <>
      {works.length === 0 ? (
        <p className="says">Nothing is placed on this ground yet.</p>
      ) : (
        <ol className="rows" aria-label="Works in building order">
          {works.map((one) => (
            <WorkRow key={one.id} work={one} />
          ))}
        </ol>
      )}
      <PlaceButtons />
      {work !== undefined && (
        <>
          <h2>{work.name}</h2>
          <Findings findings={findingsAt(estimate?.findings, idsOf(work))} />
          <WorkForm key={work.id} work={work} />
        </>
      )}
      <DigQuantities work={work ?? null} />
      {work === undefined && (
        <Findings
          findings={findingsAt(estimate?.findings, ["site", ...works.flatMap(idsOf)])}
        />
      )}
    </>
  );
}
