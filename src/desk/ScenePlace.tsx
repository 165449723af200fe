import { Component, memo, useMemo } from "react";
import type { ReactNode } from "react";
import type { CranePlace, ProbeWorth } from "../scene/index.js";
import { moveStand, type PlanPoint } from "../site/index.js";
import { useChance, useDesk, useLooks } from "../store/index.js";
import type { Picked } from "../store/index.js";
import { words } from "../words/index.js";
import { SceneBar } from "./bar/SceneBar.js";
import { SiteScene } from "./late/SiteScene.js";
import { keepShooter, useShooter } from "./handover/shooter.js";
import { SeveralBar } from "./SeveralBar.js";
import { useSmallPicture } from "./shelf/useSmallPicture.js";
import { Stages } from "./Stages.js";
import { useReducedData, useReducedMotion } from "./useTheme.js";
import { useSite } from "./useSite.js";
import { keepWay } from "./water/keepLine.js";
import { useDrains } from "./water/useDrains.js";

/** Catches a scene that cannot be drawn, so that leaves and figures stay in use. */
class SceneGuard extends Component<{ children: ReactNode }, { fault: string | null }> {
  override state = { fault: null as string | null };

  static getDerivedStateFromError(fault: unknown): { fault: string } {
    return { fault: fault instanceof Error ? fault.message : String(fault) };
  }

  override render(): ReactNode {
    if (this.state.fault === null) return this.props.children;
    return (
      <div className="scene-fault" role="alert">
        <h2>{words.desk.groundCannotDrawnHere}</h2>
        <p>{this.state.fault}</p>
        <p>{words.desk.figuresEveryLeafStill}</p>
        <button type="button" className="button" onClick={() => this.setState({ fault: null })}>
          {words.desk.tryAgain}
        </button>
      </div>
    );
  }
}

/**
 * What the scene shows. Ground, stage and figures of a large survey follow the document when they
 * have been worked out; the works themselves are drawn where they are at once.
 */
function useShown() {
  const { site, schemeId, estimate } = useSite();
  const stage = useDesk((desk) => desk.stage);
  const drawn = useDesk((desk) => desk.drawn);
  return useMemo(() => {
    if (drawn === null) return { site, schemeId, estimate, stage, patch: null };
    const { survey, ground } = drawn.site;
    const isSame = survey === site.survey && ground === site.ground;
    const { patch } = drawn;
    return {
      site: isSame ? site : { ...site, survey, ground },
      ...{ schemeId: drawn.schemeId, estimate, stage: drawn.stage, patch },
    };
  }, [site, schemeId, estimate, stage, drawn]);
}

/** Where a further probe would tell most, on the leaf that speaks of it. */
function useProbeWorth(): ProbeWorth | null {
  const { site, schemeId } = useSite();
  const leaf = useDesk((desk) => desk.leaf);
  // Not asked for on other leaves: what is simulated at rest must not draw a frame there.
  const made = useChance((state) => (leaf === "cost" ? state.latest.get(schemeId) : undefined));
  return useMemo(() => {
    if (leaf !== "cost" || made?.site !== site) return null;
    return { places: made.chance.probeMap, best: made.chance.nextProbe?.at ?? null };
  }, [leaf, made, site]);
}

const NO_PLACES: readonly CranePlace[] = [];

/** Where the crane might stand, on the leaf that speaks of it. */
function useCranePlaces(): readonly CranePlace[] {
  const { site, schemeId, estimate } = useSite();
  const leaf = useDesk((desk) => desk.leaf);
  return useMemo(() => {
    const lift = site.schemes.find(({ id }) => id === schemeId)?.machines?.lift;
    const result = estimate?.lift ?? null;
    if (leaf !== "machines" || lift === undefined || result === null) return NO_PLACES;
    return lift.stands.map(({ id, name, at }) => ({
      ...{ id, name, at },
      radii: result.tanks.flatMap(({ stands }) =>
        stands.filter(({ stand }) => stand === id).map(({ radius }) => radius.value),
      ),
      spread: result.crane.outriggers ?? 0,
      isBest: result.best === id,
    }));
  }, [leaf, site, schemeId, estimate]);
}

function moveCrane(stand: string, at: PlanPoint): void {
  const { history, schemeId, edit } = useDesk.getState();
  const { stands } =
    history?.present.schemes.find(({ id }) => id === schemeId)?.machines?.lift ?? {};
  const name = stands?.find(({ id }) => id === stand)?.name ?? stand;
  edit(words.picked.steps.move(name), (site) => moveStand(site, schemeId, stand, at));
}

function stopMeasuring(): void {
  useDesk.getState().show({ measuring: false });
}

function stopWatering(): void {
  useDesk.getState().show({ watering: false });
}

function stopWalking(): void {
  useDesk.getState().show({ view: "orbit" });
}

/** A finger that rests on a label begins to pick several. */
function gather(thing: Picked): void {
  const desk = useDesk.getState();
  desk.setSeveral(true);
  desk.pickThese([thing], true);
}

/** Rendered anew by what it reads alone: the page around it may change without a frame drawn. */
const Scene = memo(function Scene({ theme }: { theme: "light" | "dark" }): ReactNode {
  const shown = useShown();
  const byDay = useShooter((held) => held.byDay);
  const working = useDesk((desk) => desk.working);
  const view = useDesk((desk) => desk.view);
  const leaf = useDesk((desk) => desk.leaf);
  const selected = useDesk((desk) => desk.selected);
  const also = useDesk((desk) => desk.also);
  const placing = useDesk((desk) => desk.placing);
  const section = useDesk((desk) => desk.section);
  const frameAsked = useDesk((desk) => desk.frameAsked);
  const desk = useDesk.getState();
  return (
    <SiteScene
      {...shown}
      working={working}
      onWorkAgain={desk.workAgain}
      view={view}
      onStopWalking={stopWalking}
      frameAsked={frameAsked}
      theme={byDay ? "light" : theme}
      reducedMotion={useReducedMotion()}
      selected={selected}
      also={also}
      several={useDesk((state) => state.several)}
      placing={placing}
      snapping={useDesk((one) => one.snapping)}
      section={section}
      measuring={useDesk((desk) => desk.measuring)}
      onMeasureEnd={stopMeasuring}
      watering={useDesk((one) => one.watering)}
      onWaterEnd={stopWatering}
      onKeepWay={keepWay}
      drains={useDrains()}
      probeWorth={useProbeWorth()}
      cranePlaces={useCranePlaces()}
      looks={useLooks()}
      shadows={!useReducedData()}
      showProbes={
        leaf === "survey" ||
        leaf === "cost" ||
        selected?.kind === "probe" ||
        also.some(({ kind }) => kind === "probe")
      }
      showPoints={leaf === "survey" || selected?.kind === "point"}
      onSelect={desk.pick}
      onSelectAll={desk.pickThese}
      onGather={gather}
      onPlace={desk.place}
      onCancelPlacing={desk.stopPlacing}
      onSectionTap={desk.tapSection}
      onStandMove={moveCrane}
      onSectionMove={desk.moveSection}
      onSectionAcross={desk.startSection}
      onSectionCancel={desk.stopSection}
      onPictureReady={useSmallPicture()}
      onShooterReady={keepShooter}
      onDragBegin={desk.dragBegin}
      onRemoveCorner={desk.removeCorner}
      onDragMove={desk.dragMove}
      onDragEnd={desk.dragEnd}
    />
  );
});

/** The scene with what lies over it: its bar of views and tools, and the stage slider. */
export function ScenePlace({ theme }: { theme: "light" | "dark" }): ReactNode {
  return (
    <main className="stagehand" aria-label={words.desk.theSite}>
      <div className="fills">
        <SceneGuard>
          <Scene theme={theme} />
        </SceneGuard>
      </div>
      <SceneBar />
      <SeveralBar />
      <Stages />
    </main>
  );
}
