import { useLayoutEffect, useMemo, useRef, useState } from "react";
import type { ReactNode, RefObject } from "react";
import { sectionAlong, STAGE_NAMES } from "../estimate/index.js";
import type { Section, Stage } from "../estimate/index.js";
import type { PlanPoint, Site } from "../site/index.js";
import { nameOfMaterial } from "../sheets/index.js";
import { distance } from "../units/index.js";
import { words } from "../words/index.js";
import { EarthPatterns, patternId } from "./EarthPatterns.js";
import { fitSection, type Frame, type SectionFit } from "./fit.js";
import { SectionDrawing } from "./SectionDrawing.js";
import { SectionTable } from "./SectionTable.js";

type Line = readonly [PlanPoint, PlanPoint];

const MARGIN = { left: 64, right: 16, top: 8, bottom: 24 };

/** Stretches of heights to choose from; 0 is whatever fits. */
const CHOICES = [0, 1, 2, 5, 10];

export interface SectionSheetProps {
  site: Site;
  schemeId: string;
  stage: Stage;
  line: Line;
  /** The line was turned end for end. */
  onMove: (line: Line) => void;
  /** Puts the section away. */
  onClose: () => void;
}

/** The ground cut open along a line at one stage: its drawing, its key and the figures behind it. */
export function SectionSheet(props: SectionSheetProps): ReactNode {
  const { site, schemeId, stage, line, onMove, onClose } = props;
  const [chosen, setChosen] = useState(0);
  const [figures, setFigures] = useState(false);
  const place = useRef<HTMLDivElement>(null);
  const { width, height } = useSizeOf(place);
  const frame: Frame = {
    left: MARGIN.left,
    top: MARGIN.top,
    width: Math.max(40, width - MARGIN.left - MARGIN.right),
    height: Math.max(40, height - MARGIN.top - MARGIN.bottom),
  };
  const drawn = useSection({ site, schemeId, stage, line, chosen, frame });
  const { section, fit } = drawn;
  const shown = [...section.areas, ...section.standing];
  const materials = [...new Set(shown.map((each) => each.material))];
  const nameOf = (material: string): string => nameOfMaterial(site, material);
  return (
    <section
      className="section-panel"
      aria-label={words.sectionPanel.section}
      data-testid="section-panel"
      data-stage={stage}
      data-line={JSON.stringify(line)}
      data-datum={section.datum}
      data-stretch={fit.stretch}
    >
      <header className="section-head">
        <h2>
          <span>{words.sectionPanel.section} </span>A–B
        </h2>
        <p>
          {distance.print(section.length, site.units)}, {STAGE_NAMES[stage]},{" "}
          <b>{words.sectionPanel.heights(fit.stretch)}</b>
        </p>
        <select
          aria-label={words.sectionPanel.stretchOfHeights}
          value={chosen}
          onChange={(event) => setChosen(Number(event.target.value))}
        >
          {CHOICES.map((each) => (
            <option key={each} value={each}>
              {each === 0 ? words.sectionPanel.fit : `× ${each}`}
            </option>
          ))}
        </select>
        <button
          type="button"
          className="button"
          aria-pressed={figures}
          title={words.sectionPanel.figuresBehindDrawing}
          onClick={() => setFigures(!figures)}
        >
          {words.sectionPanel.figures}
        </button>
        <button
          type="button"
          className="button"
          aria-label={words.sectionPanel.swapEndsB}
          title={words.sectionPanel.lookFromOtherSide}
          onClick={() => onMove([line[1], line[0]])}
        >
          A ⇄ B
        </button>
        <button
          type="button"
          className="round"
          aria-label={words.sectionPanel.closeTheSection}
          onClick={onClose}
        >
          ×
        </button>
      </header>
      <div className="section-place" ref={place}>
        {section.areas.length === 0 ? (
          <p className="section-empty">{words.sectionPanel.lineLiesBeyondSurvey}</p>
        ) : (
          width > 0 && (
            <SectionDrawing {...{ site, section, fit, frame, width, height, materials, nameOf }} />
          )
        )}
        {figures && section.areas.length > 0 ? (
          <SectionTable {...{ site, section, nameOf }} />
        ) : (
          <>
            <span className="section-end-mark start">A</span>
            <span className="section-end-mark end">B</span>
          </>
        )}
      </div>
      <Key {...{ site, section, materials, nameOf }} />
    </section>
  );
}

interface SectionInput {
  site: Site;
  schemeId: string;
  stage: Stage;
  line: Line;
  /** Stretch of heights that was chosen; 0 for whatever fits. */
  chosen: number;
  frame: Frame;
}

/** The section down to the foot of its drawing, and how it fits there. */
function useSection(input: SectionInput): { section: Section; fit: SectionFit } {
  const { site, schemeId, stage, line, chosen, frame } = input;
  const [[ax, ay], [bx, by]] = line;
  // The line's places by value: a line that is the same needs no new section.
  const ends = useMemo(
    (): Line => [
      [ax, ay],
      [bx, by],
    ],
    [ax, ay, bx, by],
  );
  // The scale is that of the deepest and the fullest stage: it must not jump with the slider.
  const extremes = useMemo(
    () => FITTED.map((each) => sectionAlong(site, schemeId, each, ends)),
    [site, schemeId, ends],
  );
  const highest = Math.max(...extremes.map(highestOf));
  const lowest = Math.min(highest, ...extremes.map((each) => each.datum));
  const length = extremes[0]?.length ?? 1;
  const fit = fitSection(length, { lowest, highest }, frame, chosen === 0 ? null : chosen);
  const { bottom } = fit;
  const section = useMemo(
    () => sectionAlong(site, schemeId, stage, ends, bottom),
    [site, schemeId, stage, ends, bottom],
  );
  return { section, fit };
}

const FITTED: readonly Stage[] = ["dug", "backfilled"];

/** Elevation of the highest ground, filling, wall or building, m. */
function highestOf({ surface, found, standing, datum }: Section): number {
  let highest = datum;
  for (const line of [...surface, ...found, ...standing.map((each) => each.outline)]) {
    for (const [, z] of line) highest = Math.max(highest, z);
  }
  return highest;
}

function Key(props: {
  site: Site;
  section: Section;
  materials: readonly string[];
  nameOf: (material: string) => string;
}): ReactNode {
  const { site, section, materials, nameOf } = props;
  const changed = section.stage !== "found";
  return (
    <ul className="section-key">
      {materials.map((material) => (
        <li key={material}>
          <svg width="22" height="14" aria-hidden="true">
            <EarthPatterns site={site} materials={materials} />
            <rect width="22" height="14" fill={`url(#${patternId(material)})`} />
          </svg>
          {nameOf(material)}
        </li>
      ))}
      {changed && (
        <li>
          <svg width="22" height="14" aria-hidden="true">
            <path className="section-found" d="M0 7H22" />
          </svg>
          {words.sectionPanel.groundAsFound}
        </li>
      )}
    </ul>
  );
}

/** Size of an element, CSS px; zero before it is laid out. */
function useSizeOf(element: RefObject<HTMLElement | null>): { width: number; height: number } {
  const [size, setSize] = useState({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const found = element.current;
    if (found === null) return undefined;
    const note = (): void => setSize({ width: found.clientWidth, height: found.clientHeight });
    note();
    const watch = new ResizeObserver(note);
    watch.observe(found);
    return () => watch.disconnect();
  }, [element]);
  return size;
}
