import type { ReactNode } from "react";
import { useDesk } from "../../store/index.js";
import { setTolerance } from "../../site/index.js";
import { elevation, size } from "../../units/index.js";
import { words } from "../../words/index.js";
import { MeasureField } from "../fields/MeasureField.js";
import { Empty, PlaceButton } from "../Empty.js";
import { Findings, findingsAt } from "../Findings.js";
import { useEdit, useSite } from "../useSite.js";
import { MarkWords } from "../dig/MarkButtons.js";
import { MarkedRow } from "../dig/MarkedRow.js";
import { SeveralForm, usePicked } from "../dig/SeveralForm.js";
import { EarthFile } from "../limits/EarthFile.js";
import { LotLines } from "../limits/LotLines.js";
import { Setbacks } from "../limits/Setbacks.js";
import { DrawingFields } from "./DrawingFields.js";
import { LayerFields } from "./LayerFields.js";
import { LimitList } from "./LimitList.js";
import { PointForm } from "./PointForm.js";
import { ProbeForm } from "./ProbeForm.js";
import { SiteWater } from "../water/SiteWater.js";
import { Term } from "../book/Term.js";

function Probes(): ReactNode {
  const { site } = useSite();
  const selected = useDesk((desk) => desk.selected);
  const start = useDesk((desk) => desk.startPlacing);
  const alone = useDesk((desk) => desk.also.length === 0);
  const { probes } = site.ground;
  const picked = probes.find(
    (one) => alone && selected?.kind === "probe" && one.id === selected.id,
  );
  return (
    <>
      <h2>
        <Term id="probe">{words.surveyLeaf.probes}</Term>{" "}
        <span className="aside">{words.surveyLeaf.whatUnderGround}</span>
      </h2>
      {probes.length === 0 && (
        <Empty
          title={words.book.empty.probesTitle}
          text={words.book.empty.probes(
            site.ground.layers.at(-1)?.name.toLowerCase() ?? words.book.empty.oneLayer,
          )}
        >
          <PlaceButton kind="probe" text={words.book.empty.placeProbe} />
        </Empty>
      )}
      <ul className="rows">
        {probes.map((probe) => (
          <li key={probe.id}>
            <MarkedRow thing={{ kind: "probe", id: probe.id }} name={probe.id} of={probe}>
              <span aria-hidden="true">⌄</span>
              <span className="text">
                {probe.id}
                {probe.note !== undefined && <span className="soft"> {probe.note}</span>}
                <MarkWords of={probe} />
              </span>
            </MarkedRow>
            {picked === probe && <ProbeForm key={probe.id} probe={probe} />}
          </li>
        ))}
      </ul>
      {probes.length > 0 && (
        <div className="place-row">
          <button type="button" className="link" onClick={() => start("probe")}>
            {words.surveyLeaf.placeAProbe}
          </button>
        </div>
      )}
    </>
  );
}

/** m: what holds until the person says otherwise. Common practice, no source. */
const USUAL_TOLERANCE = 0.001;
/** m: a survey by hand sets points farther apart than this. Common practice, no source. */
const COARSE_TOLERANCE = 0.1;

/** How near two points must be to be taken as one that was measured twice. */
function ToleranceField(): ReactNode {
  const { site } = useSite();
  const edit = useEdit();
  return (
    <MeasureField
      label={words.surveyLeaf.samePointWithin}
      name="tolerance"
      value={site.survey.tolerance}
      measure={size}
      print={{ digits: site.units === "us" ? 2 : 0 }}
      least={0}
      above
      onCommit={(tolerance) =>
        edit(words.surveyLeaf.toleranceEdit, (now) => setTolerance(now, tolerance))
      }
      onClear={() => edit(words.surveyLeaf.toleranceEdit, (now) => setTolerance(now, null))}
      usual={USUAL_TOLERANCE}
      typical={{ value: USUAL_TOLERANCE, source: words.forms.noSource }}
      note={words.forms.samePoint}
      doubt={(tolerance) =>
        tolerance > COARSE_TOLERANCE
          ? words.surveyLeaf.allPointsNearerThan(size.print(tolerance, site.units))
          : null
      }
    />
  );
}

function Points(): ReactNode {
  const { site } = useSite();
  const selected = useDesk((desk) => desk.selected);
  const select = useDesk((desk) => desk.select);
  const { points } = site.survey;
  const picked = points.find((one) => selected?.kind === "point" && one.id === selected.id);
  const heights = points.map((point) => point.z);
  const range = words.surveyLeaf.fromTo(
    elevation.print(Math.min(...heights), site.units),
    elevation.print(Math.max(...heights), site.units),
  );
  return (
    <>
      <h2>{words.surveyLeaf.points}</h2>
      <p className="says">{words.surveyLeaf.spotHeights(points.length, range)}</p>
      <ToleranceField />
      {picked !== undefined && (
        <>
          <h3>{words.surveyLeaf.point(picked.id)}</h3>
          <PointForm key={picked.id} point={picked} />
        </>
      )}
      <details className="working">
        <summary>
          <span className="text">{words.surveyLeaf.allPoints}</span>
        </summary>
        <ul className="rows">
          {points.map((point) => (
            <li key={point.id}>
              <button
                type="button"
                className="row"
                aria-pressed={picked === point}
                onClick={() => select({ kind: "point", id: point.id })}
              >
                <span aria-hidden="true">+</span>
                <span className="text">
                  {point.id}
                  {point.note !== undefined && <span className="soft"> {point.note}</span>}
                </span>
                <span className="amount">{elevation.print(point.z, site.units)}</span>
              </button>
            </li>
          ))}
        </ul>
      </details>
    </>
  );
}

/** Findings about the site as a whole that other leaves show. */
const OTHER_LEAVES = /^(cost|machines?|rental|loads|price|lift|days)\b/;

/** The ground as measured: what is odd in it, its points, probes, layers and limits. */
export function SurveyLeaf(): ReactNode {
  const { site, estimate } = useSite();
  const show = useDesk((desk) => desk.show);
  const things = usePicked();
  const ids = [
    "site",
    "survey",
    ...site.survey.points.map((point) => point.id),
    ...site.ground.probes.map((probe) => probe.id),
    ...(site.limits ?? []).map((limit) => limit.id),
  ];
  return (
    <>
      <div className="place-row">
        <button type="button" className="link" onClick={() => show({ starting: true })}>
          {words.surveyLeaf.startMyOwnSite}
        </button>
      </div>
      <Findings
        findings={findingsAt(estimate?.findings, ids).filter((one) => !OTHER_LEAVES.test(one.code))}
      />
      {things.length > 1 && <SeveralForm things={things} />}
      <Probes />
      <LayerFields />
      <Points />
      <LimitList />
      <LotLines />
      <EarthFile />
      <Setbacks />
      <SiteWater />
      <DrawingFields />
    </>
  );
}
