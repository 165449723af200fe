import { useEffect, useState } from "react";
import type { ReactNode } from "react";
import { STAGE_NAMES } from "../estimate/index.js";
import type { Estimate, Stage } from "../estimate/index.js";
import { viewSvg } from "../handover/index.js";
import type { Site } from "../site/index.js";
import { words } from "../words/index.js";

interface Props {
  site: Site;
  schemeId: string;
  estimate: Estimate | null;
  stage: Stage;
  view: "orbit" | "plan";
}

/** Degrees clockwise from north that the slanted view looks along at first, and turns by. */
const FIRST_BEARING = 20;
const TURN = 45;
const SLANT = { dip: 36 } as const;
const FROM_ABOVE = { bearing: 0, dip: 90 } as const;
/** ms that a choice rests before it is drawn, so that pulling the slider draws its end alone. */
const REST = 120;

const says = words.viewer.drawn;

/** What is shown: a drawing, what it is of, or why there is none. */
type Drawn = { of: string; src: string } | { of: string; fault: string };

/** The site where a browser makes no picture in three dimensions: the same stages, drawn in lines. */
export function DrawnView({ site, schemeId, estimate, stage, view }: Props): ReactNode {
  const [turned, setTurned] = useState(FIRST_BEARING);
  const [isLarge, setLarge] = useState(false);
  const [drawn, setDrawn] = useState<Drawn | null>(null);
  const name = says.alt(site.name, STAGE_NAMES[stage], view === "plan");
  const of = `${schemeId} ${stage} ${view} ${view === "plan" ? "" : turned}`;
  useEffect(() => {
    if (estimate === null) return undefined;
    const rest = setTimeout(() => {
      const camera = view === "plan" ? FROM_ABOVE : { ...SLANT, bearing: turned };
      try {
        const job = { site, schemeId, estimate, madeAt: "" };
        const svg = viewSvg(job, stage, { camera: { kind: "parallel", ...camera } });
        setDrawn({ of, src: `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}` });
      } catch (fault) {
        setDrawn({ of, fault: fault instanceof Error ? fault.message : String(fault) });
      }
    }, REST);
    return () => clearTimeout(rest);
  }, [site, schemeId, estimate, stage, view, turned, of]);
  const isComing = estimate !== null && drawn?.of !== of;
  return (
    <div className="drawn-view" data-testid="drawn-view" data-large={isLarge ? "" : undefined}>
      <div className="drawn-tools">
        {view === "orbit" && (
          <>
            <button type="button" className="button" onClick={() => setTurned(turned - TURN)}>
              {says.left}
            </button>
            <button type="button" className="button" onClick={() => setTurned(turned + TURN)}>
              {says.right}
            </button>
          </>
        )}
        <button type="button" className="button" onClick={() => setLarge(!isLarge)}>
          {isLarge ? says.whole : says.larger}
        </button>
        <p className="soft" role="status">
          {isComing ? says.coming : says.why}
        </p>
      </div>
      {drawn !== null && "fault" in drawn && <p role="alert">{says.fault(drawn.fault)}</p>}
      {drawn !== null && "src" in drawn && (
        <div className="drawn-paper" tabIndex={0} role="region" aria-label={name}>
          <img src={drawn.src} alt={name} data-of={drawn.of} />
        </div>
      )}
    </div>
  );
}
