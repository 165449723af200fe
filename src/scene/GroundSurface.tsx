import { useFrame } from "@react-three/fiber";
import { useEffect, useLayoutEffect, useMemo, type ReactElement } from "react";
import { Color, type BufferGeometry, type MeshLambertMaterial } from "three";
import type { FoundPicture, StagePatch } from "../estimate/index.js";
import type { Material } from "../site/index.js";
import { makeEarthMaterial, patternPitch } from "./earthMaterial.js";
import type { ScenePoint } from "./frame.js";
import { foundGeometry, HideableTriangles, patchGeometry, sideGeometry } from "./groundGeometry.js";
import { InkLines } from "./InkLines.js";
import { insideOutline, type Prism } from "./picking.js";
import type { ScenePalette } from "./palette.js";
import { metresPerPixel, type SceneView } from "./sceneView.js";

const GRASS_HIGH = "#cdc595";

interface GroundSurfaceProps {
  found: FoundPicture;
  patch: StagePatch;
  origin: ScenePoint;
  materials: ReadonlyMap<string, Material>;
  palette: ScenePalette;
  view: SceneView;
  /** Tanks that stand in the ground: edges of a dig inside them are not inked. */
  tanks: readonly Prism[];
}

/** The ground at one stage: grass as found, earth by its material where dug, filled or cut off. */
export function GroundSurface(props: GroundSurfaceProps): ReactElement {
  const { found, patch, origin, materials, palette, view, tanks } = props;
  const earth = useEarthMaterial(view);
  const shift = useMemo((): [number, number, number] => {
    const [x, y, z] = found.origin;
    return [x - origin[0], y - origin[1], z - origin[2]];
  }, [found, origin]);
  const edges = useMemo(() => edgesOutside(patch.mesh.edges, shift, tanks), [patch, shift, tanks]);
  const worked = useMemo(() => patchGeometry(patch.mesh, materials), [patch, materials]);
  useEffect(() => () => worked.dispose(), [worked]);
  return (
    <group position={shift}>
      <FoundGround {...{ found, patch, materials, earth }} />
      <EarthMesh geometry={worked} earth={earth} />
      <group position={[0, 0, EDGE_LIFT]}>
        <InkLines segments={edges} colour={palette.ink} width={1.3} opacity={0.85} />
      </group>
    </group>
  );
}

/** m that edges are inked above the ground. */
const EDGE_LIFT = 0.01;

/**
 * The ground as found and the sides of its block: uploaded once for a survey. Triangles that a work
 * has touched are hidden, so that an edit sends no more than those.
 */
function FoundGround(props: {
  found: FoundPicture;
  patch: StagePatch;
  materials: ReadonlyMap<string, Material>;
  earth: MeshLambertMaterial;
}): ReactElement {
  const { found, patch, materials, earth } = props;
  const top = useMemo(() => foundGeometry(found), [found]);
  const side = useMemo(() => sideGeometry(found, materials), [found, materials]);
  useEffect(() => () => top.dispose(), [top]);
  useEffect(() => () => side.dispose(), [side]);
  const hidden = useMemo(() => new HideableTriangles(top, side, found), [top, side, found]);
  // Before the frame is drawn that shows the patch.
  useLayoutEffect(() => hidden.hide(patch.touched), [hidden, patch]);
  return (
    <>
      <EarthMesh geometry={top} earth={earth} />
      <EarthMesh geometry={side} earth={earth} />
    </>
  );
}

function EarthMesh(props: { geometry: BufferGeometry; earth: MeshLambertMaterial }): ReactElement {
  return (
    <mesh
      geometry={props.geometry}
      material={props.earth}
      raycast={() => null}
      castShadow
      receiveShadow
    />
  );
}

/** One earth material for as long as the component lives, its pattern kept to the eye's distance. */
export function useEarthMaterial(view: SceneView) {
  const [material, uniforms] = useMemo(() => {
    const held = { pitch: { value: 0.4 }, grassHigh: { value: new Color(GRASS_HIGH) } };
    return [makeEarthMaterial(held), held] as const;
  }, []);
  useEffect(() => () => material.dispose(), [material]);
  useFrame(() => {
    // The GPU reads this object at each frame; it is no React state.
    // eslint-disable-next-line react-hooks/immutability
    uniforms.pitch.value = patternPitch(metresPerPixel(view, view.target));
  }, -1);
  return material;
}

/**
 * The edges that do not lie inside a tank: where a trench ends in one they would be inked through
 * its cover. `shift` is what the scene's frame adds to their places.
 */
function edgesOutside(
  ends: Float32Array,
  shift: ScenePoint,
  tanks: readonly Prism[],
): Float32Array {
  if (tanks.length === 0) return ends;
  const shown: number[] = [];
  for (let i = 0; i + 5 < ends.length; i += 6) {
    const middle = (axis: 0 | 1 | 2): number =>
      (ends[i + axis]! + ends[i + axis + 3]!) / 2 + shift[axis];
    const place: ScenePoint = [middle(0), middle(1), middle(2) + EDGE_LIFT];
    if (tanks.some((tank) => isInside(place, tank))) continue;
    for (let k = i; k < i + 6; k++) shown.push(ends[k]!);
  }
  return Float32Array.from(shown);
}

/** m that an edge may stand above a tank and still be taken for one inside it: its cover and ink. */
const LIP = 0.12;

function isInside([x, y, z]: ScenePoint, tank: Prism): boolean {
  if (z < tank.bottom || z > tank.top + LIP) return false;
  return insideOutline([x, y], tank.outline);
}
