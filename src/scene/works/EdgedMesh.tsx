import { useEffect, useMemo, type ReactElement } from "react";
import { EdgesGeometry, type BufferGeometry } from "three";
import { InkLines } from "../InkLines.js";

/** Degrees between faces from which their edge is inked: round things keep smooth sides. */
const CREASE = 32;

interface EdgedMeshProps {
  /** Owned here: disposed when it changes or the component goes. */
  geometry: BufferGeometry;
  colour: string;
  ink: string;
  position?: readonly [number, number, number];
  /** Turn about the upright axis, radians counter-clockwise. */
  turn?: number;
  /** Ink width, CSS px. */
  width?: number;
  /** Seen through what hides it, faintly. */
  ghost?: boolean;
}

/** A matt solid with its edges inked. */
export function EdgedMesh(props: EdgedMeshProps): ReactElement {
  const { geometry, colour, ink, position = [0, 0, 0], turn = 0, width = 1.2 } = props;
  const ghost = props.ghost ?? false;
  const edges = useMemo(() => {
    const lines = new EdgesGeometry(geometry, CREASE);
    const ends = Float32Array.from(lines.getAttribute("position").array);
    lines.dispose();
    return ends;
  }, [geometry]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  return (
    <group position={[...position]} rotation={[0, 0, turn]}>
      <mesh geometry={geometry} raycast={() => null} castShadow={!ghost} receiveShadow={!ghost}>
        <meshLambertMaterial
          key={ghost ? "ghost" : "solid"}
          color={colour}
          flatShading
          transparent={ghost}
          opacity={ghost ? 0.35 : 1}
          depthTest={!ghost}
          polygonOffset
          polygonOffsetFactor={1}
          polygonOffsetUnits={1}
        />
      </mesh>
      <InkLines segments={edges} colour={ink} width={width} opacity={0.9} through={ghost} />
    </group>
  );
}
