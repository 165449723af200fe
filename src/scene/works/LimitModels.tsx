import { useEffect, useMemo, type ReactElement } from "react";
import { BufferAttribute, Color, ConeGeometry, CylinderGeometry, type BufferGeometry } from "three";
import { mergeGeometries } from "three/examples/jsm/utils/BufferGeometryUtils.js";
import type { Limit, PlanPoint } from "../../site/index.js";
import { drape } from "../drape.js";
import { toScene, type SceneFrame } from "../frame.js";
import { chainSegments, InkLines } from "../InkLines.js";
import { isOverhead } from "../overhead.js";
import type { ScenePalette } from "../palette.js";
import type { StageGround } from "../stageGround.js";
import { EdgedMesh } from "./EdgedMesh.js";
import { OverheadLine } from "./OverheadLine.js";

interface LimitModelsProps {
  limits: readonly Limit[];
  /** Ids of those that are picked. */
  chosen: ReadonlySet<string>;
  frame: SceneFrame;
  found: StageGround;
  palette: ScenePalette;
}

/** What limits the site: wells, watercourses and other lines, trees; only what the site names. */
export function LimitModels({ limits, chosen, ...rest }: LimitModelsProps): ReactElement {
  return (
    <group>
      {limits.map((limit) => (
        <LimitModel key={limit.id} limit={limit} isChosen={chosen.has(limit.id)} {...rest} />
      ))}
    </group>
  );
}

interface OneLimit extends Omit<LimitModelsProps, "limits" | "chosen"> {
  limit: Limit;
  isChosen: boolean;
}

function LimitModel({ limit, isChosen, frame, found, palette }: OneLimit): ReactElement | null {
  const at = limit.at === undefined ? null : toScene(frame, limit.at);
  const isHung = isOverhead(limit) && limit.height !== undefined;
  const ground = at === null ? null : found.heightAt(at[0], at[1]);
  return (
    <group>
      {isHung && <OverheadLine {...{ limit, isChosen, frame, found, palette }} />}
      {limit.path !== undefined && (
        <LimitLine
          path={limit.path.map((p) => toScene(frame, p))}
          kind={limit.kind}
          under={isHung}
          closed={limit.closed === true}
          isChosen={isChosen}
          found={found}
          palette={palette}
        />
      )}
      {at !== null && ground !== null && limit.kind === "tree" && (
        <Tree at={[at[0], at[1], ground.z]} id={limit.id} palette={palette} />
      )}
      {at !== null && ground !== null && limit.kind !== "tree" && (
        <Post
          at={[at[0], at[1], ground.z]}
          found={found}
          palette={palette}
          water={limit.kind === "well"}
          isChosen={isChosen}
        />
      )}
    </group>
  );
}

/** How a line limit is inked, by its kind; a kind that is not listed is a thin dashed line. */
function lineInk(
  kind: string,
  palette: ScenePalette,
): { colour: string; width: number; dash?: number } {
  if (/water|stream|creek|ditch|pond|lake/.test(kind)) return { colour: palette.water, width: 3.4 };
  if (/overhead|power/.test(kind)) return { colour: palette.stake, width: 1.6, dash: 0.6 };
  if (/lot|boundary|easement/.test(kind)) return { colour: palette.lot, width: 1.8, dash: 1.2 };
  return { colour: palette.inkSoft, width: 1.6, dash: 0.5 };
}

interface LimitLineProps {
  path: readonly PlanPoint[];
  kind: string;
  /** It hangs over the ground, and this is its line on it. */
  under: boolean;
  closed: boolean;
  isChosen: boolean;
  found: StageGround;
  palette: ScenePalette;
}

function LimitLine(props: LimitLineProps): ReactElement {
  const { path, kind, under, closed, isChosen, found, palette } = props;
  const segments = useMemo(
    () => chainSegments(drape(path, found, 0.06, closed), closed),
    [path, closed, found],
  );
  const ink = under ? { colour: palette.outline, width: 1.2, dash: 0.35 } : lineInk(kind, palette);
  const chosen = isChosen ? { colour: palette.stake, width: ink.width + 1.2, through: true } : {};
  return <InkLines segments={segments} {...ink} {...chosen} />;
}

/** Number from 0 to 1 that is always the same for the same id: trees differ, but never flicker. */
function shareOf(id: string): number {
  let sum = 7;
  for (const letter of id) sum = (sum * 31 + letter.charCodeAt(0)) % 997;
  return sum / 997;
}

interface TreeProps {
  at: readonly [number, number, number];
  id: string;
  palette: ScenePalette;
}

/** A plain tree, one mesh. */
function Tree({ at, id, palette }: TreeProps): ReactElement {
  const size = 0.8 + 0.45 * shareOf(id);
  const turn = shareOf(`${id}.`) * Math.PI;
  const geometry = useMemo(
    () => treeGeometry(palette.trunk, palette.leaf),
    [palette.trunk, palette.leaf],
  );
  useEffect(() => () => geometry.dispose(), [geometry]);
  return (
    <mesh
      geometry={geometry}
      position={[...at]}
      scale={size}
      rotation={[0, 0, turn]}
      raycast={() => null}
      castShadow
      receiveShadow
    >
      <meshLambertMaterial vertexColors flatShading />
    </mesh>
  );
}

function treeGeometry(trunk: string, leaf: string): BufferGeometry {
  const parts = [
    painted(new CylinderGeometry(0.14, 0.2, 1, 6), trunk, 0.4),
    painted(new ConeGeometry(1.5, 3.1, 8), leaf, 2.3),
    painted(new ConeGeometry(1.05, 2.5, 8), leaf, 3.8),
  ];
  const whole = mergeGeometries(parts);
  for (const part of parts) part.dispose();
  return whole;
}

/** The part stood upright with its middle at `height`, all its corners in one colour. */
function painted(part: BufferGeometry, colour: string, height: number): BufferGeometry {
  part.rotateX(Math.PI / 2).translate(0, 0, height);
  const count = part.getAttribute("position").count;
  const colours = new Float32Array(count * 3);
  const ink = new Color(colour);
  for (let i = 0; i < count; i++) ink.toArray(colours, i * 3);
  part.setAttribute("color", new BufferAttribute(colours, 3));
  return part;
}

interface PostProps {
  at: readonly [number, number, number];
  found: StageGround;
  palette: ScenePalette;
  water: boolean;
  isChosen: boolean;
}

/** A short post with a ring about it: a well, or any other limit that is a place. */
function Post({ at, found, palette, water, isChosen }: PostProps): ReactElement {
  const post = useMemo(() => new CylinderGeometry(0.2, 0.2, 1, 16).rotateX(Math.PI / 2), []);
  const ring = useMemo(() => {
    const round = Array.from({ length: 24 }, (_, i): PlanPoint => {
      const turn = (i / 24) * Math.PI * 2;
      return [at[0] + Math.cos(turn) * 0.9, at[1] + Math.sin(turn) * 0.9];
    });
    return chainSegments(drape(round, found, 0.06, true), true);
  }, [at, found]);
  const colour = isChosen ? palette.stake : water ? palette.water : palette.inkSoft;
  return (
    <group>
      <EdgedMesh
        geometry={post}
        colour={colour}
        ink={palette.ink}
        position={[at[0], at[1], at[2] + 0.5]}
        width={1}
      />
      <InkLines segments={ring} colour={colour} width={2} />
    </group>
  );
}
