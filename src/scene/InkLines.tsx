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
  /** When it is drawn among what is not opaque; 1 unless given. */
  order?: number;
}

/** Lines of one width and colour, as a pen would draw them, whatever the distance. */
export function InkLines(props: InkLinesProps): ReactElement | null {
  const { segments, colour, width, opacity = 1, dash, through = false, order = 1 } = props;
  const size = useThree((state) => state.size);
  // One object for as long as the lines live; only its places change, so no shader is made anew.
  const lines = useMemo(() => {
    const made = new LineSegments2(new LineSegmentsGeometry(), new LineMaterial());
    made.raycast = () => undefined;
    return made;
  }, []);
  useEffect(() => () => lines.material.dispose(), [lines]);
  const geometry = useMemo(() => segmentGeometry(segments), [segments]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  if (segments.length < 6) return null;
  return (
    <primitive
      object={lines}
      geometry={geometry}
      renderOrder={through ? 5 : order}
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

function segmentGeometry(segments: Float32Array): LineSegmentsGeometry {
  const geometry = new LineSegmentsGeometry();
  if (segments.length < 6) return geometry;
  geometry.setPositions(segments);
  // Dashes need the way along each line; a carrier object is what works it out.
  new LineSegments2(geometry).computeLineDistances();
  return geometry;
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
