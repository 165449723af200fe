import {
  Component,
  useEffect,
  useMemo,
  useRef,
  useState,
  type ReactElement,
  type ReactNode,
  type RefObject,
} from "react";
import {
  foundContours,
  foundPicture,
  foundShape,
  hasCome,
  stagePatch,
  type Stage,
} from "../estimate/index.js";
import { materialsOf } from "../site/index.js";
import { sceneFrame } from "./frame.js";
import { depthBands } from "./depthBands.js";
import type { PlanPoint } from "../site/index.js";
import { Handles } from "./Handles.js";
import { HeldDrag } from "./heldDrag.js";
import { Labels } from "./Labels.js";
import { useLimitMarks } from "./useLimitMarks.js";
import { LadderLabels } from "./LadderLabels.js";
import { machineAtWork } from "./machinesAtWork.js";
import { scenePalette } from "./palette.js";
import type { CranePlace, SiteSceneProps } from "./props.js";
import "./scene.css";
import "./picked.css";
import "./drawing.css";
import { SceneCanvas } from "./SceneCanvas.js";
import { SceneCorner } from "./SceneCorner.js";
import type { SceneContents } from "./sceneTargets.js";
import { createSceneView, type SceneView } from "./sceneView.js";
import { shownWorks } from "./shown.js";
import { GroundFigures, ShownOver } from "./ShownOver.js";
import { withDraft, type StandDraft } from "./StandHandles.js";
import { stageGround } from "./stageGround.js";
import { useFraming } from "./useFraming.js";
import { WalkPad } from "./WalkPad.js";
import { words } from "../words/index.js";
import type { DrawnDraft } from "./PlacingMarks.js";
import { useWater, type WaterTool } from "./useWater.js";
import { useMeasuring, type MeasureTool } from "./useMeasuring.js";
import { ToolNotes } from "./ToolNotes.js";
import { usePlacing } from "./usePlacing.js";
import { isDrawing, useSection } from "./useSection.js";
import { WorkingNote } from "./WorkingNote.js";
import { useScenePointer } from "./useScenePointer.js";

/**
 * The site in three dimensions and in plan, at one stage of the job: looking, picking, placing and
 * dragging. It keeps no document: all that it shows comes in by its props, all edits go out by them.
 */
export function SiteScene(props: SiteSceneProps): ReactElement {
  const { placing, theme } = props;
  const root = useRef<HTMLDivElement>(null);
  const [view] = useState(createSceneView);
  const [lost, setLost] = useState(false);
  const [drawable] = useState(canDraw);
  const { contents, materials, ...drawn } = useContents(props);
  const { lines } = drawn;
  const tool = usePlacing(placing, props.onPlace);
  const measure = useMeasuring(props.measuring);
  const water = useWater(props.watering, contents.site);
  const section = useSection(props.section, props.onSectionTap);
  const [asked, setAsked] = useState<PlanPoint | null>(null);
  const frameIt = useFraming(view, contents, props);
  const [held] = useState(() => new HeldDrag());
  const startPress = useScenePointer({
    ...{ root, view, contents, props, placing: tool, section, held, onFrame: frameIt },
    measure: water.isSetting ? water : measure,
    onGround: setAsked,
  });
  const drawing = isDrawing(props.section) || measure.isSetting || water.isSetting;
  const taking = placing !== null || props.measuring || props.watering;
  useFrameCount(root, view);
  useEffect(() => {
    // So that Enter, Space and the arrows reach the scene and not the button that began the placing.
    if (taking) root.current?.focus({ preventScroll: true });
  }, [placing, taking]);
  const [stands, setStandDraft] = useStands(props.cranePlaces, contents);
  return (
    <div
      ref={root}
      className="scene"
      data-testid="scene"
      data-theme={theme}
      data-placing={
        measure.isSetting || water.isSetting ? "measure" : drawing ? "section" : placing?.kind
      }
      role="region"
      aria-label={words.scene.groundWorksAllShows(
        props.site.name,
        props.view === "plan" ? words.scene.plan : words.scene.threeDimensions,
        props.view === "walk" ? `, ${words.looking.onFoot}` : "",
      )}
      tabIndex={-1}
    >
      {drawable && (
        <ErrorBox>
          <div className="scene-canvas" aria-hidden="true">
            <SceneCanvas
              {...{ props, contents, materials, view, stands }}
              {...drawn}
              palette={scenePalette(theme)}
              draft={tool.draft ?? measuredLine(measure) ?? aimedPlace(water)}
              ways={water.ways}
              sectionHover={section.hover}
              onLost={setLost}
            />
          </div>
          <div className="scene-over">
            <GroundFigures {...{ props, lines, contents, view }} />
            {props.stage === "dug" && <LadderLabels {...{ contents, view }} />}
            <Labels
              {...{ contents, view, startPress }}
              idle={placing !== null || drawing}
              selected={props.selected}
              also={props.also}
              onSelect={props.onSelect}
            />
            <ShownOver
              {...{ props, contents, view, stands }}
              {...drawn}
              idle={placing !== null || drawing}
              onDraft={setStandDraft}
            />
            {placing === null && (
              <Handles {...{ contents, view, startPress, props, held }} selected={props.selected} />
            )}
            <SceneCorner
              units={props.site.units}
              frame={contents.frame}
              view={view}
              kind={props.view}
              onFrame={props.selected === null ? null : () => frameIt()}
            />
            {props.view === "walk" && (
              <WalkPad
                {...{ view }}
                busy={placing !== null || drawing}
                onStop={props.onStopWalking}
              />
            )}
            <ToolNotes
              {...{ props, contents, view, tool, section, measure, water, held, asked }}
              onClose={() => setAsked(null)}
            />
          </div>
        </ErrorBox>
      )}
      {props.working !== null && (
        <WorkingNote fault={props.working.fault} onAgain={props.onWorkAgain} />
      )}
      {(!drawable || lost) && <NoPicture lost={lost} />}
    </div>
  );
}

/** The places of the crane, one of them perhaps being dragged, and what tells of that. */
function useStands(places: readonly CranePlace[], contents: SceneContents) {
  const [draft, setDraft] = useState<StandDraft | null>(null);
  const stands = useMemo(() => withDraft(places, draft, contents), [places, draft, contents]);
  return [stands, setDraft] as const;
}

/** What is measured is drawn as a line that is being placed. */
function measuredLine({ state, hover }: MeasureTool): DrawnDraft | null {
  return state && { placing: { kind: "trench" }, corners: state.points, hover };
}

/** Where the next way of water begins: the mark alone. */
function aimedPlace({ isSetting, hover }: WaterTool): DrawnDraft | null {
  return isSetting ? { placing: { kind: "trench" }, corners: [], hover } : null;
}

/** Meshes and grounds of the site, each made anew only when what it comes from changed. */
function useContents(props: SiteSceneProps) {
  const { site, schemeId, estimate, stage, patch: given, looks } = props;
  const { survey, ground: layers, materials: own, units } = site;
  const frame = useMemo(() => sceneFrame(site), [survey]); // eslint-disable-line react-hooks/exhaustive-deps
  // The ground as found follows survey and probes alone: an edit of a work keeps it.
  // eslint-disable-next-line react-hooks/exhaustive-deps
  const picture = useMemo(() => foundPicture(site), [survey, layers]);
  // eslint-disable-next-line react-hooks/exhaustive-deps
  const shape = useMemo(() => foundShape(site), [survey]);
  const patch = useMemo(
    () => given ?? stagePatch(site, schemeId, stage),
    [given, site, schemeId, stage],
  );
  const within = looks.through && given === null ? insideStage(stage) : null;
  const inner = useMemo(
    () => (within === null ? null : stagePatch(site, schemeId, within)),
    [site, schemeId, within],
  );
  const bands = useMemo(
    () => (looks.depths ? depthBands(patch, units) : null),
    [looks.depths, patch, units],
  );
  const found = useMemo(() => stageGround(shape, null, frame.origin), [shape, frame]);
  const ground = useMemo(
    () => (stage === "found" ? found : stageGround(shape, patch, frame.origin)),
    [shape, patch, stage, found, frame],
  );
  const materials = useMemo(() => materialsOf(site), [own]); // eslint-disable-line react-hooks/exhaustive-deps
  const contents = useMemo((): SceneContents => {
    const scheme = site.schemes.find((one) => one.id === schemeId);
    const works = shownWorks(scheme?.works ?? []);
    return { site, works, estimate, stage, frame, found, ground, fixed: props.fixed };
  }, [site, schemeId, estimate, stage, frame, found, ground, props.fixed]);
  // Contours follow the survey alone, so an edit of a work keeps them.
  const lines = useMemo(
    () => foundContours(site, looks.contourStep),
    [survey, units, looks.contourStep], // eslint-disable-line react-hooks/exhaustive-deps
  );
  const picked = props.selected?.kind === "work" ? props.selected.id : null;
  const machine = useMemo(
    () => (looks.machines ? machineAtWork(contents, schemeId, picked) : null),
    [looks.machines, contents, schemeId, picked],
  );
  const limitMarks = useLimitMarks(contents, schemeId, props);
  return { contents, picture, patch, inner, machine, bands, limitMarks, materials, lines };
}

/**
 * The stage whose holes lie in the ground of a stage: those to be dug before there are any, and those
 * that were filled again; null where the holes stand open.
 */
function insideStage(stage: Stage): Stage | null {
  if (!hasCome(stage, "dug")) return "dug";
  return hasCome(stage, "zone") ? "set" : null;
}

/**
 * Counts the frames drawn on the root itself, where tests wait for them, with the cut that the
 * frame shows, so that a test can hold it against the figures; renders nothing.
 */
function useFrameCount(root: RefObject<HTMLDivElement | null>, view: SceneView): void {
  useEffect(() => {
    const element = root.current;
    let frames = Number(element?.dataset["frames"] ?? 0);
    return view.subscribe(() => {
      frames += 1;
      element?.setAttribute("data-frames", String(frames));
      element?.setAttribute("data-drawn-cut", String(view.drawnCut));
    });
  }, [root, view]);
}

/** True when this browser can make a WebGL 2 picture. */
export function canDraw(): boolean {
  const context = document.createElement("canvas").getContext("webgl2");
  context?.getExtension("WEBGL_lose_context")?.loseContext();
  return context !== null;
}

function NoPicture({ lost }: { lost: boolean }): ReactElement {
  return (
    <div className="scene-missing" role="alert" data-testid="scene-missing">
      <h2>{lost ? words.scene.pictureWasInterrupted : words.scene.no3dPictureDevice}</h2>
      <p>{lost ? words.scene.graphicsChipLetGo : words.scene.browserLacksWebgl}</p>
    </div>
  );
}

/** Keeps a fault in the picture from taking the page with it. */
class ErrorBox extends Component<{ children: ReactNode }, { fault: Error | null }> {
  override state: { fault: Error | null } = { fault: null };
  static getDerivedStateFromError(fault: Error): { fault: Error } {
    return { fault };
  }
  override render(): ReactNode {
    const { fault } = this.state;
    if (fault === null) return this.props.children;
    return (
      <div className="scene-missing" role="alert" data-testid="scene-missing">
        <h2>{words.scene.pictureCouldNotDrawn}</h2>
        <p>{words.scene.figuresTablesNotTouched(fault.message)}</p>
      </div>
    );
  }
}
