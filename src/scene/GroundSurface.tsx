import { useFrame } from "@react-three/fiber";
import { useEffect, useMemo, type ReactElement } from "react";
import { BufferAttribute, BufferGeometry, Color } from "three";
import { FACE, type GroundMesh } from "../estimate/index.js";
import { NATIVE, type Material } from "../site/index.js";
import { makeEarthMaterial, patternPitch } from "./earthMaterial.js";
import type { ScenePoint } from "./frame.js";
import { InkLines } from "./InkLines.js";
import { insideOutline, type Prism } from "./picking.js";
import { earthTone, PATTERN, type EarthTone, type ScenePalette } from "./palette.js";
import { metresPerPixel, type SceneView } from "./sceneView.js";
import { sceneCorners } from "./stageGround.js";

const GRASS_LOW = "#aeb382";
const GRASS_HIGH = "#cdc595";

interface GroundSurfaceProps {
  mesh: GroundMesh;
  origin: ScenePoint;
  materials: ReadonlyMap<string, Material>;
  palette: ScenePalette;
  view: SceneView;
  /** Tanks that stand in the ground: edges of a dig inside them are not inked. */
  tanks: readonly Prism[];
}

/** The ground at one stage: grass as found, earth by its material where dug, filled or cut off. */
export function GroundSurface(props: GroundSurfaceProps): ReactElement {
  const { mesh, origin, materials, palette, view, tanks } = props;
  const geometry = useMemo(
    () => groundGeometry(mesh, origin, materials),
    [mesh, origin, materials],
  );
  useEffect(() => () => geometry.dispose(), [geometry]);
  const earth = useEarthMaterial(view);
  const edges = useMemo(() => sceneEdges(mesh, origin, tanks), [mesh, origin, tanks]);
  return (
    <group>
      <mesh
        geometry={geometry}
        material={earth}
        raycast={() => null}
        castShadow
        receiveShadow
        name="ground"
      />
      <InkLines segments={edges} colour={palette.ink} width={1.3} opacity={0.85} />
    </group>
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

/** How a material of the mesh is drawn; unknown ids are drawn as soil. */
export function toneOf(id: string, materials: ReadonlyMap<string, Material>): EarthTone {
  return id === NATIVE ? earthTone(NATIVE) : earthTone(materials.get(id)?.kind ?? "soil");
}

function groundGeometry(
  mesh: GroundMesh,
  origin: ScenePoint,
  materials: ReadonlyMap<string, Material>,
): BufferGeometry {
  const count = mesh.positions.length / 3;
  const tones = mesh.materials.map((id) => {
    const tone = toneOf(id, materials);
    return { colour: new Color(tone.colour), pattern: tone.pattern };
  });
  const grass = { colour: new Color(GRASS_LOW), pattern: PATTERN.grass };
  const colours = new Float32Array(count * 3);
  const patterns = new Float32Array(count);
  for (let i = 0; i < count; i++) {
    const found = mesh.faceOf[i] === FACE.found;
    const tone = found ? grass : (tones[mesh.materialOf[i] ?? 0] ?? grass);
    tone.colour.toArray(colours, i * 3);
    patterns[i] = tone.pattern;
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(sceneCorners(mesh, origin), 3));
  geometry.setAttribute("normal", new BufferAttribute(mesh.normals, 3));
  geometry.setAttribute("color", new BufferAttribute(colours, 3));
  geometry.setAttribute("pattern", new BufferAttribute(patterns, 1));
  return geometry;
}

/**
 * Ends of the mesh's edges in the scene's frame, a hair above the ground. Those inside a tank are
 * left out: where a trench ends in one they would be inked through its cover.
 */
function sceneEdges(mesh: GroundMesh, origin: ScenePoint, tanks: readonly Prism[]): Float32Array {
  const shift = [
    mesh.origin[0] - origin[0],
    mesh.origin[1] - origin[1],
    mesh.origin[2] - origin[2] + 0.01,
  ] as const;
  const ends = mesh.edges.map((at, i) => at + (shift[i % 3] ?? 0));
  if (tanks.length === 0) return ends;
  const shown: number[] = [];
  for (let i = 0; i + 5 < ends.length; i += 6) {
    const segment = ends.subarray(i, i + 6);
    if (!tanks.some((tank) => middleInside(segment, tank))) shown.push(...segment);
  }
  return Float32Array.from(shown);
}

/** m that an edge may stand above a tank and still be taken for one inside it: its cover and ink. */
const LIP = 0.12;

function middleInside(segment: Float32Array, tank: Prism): boolean {
  const middle = (axis: 0 | 1 | 2): number => ((segment[axis] ?? 0) + (segment[axis + 3] ?? 0)) / 2;
  const z = middle(2);
  if (z < tank.bottom || z > tank.top + LIP) return false;
  return insideOutline([middle(0), middle(1)], tank.outline);
}
