import { useEffect, useMemo, type ReactElement } from "react";
import { BoxGeometry, CylinderGeometry, type BufferGeometry } from "three";
import { mergeGeometries } from "three/examples/jsm/utils/BufferGeometryUtils.js";
import { lineClearance } from "../../estimate/index.js";
import type { Limit } from "../../site/index.js";
import type { SceneFrame, ScenePoint } from "../frame.js";
import { chainSegments, InkLines } from "../InkLines.js";
import { supportsOf, type Support } from "../overhead.js";
import type { ScenePalette } from "../palette.js";
import type { StageGround } from "../stageGround.js";
import { EdgedMesh } from "./EdgedMesh.js";
import { ringsAlong, tubeAlong } from "./tube.js";

interface OverheadLineProps {
  limit: Limit;
  isChosen: boolean;
  frame: SceneFrame;
  found: StageGround;
  palette: ScenePalette;
}

/** An overhead line of known height where it hangs; nothing off the survey. */
export function OverheadLine(props: OverheadLineProps): ReactElement | null {
  const { limit, frame, found, isChosen, palette } = props;
  const supports = useMemo(() => supportsOf(limit, frame, found), [limit, frame, found]);
  if (supports === null) return null;
  return <Hung {...{ supports, isChosen, palette }} voltage={limit.voltage} />;
}

interface HungProps {
  supports: readonly Support[];
  /** V; absent where it is not known. */
  voltage: number | undefined;
  isChosen: boolean;
  palette: ScenePalette;
}

/** How the room about a wire is drawn: corners of its rings, m between them. */
const RING = { corners: 28, every: 6, sample: 0.5 };

/**
 * A line on poles, its lowest wire straight from one to the next, and about the wire the room that
 * a machine has to keep off: as the table says for its voltage, or for one that is not known.
 */
function Hung(props: HungProps): ReactElement {
  const { supports, voltage, isChosen, palette } = props;
  const wire = useMemo(() => supports.map((one) => one.wire), [supports]);
  const room = lineClearance(voltage).least;
  const tube = useMemo(() => tubeAlong(wire, room, RING.corners, RING.sample), [wire, room]);
  useEffect(() => () => tube.dispose(), [tube]);
  const rings = useMemo(() => ringsAlong(wire, room, RING), [wire, room]);
  const colour = isChosen ? palette.stake : palette.outline;
  return (
    <group>
      <InkLines segments={chainOf(wire)} colour={colour} width={isChosen ? 3.2 : 2} />
      <InkLines segments={rings} colour={palette.conduit} width={1} opacity={0.55} />
      <mesh geometry={tube} raycast={() => null} renderOrder={2}>
        <meshBasicMaterial color={palette.conduit} transparent opacity={0.16} depthWrite={false} />
      </mesh>
      {supports.map((one, i) => (
        <Pole
          key={i}
          support={one}
          along={bearingAt(wire, i)}
          palette={palette}
          colour={isChosen ? palette.stake : palette.timber}
        />
      ))}
    </group>
  );
}

function chainOf(wire: readonly ScenePoint[]): Float32Array {
  return chainSegments(wire, false);
}

/** Turn about the upright of a line at one of its corners: half way between its two legs, radians. */
function bearingAt(wire: readonly ScenePoint[], i: number): number {
  const [before, at, after] = [wire[i - 1] ?? wire[i], wire[i], wire[i + 1] ?? wire[i]];
  if (before === undefined || at === undefined || after === undefined) return 0;
  return Math.atan2(after[1] - before[1], after[0] - before[0]);
}

/** m that a pole stands over its lowest wire, and half the length of its arm. Drawn so, no more. */
const OVER = 0.5;
const ARM = 0.9;

function Pole(props: {
  support: Support;
  along: number;
  colour: string;
  palette: ScenePalette;
}): ReactElement | null {
  const { support, along, colour, palette } = props;
  const { wire, foot } = support;
  const high = foot === null ? 0 : wire[2] + OVER - foot;
  const geometry = useMemo(() => poleGeometry(high), [high]);
  if (foot === null || high <= 0) return null;
  return (
    <EdgedMesh
      {...{ geometry, colour }}
      ink={palette.ink}
      position={[wire[0], wire[1], foot]}
      turn={along}
      width={1}
    />
  );
}

/** Upright from z = 0, its arm across the line that runs along x. */
function poleGeometry(high: number): BufferGeometry {
  const parts = [
    new CylinderGeometry(0.1, 0.14, high, 10).rotateX(Math.PI / 2).translate(0, 0, high / 2),
    new BoxGeometry(0.12, 2 * ARM, 0.14).translate(0, 0, high - OVER),
  ];
  const whole = mergeGeometries(parts);
  for (const part of parts) part.dispose();
  return whole;
}
