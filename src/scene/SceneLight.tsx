// three's cameras, controls and lights are changed in place: they are no React state.
/* eslint-disable react-hooks/immutability */
import { useLayoutEffect, useMemo, type ReactElement } from "react";
import { DirectionalLight } from "three";
import type { SceneFrame } from "./frame.js";
import type { ScenePalette } from "./palette.js";

/** Where the drawing's sun stands: degrees clockwise from north, and above the level. */
const SUN = { bearing: 262, height: 36 };

/** A warm low sun with soft shadows, and the sky's own light. */
export function SceneLight({
  frame,
  palette,
  shadows,
}: {
  frame: SceneFrame;
  palette: ScenePalette;
  shadows: boolean;
}): ReactElement {
  const sun = useMemo(() => new DirectionalLight(), []);
  const reach = frame.reach * 1.15;
  useLayoutEffect(() => {
    const [b, h] = [(SUN.bearing * Math.PI) / 180, (SUN.height * Math.PI) / 180];
    const [x, y, z] = frame.centre;
    const far = reach * 2;
    sun.target.position.set(x, y, z);
    sun.position.set(
      x + Math.sin(b) * Math.cos(h) * far,
      y + Math.cos(b) * Math.cos(h) * far,
      z + Math.sin(h) * far,
    );
    sun.target.updateMatrixWorld();
    const shadow = sun.shadow;
    Object.assign(shadow.camera, { left: -reach, right: reach, top: reach, bottom: -reach });
    shadow.camera.near = 0.5;
    shadow.camera.far = far + reach * 2;
    shadow.camera.updateProjectionMatrix();
    shadow.mapSize.set(1536, 1536);
    shadow.radius = 3;
    shadow.bias = -0.0006;
    shadow.normalBias = 0.06;
    shadow.intensity = 0.62;
  }, [frame, reach, sun]);
  useLayoutEffect(() => () => sun.dispose(), [sun]);
  return (
    <group>
      <primitive
        object={sun}
        castShadow={shadows}
        color={palette.sun}
        intensity={palette.sunlight}
      />
      <primitive object={sun.target} />
      <hemisphereLight
        color={palette.sky}
        groundColor={palette.bounce}
        intensity={palette.skylight}
        position={[0, 0, 1]}
      />
    </group>
  );
}
