import { useEffect, useMemo, type ReactElement } from "react";
import { BufferAttribute, BufferGeometry, DoubleSide } from "three";
import type { SteepGround } from "../estimate/index.js";
import type { SceneFrame } from "./frame.js";
import { InkLines } from "./InkLines.js";
import type { LimitMarksShown } from "./marksOfLimits.js";
import type { ScenePalette } from "./palette.js";

interface LimitMarksProps {
  marks: LimitMarksShown;
  frame: SceneFrame;
  palette: ScenePalette;
}

/** Bands of setbacks, lines to the nearest limits, and steep ground. */
export function LimitMarks({ marks, frame, palette }: LimitMarksProps): ReactElement {
  const dash = frame.reach / 60;
  return (
    <group>
      <InkLines segments={marks.bands} colour={palette.outline} width={2} dash={dash} />
      <InkLines segments={marks.lines} colour={palette.outline} width={1.6} through />
      <InkLines segments={marks.short} colour={palette.stake} width={2.6} through />
      {marks.steep !== null && <SteepMark {...{ frame, palette }} steep={marks.steep} />}
    </group>
  );
}

/** m that the shading lies over the ground as found. */
const LIFT = 0.05;

function SteepMark(props: {
  steep: SteepGround;
  frame: SceneFrame;
  palette: ScenePalette;
}): ReactElement | null {
  const { steep, palette } = props;
  const { origin } = props.frame;
  const geometry = useMemo(() => {
    const made = new BufferGeometry();
    made.setAttribute("position", new BufferAttribute(placesOf(steep.triangles, origin), 3));
    return made;
  }, [steep, origin]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  const edge = useMemo(() => placesOf(steep.edge, origin), [steep, origin]);
  if (steep.triangles.length === 0) return null;
  return (
    <>
      <mesh geometry={geometry} raycast={() => null} renderOrder={1}>
        <meshBasicMaterial
          color={palette.conduit}
          transparent
          opacity={0.34}
          depthWrite={false}
          side={DoubleSide}
        />
      </mesh>
      <InkLines segments={edge} colour={palette.conduit} width={1.8} />
    </>
  );
}

function placesOf(
  groups: readonly (readonly (readonly [number, number, number])[])[],
  [ox, oy, oz]: SceneFrame["origin"],
): Float32Array {
  return Float32Array.from(
    groups.flatMap((group) => group.flatMap(([x, y, z]) => [x - ox, y - oy, z - oz + LIFT])),
  );
}
