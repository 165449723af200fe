import { useFrame } from "@react-three/fiber";
import { useEffect, useLayoutEffect, useMemo, type ReactElement } from "react";
import type { BufferGeometry, MeshLambertMaterial } from "three";
import {
  FACE,
  hasCome,
  type FoundPicture,
  type Stage,
  type SetbackField,
  type StagePatch,
} from "../estimate/index.js";
import type { Material } from "../site/index.js";
import type { DepthBands } from "./depthBands.js";
import {
  earthUniforms,
  makeEarthMaterial,
  patternPitch,
  showBands,
  VEIL_ORDER,
  type EarthLook,
  type EarthUniforms,
} from "./earthMaterial.js";
import type { ScenePoint } from "./frame.js";
import {
  foundGeometry,
  HideableTriangles,
  partGeometry,
  patchGeometry,
  sideGeometry,
} from "./groundGeometry.js";
import { InkLines } from "./InkLines.js";
import { insideOutline, type Prism } from "./picking.js";
import type { ScenePalette } from "./palette.js";
import { metresPerPixel, type SceneView } from "./sceneView.js";
import { fieldTexture, showHatch } from "./setbackHatch.js";
import type { StageGround } from "./stageGround.js";

const GRASS_HIGH = "#cdc595";

interface GroundSurfaceProps {
  found: FoundPicture;
  patch: StagePatch;
  /** What of the works lies in the ground, where it is seen through; null where it is not. */
  inner: StagePatch | null;
  asFound: StageGround;
  /** True where the ground is seen through. */
  through: boolean;
  /** Bands of depth to be shown; null for earth in its own colours. */
  bands: DepthBands | null;
  /** Setbacks to be hatched; null for none. */
  setbacks: SetbackField | null;
  stage: Stage;
  origin: ScenePoint;
  materials: ReadonlyMap<string, Material>;
  palette: ScenePalette;
  view: SceneView;
  /** Tanks that stand in the ground: edges of a dig inside them are not inked. */
  tanks: readonly Prism[];
}

/** The ground at one stage: grass as found, earth by its material where dug, filled or cut off. */
export function GroundSurface(props: GroundSurfaceProps): ReactElement {
  const { found, patch, inner, through, bands, origin, materials, palette, view, tanks } = props;
  const { uniforms, ...earth } = useGroundMaterials(view);
  // Before the frame is drawn that shows the bands.
  useLayoutEffect(() => showBands(uniforms, bands), [uniforms, bands]);
  useHatch(uniforms, props);
  const shift = useMemo((): [number, number, number] => {
    const [x, y, z] = found.origin;
    return [x - origin[0], y - origin[1], z - origin[2]];
  }, [found, origin]);
  const edges = useMemo(() => edgesOutside(patch.mesh.edges, shift, tanks), [patch, shift, tanks]);
  const worked = useMemo(
    () => patchGeometry(patch.mesh, materials, patch.depths),
    [patch, materials],
  );
  useEffect(() => () => worked.dispose(), [worked]);
  return (
    <group position={shift}>
      <FoundGround {...{ found, patch, materials, earth, through }} />
      {through ? (
        <OpenedGround
          worked={worked}
          faces={patch.mesh.faceOf}
          {...{ earth }}
          stage={props.stage}
        />
      ) : (
        <EarthMesh geometry={worked} earth={earth} through={false} />
      )}
      {inner !== null && (
        <GroundInside {...{ inner, materials, earth, palette, shift }} asFound={props.asFound} />
      )}
      <group position={[0, 0, EDGE_LIFT]}>
        <InkLines segments={edges} colour={palette.ink} width={1.3} opacity={0.85} />
      </group>
    </group>
  );
}

/** m that edges are inked above the ground. */
const EDGE_LIFT = 0.01;

type EarthMaterials = Readonly<Record<EarthLook, MeshLambertMaterial>>;

/**
 * The ground as found and the sides of its block: uploaded once for a survey. Triangles that a work
 * has touched are hidden, so that an edit sends no more than those.
 */
function FoundGround(props: {
  found: FoundPicture;
  patch: StagePatch;
  materials: ReadonlyMap<string, Material>;
  earth: EarthMaterials;
  through: boolean;
}): ReactElement {
  const { found, patch, materials, earth, through } = props;
  const top = useMemo(() => foundGeometry(found), [found]);
  const side = useMemo(() => sideGeometry(found, materials), [found, materials]);
  useEffect(() => () => top.dispose(), [top]);
  useEffect(() => () => side.dispose(), [side]);
  const hidden = useMemo(() => new HideableTriangles(top, side, found), [top, side, found]);
  // Before the frame is drawn that shows the patch.
  useLayoutEffect(() => hidden.hide(patch.touched), [hidden, patch]);
  return (
    <>
      <EarthMesh geometry={top} earth={earth} through={through} />
      <EarthMesh geometry={side} earth={earth} through={through} />
    </>
  );
}

/**
 * The changed ground where it is seen through: open faces as they are, those that turn away from the
 * eye left out; all that lies over something, and the untouched parts, as a veil.
 */
function OpenedGround(props: {
  worked: BufferGeometry;
  faces: Uint8Array;
  earth: EarthMaterials;
  stage: Stage;
}): ReactElement {
  const { worked, faces, earth, stage } = props;
  const covered = hasCome(stage, "zone");
  const [open, over] = useMemo(() => {
    const isOpen = (v: number): boolean =>
      faces[v] === FACE.dug || (faces[v] === FACE.filled && !covered);
    return [partGeometry(worked, isOpen), partGeometry(worked, (v) => !isOpen(v))];
  }, [worked, faces, covered]);
  useEffect(() => () => open.dispose(), [open]);
  useEffect(() => () => over.dispose(), [over]);
  return (
    <>
      <mesh geometry={open} material={earth.inner} raycast={() => null} receiveShadow />
      <EarthMesh geometry={over} earth={earth} through />
    </>
  );
}

/** Walls, floors and bedding in the ground, without what stands above it, as seen from inside. */
function GroundInside(props: {
  inner: StagePatch;
  materials: ReadonlyMap<string, Material>;
  earth: EarthMaterials;
  palette: ScenePalette;
  shift: ScenePoint;
  asFound: StageGround;
}): ReactElement {
  const { inner, materials, earth, palette, shift, asFound } = props;
  const geometry = useMemo(() => {
    const { mesh, depths } = inner;
    const isIn = (v: number): boolean =>
      (mesh.faceOf[v] === FACE.dug || mesh.faceOf[v] === FACE.filled) &&
      depths[v]! + depths[v + 1]! + depths[v + 2]! > 0;
    return partGeometry(patchGeometry(mesh, materials, depths), isIn);
  }, [inner, materials]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  const edges = useMemo(() => sunkEdges(inner.mesh.edges, shift, asFound), [inner, shift, asFound]);
  return (
    <>
      <mesh geometry={geometry} material={earth.inner} raycast={() => null} receiveShadow />
      <InkLines segments={edges} colour={palette.ink} width={1} opacity={0.6} />
    </>
  );
}

/** m under the ground as found from which an edge lies in it. */
const SUNK = 0.03;

/** The edges that lie under the ground as found, their places as in the mesh. */
function sunkEdges(ends: Float32Array, shift: ScenePoint, asFound: StageGround): Float32Array {
  const sunk: number[] = [];
  for (let i = 0; i + 5 < ends.length; i += 6) {
    const middle = (axis: 0 | 1 | 2): number =>
      (ends[i + axis]! + ends[i + axis + 3]!) / 2 + shift[axis];
    const over = asFound.heightAt(middle(0), middle(1));
    if (over === null || over.z < middle(2) + SUNK) continue;
    for (let k = i; k < i + 6; k++) sunk.push(ends[k]!);
  }
  return Float32Array.from(sunk);
}

function EarthMesh(props: {
  geometry: BufferGeometry;
  earth: EarthMaterials;
  through: boolean;
}): ReactElement {
  const { geometry, earth, through } = props;
  if (!through) {
    return (
      <mesh
        geometry={geometry}
        material={earth.solid}
        raycast={() => null}
        castShadow
        receiveShadow
      />
    );
  }
  return (
    <>
      {(["mask", "veil"] as const).map((look) => (
        <mesh
          key={look}
          geometry={geometry}
          material={earth[look]}
          renderOrder={VEIL_ORDER[look]}
          raycast={() => null}
          receiveShadow={look === "veil"}
        />
      ))}
    </>
  );
}

/** One earth material for as long as the component lives, its pattern kept to the eye's distance. */
export function useEarthMaterial(view: SceneView): MeshLambertMaterial {
  const [material, uniforms] = useMemo(() => {
    const held = earthUniforms(GRASS_HIGH);
    return [makeEarthMaterial(held), held] as const;
  }, []);
  useEffect(() => () => material.dispose(), [material]);
  usePitch(uniforms, view);
  return material;
}

/** The earth's materials in all its looks, with the uniforms that they share. */
function useGroundMaterials(view: SceneView): EarthMaterials & { uniforms: EarthUniforms } {
  const made = useMemo(() => {
    const uniforms = earthUniforms(GRASS_HIGH);
    return {
      uniforms,
      solid: makeEarthMaterial(uniforms),
      inner: makeEarthMaterial(uniforms, "inner"),
      veil: makeEarthMaterial(uniforms, "veil"),
      mask: makeEarthMaterial(uniforms, "mask"),
    };
  }, []);
  useEffect(
    () => () => {
      for (const look of [made.solid, made.inner, made.veil, made.mask]) look.dispose();
    },
    [made],
  );
  usePitch(made.uniforms, view);
  return made;
}

/** Hatches the ground inside setbacks, before the frame is drawn that shows them. */
function useHatch(
  uniforms: EarthUniforms,
  { setbacks, palette, origin }: Pick<GroundSurfaceProps, "setbacks" | "palette" | "origin">,
): void {
  const texture = useMemo(() => setbacks && fieldTexture(setbacks), [setbacks]);
  useEffect(() => () => texture?.dispose(), [texture]);
  useLayoutEffect(() => {
    const shown = setbacks && texture && { field: setbacks, texture, ink: palette.outline, origin };
    showHatch(uniforms, shown);
  }, [uniforms, setbacks, texture, palette, origin]);
}

/** CSS px between the lines of a hatch. */
const HATCH = 6;

function usePitch(uniforms: EarthUniforms, view: SceneView): void {
  useFrame(({ gl }) => {
    // The GPU reads this object at each frame; it is no React state.
    // eslint-disable-next-line react-hooks/immutability
    uniforms.pitch.value = patternPitch(metresPerPixel(view, view.target));
    uniforms.hatch.value = HATCH * gl.getPixelRatio();
  }, -1);
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
