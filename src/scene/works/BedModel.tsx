import { useEffect, useMemo, type ReactElement } from "react";
import { BoxGeometry, BufferAttribute, Color, PlaneGeometry } from "three";
import { bedCourses } from "../../estimate/index.js";
import type { Bed, Material } from "../../site/index.js";
import { toScene, type SceneFrame } from "../frame.js";
import { useEarthMaterial } from "../GroundSurface.js";
import { toneOf } from "../materialTone.js";
import { InkLines } from "../InkLines.js";
import type { ScenePalette } from "../palette.js";
import type { SceneView } from "../sceneView.js";
import { EdgedMesh } from "./EdgedMesh.js";

interface BedModelProps {
  bed: Bed;
  frame: SceneFrame;
  materials: ReadonlyMap<string, Material>;
  palette: ScenePalette;
  view: SceneView;
  /** True once the soil over the laterals is on. */
  covered: boolean;
}

/** A raised bed: four timber walls, its filling, and three laterals (their number is a drawing's). */
export function BedModel(props: BedModelProps): ReactElement {
  const { bed, frame, materials, palette, view, covered } = props;
  const [x, y] = toScene(frame, bed.at);
  const base = bed.base - frame.origin[2];
  const turn = ((90 - bed.bearing) * Math.PI) / 180;
  const wall = Math.max(bed.wall, 0.08);
  const shown = bedCourses(bed, materials, covered);
  const filled = Math.min(bed.height - 0.03, (shown.at(-1)?.top ?? bed.base) - bed.base);
  const bare = shown.length === bedCourses(bed, materials, false).length;
  const tone = toneOf(shown.at(-1)?.material ?? "sand", materials);
  const top = useFilling(bed.length - 2 * wall, bed.width - 2 * wall, tone);
  const earth = useEarthMaterial(view);
  const long = useMemo(
    () => new BoxGeometry(bed.length, wall, bed.height),
    [bed.length, wall, bed.height],
  );
  const long2 = useMemo(() => long.clone(), [long]);
  const short = useMemo(
    () => new BoxGeometry(wall, bed.width - 2 * wall, bed.height),
    [wall, bed.width, bed.height],
  );
  const short2 = useMemo(() => short.clone(), [short]);
  const laterals = useMemo(() => lateralLines(bed.length, bed.width), [bed.length, bed.width]);
  const wood = { colour: palette.timber, ink: palette.ink };
  const offset = bed.width / 2 - wall / 2;
  const end = bed.length / 2 - wall / 2;
  return (
    <group position={[x, y, base]} rotation={[0, 0, turn]}>
      <EdgedMesh geometry={long} {...wood} position={[0, offset, bed.height / 2]} />
      <EdgedMesh geometry={long2} {...wood} position={[0, -offset, bed.height / 2]} />
      <EdgedMesh geometry={short} {...wood} position={[end, 0, bed.height / 2]} />
      <EdgedMesh geometry={short2} {...wood} position={[-end, 0, bed.height / 2]} />
      <group position={[0, 0, Math.max(0.05, filled)]}>
        <mesh geometry={top} material={earth} raycast={() => null} receiveShadow />
        {bare && (
          <group position={[0, 0, 0.03]}>
            <InkLines segments={laterals} colour={palette.pressure} width={2.6} />
          </group>
        )}
      </group>
    </group>
  );
}

function useFilling(
  length: number,
  width: number,
  tone: { colour: string; pattern: number },
): PlaneGeometry {
  const geometry = useMemo(() => {
    const plane = new PlaneGeometry(Math.max(0.1, length), Math.max(0.1, width));
    const count = plane.getAttribute("position").count;
    const colour = new Color(tone.colour);
    const colours = new Float32Array(count * 3);
    for (let i = 0; i < count; i++) colour.toArray(colours, i * 3);
    plane.setAttribute("color", new BufferAttribute(colours, 3));
    plane.setAttribute(
      "pattern",
      new BufferAttribute(new Float32Array(count).fill(tone.pattern), 1),
    );
    return plane;
  }, [length, width, tone.colour, tone.pattern]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  return geometry;
}

function lateralLines(length: number, width: number): Float32Array {
  const reach = length / 2 - Math.min(0.6, length / 8);
  return Float32Array.from(
    [-0.3, 0, 0.3].flatMap((share) => [-reach, share * width, 0, reach, share * width, 0]),
  );
}
