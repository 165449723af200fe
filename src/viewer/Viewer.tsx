import { useMemo, useRef, useState } from "react";
import type { ReactNode } from "react";
import { StageSlider, useMedia } from "../drawn/index.js";
import { estimate as estimateOf, schemeOf, surveyProblem } from "../estimate/index.js";
import type { Estimate, Stage } from "../estimate/index.js";
import { problemLine } from "../site/index.js";
import type { Site, SiteProblem } from "../site/index.js";
import { isWithout, leftOutLines } from "../handover/index.js";
import { canDraw } from "../scene/index.js";
import type { Selection } from "../scene/index.js";
import { words } from "../words/index.js";
import { CostTable } from "./CostTable.js";
import { DrawnView } from "./DrawnView.js";
import { Figures } from "./Figures.js";
import { FindingList } from "./FindingList.js";
import type { Given } from "./givenSite.js";
import { Quantities } from "./Quantities.js";
import { sectionLines } from "./sectionLines.js";
import type { Line } from "./sectionLines.js";
import { useTheme } from "./useTheme.js";
import { ViewerBar } from "./ViewerBar.js";
import { ViewerHead } from "./ViewerHead.js";
import { ViewerScene } from "./ViewerScene.js";
import { ViewerSection } from "./ViewerSection.js";

/** The page that shows one site and changes nothing of it. */
export function Viewer({ given }: { given: Given }): ReactNode {
  const { site } = given;
  const survey = useMemo(() => (site.ok ? surveyProblem(site.value) : null), [site]);
  if (!site.ok) return <Unreadable problems={site.problems} />;
  if (survey !== null) return <Unreadable problems={[survey]} />;
  return <Plan {...given} site={site.value} />;
}

function Unreadable({ problems }: { problems: readonly SiteProblem[] }): ReactNode {
  return (
    <main className="viewer-fault" role="alert">
      <h1>{words.viewer.badSite}</h1>
      <p>{words.viewer.badSiteSays}</p>
      <ul>
        {problems.slice(0, 5).map((problem) => (
          <li key={problemLine(problem)}>{problemLine(problem)}</li>
        ))}
      </ul>
    </main>
  );
}

/** The estimate of a scheme, or why there is none. */
function useEstimate(site: Site, schemeId: string): { estimate: Estimate } | { fault: string } {
  return useMemo(() => {
    try {
      return { estimate: estimateOf(site, schemeId) };
    } catch (fault) {
      return { fault: fault instanceof Error ? fault.message : String(fault) };
    }
  }, [site, schemeId]);
}

function Plan({ site, schemeId: first, madeAt }: Omit<Given, "site"> & { site: Site }): ReactNode {
  const [schemeId, setSchemeId] = useState(
    () => (site.schemes.find(({ id }) => id === first) ?? site.schemes[0]!).id,
  );
  const [theme, setTheme] = useTheme();
  const [selected, setSelected] = useState<Selection | null>(null);
  const [frameAsked, setFrameAsked] = useState(0);
  const look = useRef<HTMLElement>(null);
  const made = useEstimate(site, schemeId);
  const fly = ({ kind, id }: Selection): void => {
    setSelected({ kind, id });
    setFrameAsked((count) => count + 1);
    look.current?.scrollIntoView({ block: "nearest" });
  };
  return (
    <div className="viewer">
      <ViewerHead
        {...{ site, schemeId, madeAt, theme }}
        onTheme={setTheme}
        onScheme={(id) => {
          setSchemeId(id);
          setSelected(null);
        }}
      />
      <main className="viewer-look" aria-label={words.viewer.look} ref={look}>
        <Look
          key={schemeId}
          {...{ site, schemeId, theme, selected, frameAsked }}
          estimate={"estimate" in made ? made.estimate : null}
          onSelect={setSelected}
        />
      </main>
      {"estimate" in made ? (
        <Leaf {...{ site, schemeId, madeAt }} estimate={made.estimate} onThing={fly} />
      ) : (
        <p className="viewer-fault" role="alert">
          {words.viewer.badFigures(made.fault)}
        </p>
      )}
    </div>
  );
}

interface LookProps {
  site: Site;
  schemeId: string;
  estimate: Estimate | null;
  theme: "light" | "dark";
  selected: Selection | null;
  frameAsked: number;
  onSelect: (selection: Selection | null) => void;
}

/** The picture at one stage, the section under it, and the five figures. */
function Look({ site, schemeId, estimate, ...shown }: LookProps): ReactNode {
  const [stage, setStage] = useState<Stage>("dug");
  const [view, setView] = useState<"orbit" | "plan">("orbit");
  const [shading, setShading] = useState({ depths: false, through: false });
  const [measuring, setMeasuring] = useState(false);
  const [line, setLine] = useState<Line>(
    () => sectionLines(site, schemeOf(site, schemeId))[0]!.line,
  );
  const [hasPicture] = useState(canDraw);
  // A drawing needs the room to be read.
  const [cutting, setCutting] = useState(hasPicture);
  const reducedMotion = useMedia("(prefers-reduced-motion: reduce)");
  return (
    <>
      <div className="stagehand">
        <div className="fills">
          {hasPicture ? (
            <ViewerScene
              {...{ site, schemeId, estimate, stage, view, shading, measuring, reducedMotion }}
              {...shown}
              section={cutting ? line : null}
              onSection={setLine}
              onMeasureEnd={() => setMeasuring(false)}
            />
          ) : (
            <DrawnView {...{ site, schemeId, estimate, stage, view }} />
          )}
        </div>
        <ViewerBar
          {...{ hasPicture, view, cutting, measuring, shading }}
          onView={setView}
          onCutting={setCutting}
          onMeasuring={setMeasuring}
          onShading={setShading}
        />
        <StageSlider stage={stage} onStage={setStage} />
      </div>
      {cutting && (
        <ViewerSection
          {...{ site, schemeId, stage, line }}
          onMove={setLine}
          onClose={() => setCutting(false)}
        />
      )}
      {estimate !== null && <Figures {...{ site, estimate }} />}
    </>
  );
}

interface LeafProps {
  site: Site;
  schemeId: string;
  madeAt: string;
  estimate: Estimate;
  onThing: (thing: Selection) => void;
}

/** All that is written: findings, cautions, quantities, cost. */
function Leaf({ site, schemeId, estimate, onThing }: LeafProps): ReactNode {
  const said = words.viewer;
  const hasCosts = !isWithout(site, "costs");
  return (
    <div className="viewer-leaf leaf-body">
      <nav className="viewer-ways" aria-label={said.parts}>
        {LEAF_PARTS.filter(([id]) => id !== "cost" || hasCosts).map(([id, name]) => (
          <a key={id} className="button" href={`#${id}`}>
            {name}
          </a>
        ))}
      </nav>
      {site.notes !== undefined && <p className="says">{site.notes}</p>}
      <p className="says">{said.estimateOnly}</p>
      {leftOutLines(site).map((line) => (
        <p className="says" key={line} data-left-out="">
          {line}
        </p>
      ))}
      <FindingList {...{ site, schemeId, estimate, onThing }} />
      <section aria-labelledby="cautions">
        <h2 id="cautions">{words.leaf.beforeYouDig}</h2>
        <p className="says">{words.desk.localCodesPermitCompetent}</p>
        <ul className="caution-list">
          {estimate.cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </section>
      <Quantities {...{ site, estimate }} onWork={(id) => onThing({ kind: "work", id })} />
      {hasCosts && <CostTable {...{ site, estimate }} />}
      <section aria-labelledby="about">
        <h2 id="about">{said.about}</h2>
        <p className="says">{said.aboutSays}</p>
      </section>
    </div>
  );
}

const LEAF_PARTS = [
  ["findings", words.viewer.findings],
  ["cautions", words.leaf.beforeYouDig],
  ["quantities", words.viewer.quantities],
  ["cost", words.viewer.cost],
] as const;
