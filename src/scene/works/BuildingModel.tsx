import { useMemo, type ReactElement } from "react";
import { BufferAttribute, BufferGeometry } from "three";
import type { Building } from "../../site/index.js";
import { roofTriangles, wallTriangles, type Triangles } from "../buildingShape.js";
import { toScene, type SceneFrame } from "../frame.js";
import type { ScenePalette } from "../palette.js";
import type { StageGround } from "../stageGround.js";
import { EdgedMesh } from "./EdgedMesh.js";

interface BuildingModelProps {
  building: Building;
  frame: SceneFrame;
  found: StageGround;
  palette: ScenePalette;
}

/** A building as a mass: walls down into the ground, and a plain pitched roof. */
export function BuildingModel(props: BuildingModelProps): ReactElement {
  const { building, frame, found, palette } = props;
  const [walls, plinth, roof] = useMemo(() => {
    const outline = building.outline.map((at) => toScene(frame, at));
    const base = building.base - frame.origin[2];
    const lowest = Math.min(base, ...outline.map(([x, y]) => found.heightAt(x, y)?.z ?? base));
    return [
      solid(wallTriangles(outline, base, base + building.height)),
      solid(wallTriangles(outline, lowest - 0.3, base)),
      solid(roofTriangles(outline, base + building.height, 0.35).triangles),
    ];
  }, [building.outline, building.base, building.height, frame, found]);
  return (
    <group>
      <EdgedMesh geometry={walls} colour={palette.cladding} ink={palette.ink} />
      <EdgedMesh geometry={plinth} colour={palette.concrete} ink={palette.ink} />
      <EdgedMesh geometry={roof} colour={palette.roof} ink={palette.ink} />
    </group>
  );
}

function solid(triangles: Triangles): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(Float32Array.from(triangles), 3));
  geometry.computeVertexNormals();
  return geometry;
}
