import { useRef } from "react";
import type { ReactNode } from "react";
import { useDesk } from "../../store/index.js";
import type { PlaceKind } from "../../store/index.js";
import { idsOf } from "../idsOf.js";
import { words } from "../../words/index.js";
import { Empty, PlaceButton } from "../Empty.js";
import { Findings, findingsAt, FindingsAhead } from "../Findings.js";
import { useIntoSight } from "../scrollLeaf.js";
import { useSite } from "../useSite.js";
import { DigQuantities } from "./DigQuantities.js";
import { HoleTable } from "./HoleTable.js";
import { SeveralForm, usePicked } from "./SeveralForm.js";
import { WorkWater } from "../water/WorkWater.js";
import { WorkForm } from "./WorkForm.js";
import { WorkList } from "./WorkList.js";

const FINDINGS_PLACE = "dig-findings";

const PLACES: readonly { kind: PlaceKind; name: string }[] = [
  { kind: "tank", name: words.digLeaf.tank },
  { kind: "pad", name: words.digLeaf.pad },
  { kind: "trench", name: words.digLeaf.trench },
  { kind: "field", name: words.drawing.kinds.field },
  { kind: "bed", name: words.digLeaf.raisedBed },
  { kind: "building", name: words.digLeaf.building },
  { kind: "strip", name: words.digLeaf.topsoilStrip },
];

/** The buttons that start placing. */
export function PlaceButtons(): ReactNode {
  const start = useDesk((desk) => desk.startPlacing);
  return (
    <div className="place-row" role="group" aria-label={words.digLeaf.placeNewWork}>
      <span className="soft">{words.digLeaf.placeA}</span>
      {PLACES.map(({ kind, name }) => (
        <span key={kind} className="place-row">
          <button type="button" className="link" onClick={() => start(kind)}>
            {name}
          </button>
        </span>
      ))}
    </div>
  );
}

/** The heading of the work that is picked; comes into sight when it is picked elsewhere. */
function WorkHeading({ name }: { name: string }): ReactNode {
  const heading = useRef<HTMLHeadingElement>(null);
  useIntoSight(heading);
  return (
    <h2 ref={heading} className="work-heading">
      {name}
    </h2>
  );
}

/** The works in building order, the one that is picked with its form, and the whole dig. */
export function DigLeaf(): ReactNode {
  const { site, schemeId, estimate } = useSite();
  const selected = useDesk((desk) => desk.selected);
  const works = site.schemes.find((scheme) => scheme.id === schemeId)?.works ?? [];
  const things = usePicked();
  const work = works.find(
    (one) => things.length < 2 && selected?.kind === "work" && one.id === selected.id,
  );
  const about = work === undefined ? ["site", ...works.flatMap(idsOf)] : idsOf(work);
  const findings = findingsAt(estimate?.findings, about);
  return (
    <>
      {works.length === 0 ? (
        <Empty title={words.book.empty.digTitle} text={words.book.empty.dig}>
          <PlaceButton kind="tank" text={words.book.empty.placeTank} />
        </Empty>
      ) : (
        <WorkList works={works} />
      )}
      <PlaceButtons />
      {things.length > 1 && <SeveralForm things={things} />}
      {work !== undefined && (
        <>
          <WorkHeading key={`head ${work.id}`} name={work.name} />
          <FindingsAhead findings={findings} to={FINDINGS_PLACE} />
          <WorkForm key={work.id} work={work} />
          <WorkWater work={work} />
        </>
      )}
      {work !== undefined && <HoleTable key={`hole ${work.id}`} work={work} />}
      <DigQuantities work={work ?? null} />
      <div id={FINDINGS_PLACE}>
        <Findings
          findings={work === undefined ? findings : findings.filter((one) => one.level !== "stop")}
        />
      </div>
    </>
  );
}
