import { useMemo, type ReactElement } from "react";
import { BoxGeometry, CylinderGeometry } from "three";
import type { Tank } from "../../site/index.js";
import { toScene, type SceneFrame } from "../frame.js";
import type { ScenePalette } from "../palette.js";
import type { StageGround } from "../stageGround.js";
import { EdgedMesh } from "./EdgedMesh.js";

interface TankModelProps {
  tank: Tank;
  frame: SceneFrame;
  found: StageGround;
  palette: ScenePalette;
  ghost: boolean;
}

/** A precast tank: a concrete box with a lip, and two risers up to the ground. */
export function TankModel({ tank, frame, found, palette, ghost }: TankModelProps): ReactElement {
  const { length, width, height } = tank.body;
  const [x, y] = toScene(frame, tank.at);
  const base = tank.base - frame.origin[2];
  const ground = found.heightAt(x, y)?.z ?? base + height;
  const rise = Math.min(1.5, Math.max(0.25, ground + 0.08 - base - height));
  const turn = ((90 - tank.bearing) * Math.PI) / 180;
  const lip = 0.08;
  const body = useMemo(() => new BoxGeometry(length, width, height), [length, width, height]);
  const cover = useMemo(() => new BoxGeometry(length + 0.1, width + 0.1, lip), [length, width]);
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return (
    <group>
      <EdgedMesh
        geometry={body}
        colour={palette.concrete}
        ink={palette.ink}
        position={[x, y, base + height / 2]}
        turn={turn}
        ghost={ghost}
      />
      <EdgedMesh
        geometry={cover}
        colour={palette.concrete}
        ink={palette.ink}
        position={[x, y, base + height - lip / 2 + 0.01]}
        turn={turn}
        ghost={ghost}
      />
      {[-0.3, 0.3].map((share) => (
        <Riser
          key={share}
          at={[x + cos * length * share, y + sin * length * share, base + height]}
          rise={rise}
          palette={palette}
          ghost={ghost}
        />
      ))}
    </group>
  );
}

interface RiserProps {
  at: readonly [number, number, number];
  rise: number;
  palette: ScenePalette;
  ghost: boolean;
}

function Riser({ at, rise, palette, ghost }: RiserProps): ReactElement {
  const shaft = useMemo(() => upright(new CylinderGeometry(0.29, 0.29, rise, 20)), [rise]);
  const lid = useMemo(() => upright(new CylinderGeometry(0.34, 0.34, 0.07, 20)), []);
  return (
    <group>
      <EdgedMesh
        geometry={shaft}
        colour={palette.concrete}
        ink={palette.ink}
        position={[at[0], at[1], at[2] + rise / 2]}
        width={1}
        ghost={ghost}
      />
      <EdgedMesh
        geometry={lid}
        colour={palette.lid}
        ink={palette.ink}
        position={[at[0], at[1], at[2] + rise]}
        width={1}
        ghost={ghost}
      />
    </group>
  );
}

/** three makes cylinders along y; ours stand along z. */
function upright(cylinder: CylinderGeometry): CylinderGeometry {
  return cylinder.rotateX(Math.PI / 2);
}
