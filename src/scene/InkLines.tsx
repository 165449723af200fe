import { useThree } from "@react-three/fiber";
import { useEffect, useMemo, type ReactElement } from "react";
import { LineMaterial } from "three/examples/jsm/lines/LineMaterial.js";
import { LineSegments2 } from "three/examples/jsm/lines/LineSegments2.js";
import { LineSegmentsGeometry } from "three/examples/jsm/lines/LineSegmentsGeometry.js";
import type { ScenePoint } from "./frame.js";

interface InkLinesProps {
  /** x y z pairs of segment ends, scene frame. */
  segments: Float32Array;
  colour: string;
  /** Width on the screen, CSS px. */
  width: number;
  opacity?: number;
  /** m of dash and of gap; solid when absent. */
  dash?: number;
  /** Seen through the ground and what stands on it. */
  through?: boolean;
}

/** Lines of one width and colour, as a pen would draw them, whatever the distance. */
export function InkLines(props: InkLinesProps): ReactElement | null {
  const { segments, colour, width, opacity = 1, dash, through = false } = props;
  const size = useThree((state) => state.size);
  const lines = useMemo(() => {
    if (segments.length < 6) return null;
    const geometry = new LineSegmentsGeometry();
    geometry.setPositions(segments);
    const made = new LineSegments2(geometry, new LineMaterial({ alphaToCoverage: false }));
    made.computeLineDistances();
    made.raycast = () => undefined;
    return made;
  }, [segments]);
  useEffect(() => {
    if (lines === null) return undefined;
    return () => {
      lines.geometry.dispose();
      lines.material.dispose();
    };
  }, [lines]);
  if (lines === null) return null;
  return (
    <primitive
      object={lines}
      renderOrder={through ? 5 : 1}
      material-color={colour}
      material-linewidth={width}
      material-opacity={opacity}
      material-transparent={opacity < 1 || through}
      material-depthTest={!through}
      material-depthWrite={!through && opacity === 1}
      material-dashed={dash !== undefined}
      material-dashSize={dash ?? 1}
      material-gapSize={(dash ?? 1) * 0.7}
      material-resolution={[size.width, size.height]}
    />
  );
}

/** Segment ends of a chain of places; `closed` joins the last to the first. */
export function chainSegments(chain: readonly ScenePoint[], closed: boolean): Float32Array {
  const ends: number[] = [];
  chain.forEach((at, i) => {
    const next = chain[i + 1] ?? (closed ? chain[0] : undefined);
    if (next !== undefined) ends.push(...at, ...next);
  });
  return Float32Array.from(ends);
}
