import { useEffect, useMemo, type ReactElement } from "react";
import { CatmullRomCurve3, CurvePath, LineCurve3, TubeGeometry, Vector3 } from "three";
import type { ScenePoint } from "../frame.js";
import { chainSegments, InkLines } from "../InkLines.js";

interface PipeModelProps {
  /** Centre line, scene frame. */
  line: readonly ScenePoint[];
  outside: number;
  colour: string;
  ghost: boolean;
  dash: number | undefined;
}

/** A pipe where it lies: a tube of its true size, and a line of ink so that it shows from afar. */
export function PipeModel({ line, outside, colour, ghost, dash }: PipeModelProps): ReactElement {
  const tube = useMemo(() => tubeAlong(line, outside / 2), [line, outside]);
  useEffect(() => () => tube.dispose(), [tube]);
  const centre = useMemo(() => chainSegments(line, false), [line]);
  return (
    <group>
      <mesh geometry={tube} raycast={() => null} castShadow={!ghost}>
        <meshLambertMaterial
          key={ghost ? "ghost" : "solid"}
          color={colour}
          transparent={ghost}
          opacity={ghost ? 0.6 : 1}
          depthTest={!ghost}
        />
      </mesh>
      <InkLines
        segments={centre}
        colour={colour}
        width={ghost ? 2 : 3}
        opacity={ghost ? 0.8 : 1}
        through={ghost}
        {...(dash === undefined ? {} : { dash })}
      />
    </group>
  );
}

function tubeAlong(line: readonly ScenePoint[], radius: number): TubeGeometry {
  const places = line.map((at) => new Vector3(at[0], at[1], at[2]));
  const path = new CurvePath<Vector3>();
  places.forEach((at, i) => {
    const before = places[i - 1];
    if (before !== undefined && before.distanceTo(at) > 1e-6) path.add(new LineCurve3(before, at));
  });
  if (path.curves.length === 0) {
    const only = places[0] ?? new Vector3();
    path.add(new LineCurve3(only, only.clone().setZ(only.z + 0.01)));
  }
  // A tube samples its path evenly: enough places that bends stay within a few centimetres.
  const samples = Math.min(600, Math.max(8, Math.ceil(path.getLength() / 0.12)));
  const even = new CatmullRomCurve3(path.getSpacedPoints(samples), false, "centripetal");
  return new TubeGeometry(even, samples, Math.max(radius, 0.02), 8, false);
}
