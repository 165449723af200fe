import { useMemo, type ReactElement } from "react";
import {
  type Estimate,
  groundAt,
  hasCome,
  invertLine,
  spoilCone,
  type Stage,
  workOutline,
} from "../../estimate/index.js";
import type { Material, Pile, Site, Trench, Work } from "../../site/index.js";
import { drape } from "../drape.js";
import { toScene, type SceneFrame, type ScenePoint } from "../frame.js";
import { useEarthMaterial } from "../GroundSurface.js";
import { toneOf } from "../materialTone.js";
import { chainSegments, InkLines } from "../InkLines.js";
import type { ScenePalette } from "../palette.js";
import type { SceneView } from "../sceneView.js";
import type { StageGround } from "../stageGround.js";
import { BedModel } from "./BedModel.js";
import { BuildingModel } from "./BuildingModel.js";
import { PileModel } from "./PileModel.js";
import { PipeModel } from "./PipeModel.js";
import { TankModel } from "./TankModel.js";

export interface WorkModelsProps {
  site: Site;
  works: readonly Work[];
  estimate: Estimate | null;
  stage: Stage;
  chosenIds: ReadonlySet<string>;
  /** True where the ground is seen through: then what is to come shows too. */
  through: boolean;
  frame: SceneFrame;
  /** Ground as found, and as it stands. */
  found: StageGround;
  ground: StageGround;
  materials: ReadonlyMap<string, Material>;
  palette: ScenePalette;
  view: SceneView;
}

/** True once tanks, beds and pipes stand in their places. */
export function isSet(stage: Stage): boolean {
  return hasCome(stage, "set");
}

/** All works of a scheme as far as the stage has come, and the outlines of those to come. */
export function WorkModels(props: WorkModelsProps): ReactElement {
  return (
    <group>
      {props.works.map((work) => (
        <group key={work.id}>
          <WorkBody {...props} work={work} />
          <WorkOutline {...props} work={work} />
        </group>
      ))}
    </group>
  );
}

interface OneWork extends WorkModelsProps {
  work: Work;
}

function WorkBody(props: OneWork): ReactElement | null {
  const { work, stage, chosenIds, through, frame, found, materials, palette, view } = props;
  const chosen = chosenIds.has(work.id);
  const ghost = !isSet(stage) || (stage === "backfilled" && chosen && !through);
  const shown = isSet(stage) || chosen || through;
  switch (work.kind) {
    case "building":
      return <BuildingModel building={work} frame={frame} found={found} palette={palette} />;
    case "tank":
      if (!shown) return null;
      return <TankModel tank={work} frame={frame} found={found} palette={palette} ghost={ghost} />;
    case "bed":
      if (!isSet(stage)) return null;
      return (
        <BedModel
          bed={work}
          covered={stage === "backfilled"}
          {...{ frame, materials, palette, view }}
        />
      );
    case "trench":
      if (!shown) return null;
      return <TrenchPipes {...props} trench={work} ghost={ghost} />;
    case "pile":
      return <SpoilPile {...props} pile={work} />;
    case "pad":
    case "strip":
      return null;
  }
}

function WorkOutline(props: OneWork): ReactElement | null {
  const { work, stage, chosenIds, frame, found, ground, palette } = props;
  const chosen = chosenIds.has(work.id);
  // A pile marks its own foot at every stage.
  const shown = work.kind !== "pile" && (chosen || (stage === "found" && work.kind !== "building"));
  const on = stage === "found" ? found : ground;
  const segments = useMemo(() => {
    if (!shown) return null;
    const outline = workOutline(work) ?? [];
    const top = bodyTop(work, stage);
    if (top !== null) {
      const flat = outline.map((at): ScenePoint => [...toScene(frame, at), top - frame.origin[2]]);
      return chainSegments(flat, true);
    }
    const steps = work.kind === "pad" ? (work.levels ?? []).map((level) => level.outline) : [];
    const rings = [outline, ...steps].flatMap((ring) => {
      const corners = ring.map((at) => toScene(frame, at));
      return [...chainSegments(drape(corners, on, 0.05, true), true)];
    });
    return Float32Array.from(rings);
  }, [work, frame, on, shown, stage]);
  if (segments === null) return null;
  return (
    <InkLines
      segments={segments}
      colour={chosen ? palette.stake : palette.outline}
      width={chosen ? 2.6 : 1.5}
      through={chosen}
      {...(chosen ? {} : { dash: 0.5 })}
    />
  );
}

/** Elevation of the top of a body that stands in view; null where the outline lies on the ground. */
function bodyTop(work: Work, stage: Stage): number | null {
  const open = isSet(stage) && stage !== "backfilled";
  if (work.kind === "tank" && open) return work.base + work.body.height;
  return work.kind === "bed" && isSet(stage) ? work.base + work.height : null;
}

function TrenchPipes(props: OneWork & { trench: Trench; ghost: boolean }): ReactElement {
  const { site, trench, frame, palette, ghost } = props;
  const lines = useMemo(
    () =>
      trench.pipes.map((pipe, i) => {
        const spread = (i - (trench.pipes.length - 1) / 2) * Math.min(0.2, trench.width / 4);
        const line = invertLine(trench, pipe, (at) => groundAt(site, at));
        return line.map(([x, y, invert], k): ScenePoint => {
          const [nx, ny] = across(line, k);
          const at = toScene(frame, [x + nx * spread, y + ny * spread]);
          return [at[0], at[1], invert + pipe.inside / 2 - frame.origin[2]];
        });
      }),
    [site, trench, frame],
  );
  return (
    <group>
      {trench.pipes.map((pipe, i) => (
        <PipeModel
          key={pipe.id}
          line={lines[i] ?? []}
          outside={pipe.outside}
          colour={palette[pipe.service]}
          ghost={ghost}
          dash={pipe.service === "conduit" ? 0.35 : undefined}
        />
      ))}
    </group>
  );
}

/** Unit vector to the left of a line at its k-th place, in plan. */
function across(line: readonly (readonly [number, number, number])[], k: number): [number, number] {
  const a = line[Math.max(0, k - 1)];
  const b = line[Math.min(line.length - 1, k + 1)];
  if (a === undefined || b === undefined) return [0, 0];
  const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return size < 1e-9 ? [0, 0] : [-(b[1] - a[1]) / size, (b[0] - a[0]) / size];
}

/** Moist earth: Nunnally, table of angles of repose, recalled from memory. */
const USUAL_REPOSE = 37;

/**
 * Loose m³ in one pile: the surplus shared evenly among the scheme's piles. The heap itself is part of
 * the ground from the first digging on; before that the foot of the heap to come is marked on it.
 */
export function pileVolume(works: readonly Work[], estimate: Estimate | null): number {
  // Of all piles: one that is hidden has its share too.
  const piles = (estimate?.works ?? works).filter((work) => work.kind === "pile").length;
  return piles === 0 ? 0 : (estimate?.earth.surplusLoose ?? 0) / piles;
}

function SpoilPile(props: OneWork & { pile: Pile }): ReactElement | null {
  const { pile, works, estimate, stage, chosenIds, frame, found, materials, palette, view } = props;
  const loose = pileVolume(works, estimate);
  const earth = useEarthMaterial(view);
  const cone = useMemo(() => spoilCone(loose, pile.repose ?? USUAL_REPOSE), [loose, pile.repose]);
  const at = useMemo(() => toScene(frame, pile.at), [frame, pile.at]);
  if (cone.height < 0.05 || stage !== "found") return null;
  return (
    <PileModel
      at={at}
      cone={cone}
      ground={found}
      tone={toneOf(pile.material, materials)}
      earth={earth}
      palette={palette}
      standing={false}
      chosen={chosenIds.has(pile.id)}
    />
  );
}

/** Height above the ground of a pile's top, m. */
export function pileHeight(pile: Pile, works: readonly Work[], estimate: Estimate | null): number {
  const heap = estimate?.works.find((work) => work.id === pile.id)?.heap;
  if (heap) return heap.height;
  return spoilCone(pileVolume(works, estimate), pile.repose ?? USUAL_REPOSE).height;
}
