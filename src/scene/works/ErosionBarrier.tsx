import { useEffect, useMemo, type ReactElement } from "react";
import { BufferAttribute, BufferGeometry, DoubleSide } from "three";
import type { Estimate } from "../../estimate/index.js";
import { barrierCloth, barrierInk } from "../barrierShapes.js";
import type { SceneFrame, ScenePoint } from "../frame.js";
import { InkLines } from "../InkLines.js";
import type { ScenePalette } from "../palette.js";

interface ErosionBarrierProps {
  lines: Estimate["land"]["barriers"];
  frame: SceneFrame;
  palette: ScenePalette;
}

/** The erosion barrier below the bare ground: a low fence of cloth on stakes along its lines. */
export function ErosionBarrier({ lines, frame, palette }: ErosionBarrierProps): ReactElement {
  const [cloth, ink] = useMemo(() => {
    const [ox, oy, oz] = frame.origin;
    const placed = lines.map((line) =>
      line
        .filter(([, , z]) => Number.isFinite(z))
        .map(([x, y, z]): ScenePoint => [x - ox, y - oy, z - oz]),
    );
    return [barrierCloth(placed), barrierInk(placed)];
  }, [lines, frame]);
  const geometry = useMemo(
    () => new BufferGeometry().setAttribute("position", new BufferAttribute(cloth, 3)),
    [cloth],
  );
  useEffect(() => () => geometry.dispose(), [geometry]);
  return (
    <group>
      <mesh geometry={geometry} raycast={() => null}>
        <meshBasicMaterial color={palette.cloth} side={DoubleSide} />
      </mesh>
      <InkLines segments={ink} colour={palette.outline} width={1.3} opacity={0.8} />
    </group>
  );
}
