import { Canvas, useFrame, useThree } from "@react-three/fiber";
import {
  useEffect,
  useLayoutEffect,
  useMemo,
  useState,
  useSyncExternalStore,
  type ReactElement,
} from "react";
import { NoToneMapping, Object3D, PCFShadowMap, setConsoleFunction } from "three";
import type { FoundContours, FoundPicture, StagePatch } from "../estimate/index.js";
import type { Material, PlanPoint } from "../site/index.js";
import { CameraRig } from "./CameraRig.js";
import { Contours } from "./Contours.js";
import { CranePlaces } from "./CranePlaces.js";
import type { DepthBands } from "./depthBands.js";
import { drape } from "./drape.js";
import { GroundSurface } from "./GroundSurface.js";
import { chainSegments, InkLines } from "./InkLines.js";
import type { MachineAtWork } from "./machinesAtWork.js";
import type { ScenePalette } from "./palette.js";
import { PictureTaker } from "./PictureTaker.js";
import { PlacingMarks, type DrawnDraft } from "./PlacingMarks.js";
import { ProbeMap } from "./ProbeMap.js";
import { ScenePictures } from "./ScenePictures.js";
import { SectionLine } from "./SectionLine.js";
import type { CranePlace, SiteSceneProps } from "./props.js";
import { SceneLight } from "./SceneLight.js";
import { idsAmong, shownLimits } from "./shown.js";
import { tankBodies, type SceneContents } from "./sceneTargets.js";
import type { SceneView } from "./sceneView.js";
import type { LimitMarksShown } from "./marksOfLimits.js";
import { LimitMarks } from "./LimitMarks.js";
import { ErosionBarrier } from "./works/ErosionBarrier.js";
import { LadderModels } from "./works/LadderModels.js";
import { LimitModels } from "./works/LimitModels.js";
import { ProbePins, SurveyCrosses } from "./works/ProbePins.js";
import type { ShownWay } from "./useWater.js";
import { WaterMarks } from "./WaterMarks.js";
import { MachineModel } from "./works/MachineModel.js";
import { WorkModels } from "./works/WorkModels.js";

// Once, before anything is made: z is up in the scene as it is in the file and the engine.
Object3D.DEFAULT_UP.set(0, 0, 1);

// fiber still makes the clock that three has put away, and three says so on every start: a word to
// fiber's authors, and noise to whoever looks in the console for our own faults. All else is passed on.
setConsoleFunction((type: "log" | "warn" | "error", message: string, ...rest: unknown[]) => {
  // eslint-disable-next-line no-console
  if (!message.startsWith("THREE.Clock: ")) console[type](message, ...rest);
});

interface SceneCanvasProps {
  props: SiteSceneProps;
  contents: SceneContents;
  picture: FoundPicture;
  patch: StagePatch;
  /** What of the works lies in the ground, where it is seen through. */
  inner: StagePatch | null;
  /** Bands of depth to be shown; null for earth in its own colours. */
  bands: DepthBands | null;
  /** Where the crane might stand, one of them perhaps being dragged. */
  stands: readonly CranePlace[];
  /** Setbacks and steep ground, where they are shown. */
  limitMarks: LimitMarksShown | null;
  /** The machine that stands at its work; null for none. */
  machine: MachineAtWork | null;
  lines: FoundContours;
  materials: ReadonlyMap<string, Material>;
  palette: ScenePalette;
  view: SceneView;
  draft: DrawnDraft | null;
  /** Ways of water that were asked for. */
  ways: readonly ShownWay[];
  /** Where the pointer is while a section's line is drawn. */
  sectionHover: PlanPoint | null;
  onLost: (lost: boolean) => void;
}

/** The one canvas of the app's life and all that is drawn in it; draws only when something changed. */
export function SceneCanvas(given: SceneCanvasProps): ReactElement {
  const [slot] = useState(() => new Slot(given));
  useLayoutEffect(() => slot.put(given), [slot, given]);
  // Made once: a canvas element that is rendered again sets the drawing buffer's size again.
  const [canvas] = useState(() => (
    <Canvas
      frameloop="demand"
      dpr={[1, 2]}
      shadows={{ type: PCFShadowMap }}
      gl={{ antialias: true, toneMapping: NoToneMapping, preserveDrawingBuffer: false }}
      resize={{ debounce: 0 }}
    >
      <SlotContent slot={slot} />
    </Canvas>
  ));
  return canvas;
}

/**
 * What is to be drawn, handed from the page to the canvas. Fiber takes new props of its canvas at
 * leisure, so that a drag would draw a frame behind the figures; a store that it reads through
 * `useSyncExternalStore` is taken up at once, within the same animation frame.
 */
class Slot {
  private readonly listeners = new Set<() => void>();

  constructor(private given: SceneCanvasProps) {}

  readonly read = (): SceneCanvasProps => this.given;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => void this.listeners.delete(listener);
  };

  put(given: SceneCanvasProps): void {
    if (given === this.given) return;
    this.given = given;
    for (const listener of this.listeners) listener();
  }
}

function SlotContent({ slot }: { slot: Slot }): ReactElement {
  return <SceneContent {...useSyncExternalStore(slot.subscribe, slot.read)} />;
}

function SceneContent(given: SceneCanvasProps): ReactElement {
  const { props, contents, picture, patch, lines, materials, palette, view, draft } = given;
  const { site, frame, found, ground, works, estimate, stage } = contents;
  const { through } = props.looks;
  const chosen = [props.selected, ...props.also];
  const chosenPin = props.selected?.kind === "work" ? null : (props.selected?.id ?? null);
  const lot = useMemo(
    () =>
      chainSegments(
        drape(
          frame.edge.map(([x, y]) => [x, y]),
          found,
          0.05,
          true,
        ),
        true,
      ),
    [frame, found],
  );
  const tanks = useMemo(() => tankBodies(contents), [contents]);
  const floor = useMemo(
    () => floorOf(picture, patch) + picture.origin[2] - frame.origin[2],
    [picture, patch, frame],
  );
  // A lot line that the site names is drawn dashed itself: then the edge of the block is plain.
  const named = (site.limits ?? []).some((limit) => limit.kind === "lot-line");
  return (
    <>
      <color attach="background" args={[palette.paper]} />
      <Redraw on={given} />
      <FrameMark view={view} cut={estimate?.earth.bank ?? NaN} onLost={given.onLost} />
      <PictureTaker onReady={props.onPictureReady} />
      {props.onShooterReady !== undefined && (
        <ScenePictures
          {...{ view, frame, stage }}
          theme={props.theme}
          kind={props.view}
          onReady={props.onShooterReady}
        />
      )}
      <CameraRig
        {...{ contents, floor, view }}
        kind={props.view}
        selected={props.selected}
        reducedMotion={props.reducedMotion}
      />
      <SceneLight frame={frame} palette={palette} shadows={props.shadows} />
      <GroundSurface
        found={picture}
        patch={patch}
        inner={given.inner}
        asFound={found}
        through={through}
        bands={given.bands}
        setbacks={given.limitMarks?.field ?? null}
        stage={stage}
        origin={frame.origin}
        materials={materials}
        palette={palette}
        view={view}
        tanks={tanks}
      />
      <Contours {...{ lines, ground, palette, through }} origin={frame.origin} />
      <InkLines
        segments={lot}
        colour={palette.lot}
        width={named ? 1.2 : 2}
        {...(named ? {} : { dash: frame.reach / 40 })}
      />
      <LimitModels
        {...{ frame, found, palette }}
        limits={shownLimits(site)}
        chosen={idsAmong(chosen, "limit")}
      />
      <WorkModels
        {...{ site, works, estimate, stage, frame, found, ground, materials, palette, view }}
        chosenIds={idsAmong(chosen, "work")}
        through={through}
      />
      {stage !== "found" && estimate !== null && (
        <ErosionBarrier lines={estimate.land.barriers} {...{ frame, palette }} />
      )}
      {stage === "dug" && <LadderModels {...{ estimate, frame, palette }} />}
      {given.machine !== null && <MachineModel machine={given.machine} palette={palette} />}
      {props.showProbes && (
        <ProbePins
          {...{ site, frame, found, materials, palette }}
          chosenIds={idsAmong(chosen, "probe")}
        />
      )}
      {(props.showPoints || props.looks.heights === "on") && (
        <SurveyCrosses site={site} frame={frame} palette={palette} selectedId={chosenPin} />
      )}
      {props.probeWorth !== null && (
        <ProbeMap {...{ frame, ground, palette }} worth={props.probeWorth} />
      )}
      {given.stands.length > 0 && (
        <CranePlaces {...{ frame, ground, palette }} places={given.stands} />
      )}
      {given.limitMarks !== null && (
        <LimitMarks {...{ frame, found, palette }} marks={given.limitMarks} />
      )}
      <WaterMarks {...{ frame, ground, palette }} ways={given.ways} drains={props.drains} />
      {props.section !== null && (
        <SectionLine
          {...{ frame, ground, palette }}
          ends={props.section}
          hover={given.sectionHover}
        />
      )}
      {draft !== null && (
        <PlacingMarks draft={draft} frame={frame} ground={ground} palette={palette} />
      )}
    </>
  );
}

function floorOf(picture: FoundPicture, { mesh }: StagePatch): number {
  let low = picture.bottom;
  for (let i = 2; i < mesh.positions.length; i += 3) low = Math.min(low, mesh.positions[i] ?? low);
  return low;
}

/** The one place that asks for a new frame when what is drawn has changed. */
function Redraw({ on }: { on: SceneCanvasProps }): null {
  const { invalidate, gl } = useThree();
  // Not a passive effect: that would wait for the next frame.
  useLayoutEffect(() => {
    // Shadows follow what is drawn and not the eye: orbiting keeps those that there are.
    // eslint-disable-next-line react-hooks/immutability
    gl.shadowMap.autoUpdate = false;
    gl.shadowMap.needsUpdate = true;
    invalidate();
  }, [invalidate, gl, on]);
  return null;
}

interface FrameMarkProps {
  view: SceneView;
  /** Cut of the estimate that is drawn, m³. */
  cut: number;
  onLost: (lost: boolean) => void;
}

/** Tells the page of each frame drawn and what it shows, and of a lost or restored GPU. */
function FrameMark({ view, cut, onLost }: FrameMarkProps): null {
  const gl = useThree((state) => state.gl);
  useFrame(() => {
    // The camera is posed by now but three would only work it out while drawing: labels need it here.
    view.camera?.updateMatrixWorld();
    view.notify(cut);
  });
  useEffect(() => {
    const canvas = gl.domElement;
    const lost = (event: Event): void => {
      // Without this the browser never gives the context back.
      event.preventDefault();
      onLost(true);
    };
    const restored = (): void => onLost(false);
    canvas.addEventListener("webglcontextlost", lost);
    canvas.addEventListener("webglcontextrestored", restored);
    return () => {
      canvas.removeEventListener("webglcontextlost", lost);
      canvas.removeEventListener("webglcontextrestored", restored);
    };
  }, [gl, onLost]);
  return null;
}
