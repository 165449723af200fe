import { useEffect, useMemo, type ReactElement } from "react";
import type { ScenePoint } from "../frame.js";
import { chainSegments, InkLines } from "../InkLines.js";
import { tubeAlong } from "./tube.js";

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
