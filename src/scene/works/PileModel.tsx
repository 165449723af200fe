import { useEffect, useMemo, type ReactElement } from "react";
import { BufferAttribute, BufferGeometry, Color, type MeshLambertMaterial } from "three";
import type { PlanPoint } from "../../site/index.js";
import { chainSegments, InkLines } from "../InkLines.js";
import type { ScenePoint } from "../frame.js";
import type { EarthTone, ScenePalette } from "../palette.js";
import type { StageGround } from "../stageGround.js";
import type { Cone } from "../../estimate/index.js";

interface PileModelProps {
  /** Scene plane. */
  at: PlanPoint;
  cone: Cone;
  ground: StageGround;
  tone: EarthTone;
  earth: MeshLambertMaterial;
  palette: ScenePalette;
  /** False before there is a heap: then only its foot is marked. */
  standing: boolean;
  chosen: boolean;
}

const SPOKES = 40;

/** A heap of loose spoil: a cone of the size it has on level ground, run down to the ground it is on. */
export function PileModel({
  at,
  cone,
  ground,
  tone,
  earth,
  palette,
  standing,
  chosen,
}: PileModelProps): ReactElement {
  const { geometry, foot } = useMemo(() => heap(at, cone, ground, tone), [at, cone, ground, tone]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  const edge = useMemo(() => chainSegments(foot, true), [foot]);
  return (
    <group>
      {standing && (
        <mesh geometry={geometry} material={earth} raycast={() => null} castShadow receiveShadow />
      )}
      <InkLines
        segments={edge}
        colour={chosen ? palette.stake : standing ? palette.ink : palette.outline}
        width={chosen ? 2.6 : standing ? 1.1 : 1.5}
        opacity={standing && !chosen ? 0.7 : 1}
        through={chosen}
        {...(standing || chosen ? {} : { dash: 0.5 })}
      />
    </group>
  );
}

function heap(
  at: PlanPoint,
  cone: Cone,
  ground: StageGround,
  tone: EarthTone,
): { geometry: BufferGeometry; foot: ScenePoint[] } {
  const under = ground.heightAt(at[0], at[1])?.z ?? 0;
  const apex = under + cone.height;
  const slope = cone.diameter > 0 ? cone.height / (cone.diameter / 2) : 1;
  const foot = Array.from({ length: SPOKES }, (_, i): ScenePoint => {
    const turn = (i / SPOKES) * Math.PI * 2;
    return footAlong(at, [Math.cos(turn), Math.sin(turn)], apex, slope, cone.diameter, ground);
  });
  const corners = foot.flatMap((a, i) => {
    const b = foot[(i + 1) % SPOKES] ?? a;
    return [at[0], at[1], apex, ...a, ...b];
  });
  const count = corners.length / 3;
  const colours = new Float32Array(count * 3);
  const colour = new Color(tone.colour);
  for (let i = 0; i < count; i++) colour.toArray(colours, i * 3);
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(Float32Array.from(corners), 3));
  geometry.setAttribute("color", new BufferAttribute(colours, 3));
  geometry.setAttribute(
    "pattern",
    new BufferAttribute(new Float32Array(count).fill(tone.pattern), 1),
  );
  geometry.computeVertexNormals();
  return { geometry, foot };
}

/** Where the heap's side meets the ground along one spoke; at most a diameter out. */
function footAlong(
  at: PlanPoint,
  way: PlanPoint,
  apex: number,
  slope: number,
  most: number,
  ground: StageGround,
): ScenePoint {
  const steps = 60;
  let last: ScenePoint = [at[0], at[1], apex];
  for (let k = 1; k <= steps; k++) {
    const out = (most * k) / steps;
    const [x, y] = [at[0] + way[0] * out, at[1] + way[1] * out];
    const side = apex - slope * out;
    const there = ground.heightAt(x, y);
    if (there === null || there.z >= side) return [x, y, Math.max(there?.z ?? side, side)];
    last = [x, y, side];
  }
  return last;
}
