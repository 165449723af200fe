import { useMemo, type ReactElement } from "react";
import { ConeGeometry, CylinderGeometry } from "three";
import type { Material, Probe, Site } from "../../site/index.js";
import { toScene, type SceneFrame, type ScenePoint } from "../frame.js";
import { toneOf } from "../materialTone.js";
import { chainSegments, InkLines } from "../InkLines.js";
import type { ScenePalette } from "../palette.js";
import { shownProbes } from "../shown.js";
import type { StageGround } from "../stageGround.js";
import { EdgedMesh } from "./EdgedMesh.js";

interface ProbePinsProps {
  site: Site;
  frame: SceneFrame;
  found: StageGround;
  materials: ReadonlyMap<string, Material>;
  palette: ScenePalette;
  chosenIds: ReadonlySet<string>;
}

/** m of the last layer, which has no bottom, that a pin shows at its foot. */
const FOOT = 0.35;

/** One band of a pin: the layer's thickness, from the pin's foot up. */
interface Band {
  bottom: number;
  thickness: number;
  colour: string;
}

/** The bands of a probe, deepest first: the column under the ground, drawn standing on it. */
export function probeBands(
  site: Site,
  probe: Probe,
  materials: ReadonlyMap<string, Material>,
): Band[] {
  const layers = site.ground.layers;
  let bottom = 0;
  return layers
    .map((layer, i) => ({
      thickness: i === layers.length - 1 ? FOOT : (probe.thickness[i] ?? 0),
      colour: toneOf(layer.material, materials).colour,
    }))
    .reverse()
    .filter((band) => band.thickness > 0)
    .map((band) => {
      const placed = { ...band, bottom };
      bottom += band.thickness;
      return placed;
    });
}

/** Height of a probe's pin above the ground, m. */
export function probeHeight(site: Site, probe: Probe): number {
  const known = probe.thickness.slice(0, site.ground.layers.length - 1);
  return FOOT + known.reduce((sum, t) => sum + t, 0);
}

/** Probes as banded posts: what was found going down, at true thickness, standing on the ground. */
export function ProbePins(props: ProbePinsProps): ReactElement {
  return (
    <group>
      {shownProbes(props.site).map((probe) => (
        <ProbePin key={probe.id} {...props} probe={probe} />
      ))}
    </group>
  );
}

function ProbePin(props: ProbePinsProps & { probe: Probe }): ReactElement | null {
  const { site, frame, found, materials, palette, probe, chosenIds } = props;
  const [x, y] = toScene(frame, [probe.x, probe.y]);
  const ground = found.heightAt(x, y);
  const bands = useMemo(() => probeBands(site, probe, materials), [site, probe, materials]);
  const radius = Math.max(0.15, frame.reach / 170);
  const cap = useMemo(
    () => new ConeGeometry(radius * 1.6, radius * 2, 16).rotateX(-Math.PI / 2),
    [radius],
  );
  if (ground === null) return null;
  const top = ground.z + probeHeight(site, probe);
  return (
    <group>
      {bands.map((band) => (
        <PinBand
          key={band.bottom}
          band={band}
          radius={radius}
          at={[x, y, ground.z]}
          ink={palette.ink}
        />
      ))}
      <EdgedMesh
        geometry={cap}
        colour={chosenIds.has(probe.id) ? palette.stake : palette.paper}
        ink={palette.ink}
        position={[x, y, top + radius]}
        width={1}
      />
    </group>
  );
}

interface PinBandProps {
  band: Band;
  radius: number;
  at: ScenePoint;
  ink: string;
}

function PinBand({ band, radius, at, ink }: PinBandProps): ReactElement {
  const post = useMemo(
    () => new CylinderGeometry(radius, radius, band.thickness, 16).rotateX(Math.PI / 2),
    [band.thickness, radius],
  );
  return (
    <EdgedMesh
      geometry={post}
      colour={band.colour}
      ink={ink}
      position={[at[0], at[1], at[2] + band.bottom + band.thickness / 2]}
      width={1}
    />
  );
}

interface SurveyCrossesProps {
  site: Site;
  frame: SceneFrame;
  palette: ScenePalette;
  selectedId: string | null;
}

/** Survey points as small crosses at their own elevation. */
export function SurveyCrosses({
  site,
  frame,
  palette,
  selectedId,
}: SurveyCrossesProps): ReactElement {
  const arm = Math.max(0.25, frame.reach / 130);
  const [plain, chosen] = useMemo(() => {
    const crosses = (wanted: boolean) =>
      Float32Array.from(
        site.survey.points
          .filter((point) => (point.id === selectedId) === wanted)
          .flatMap((point) => {
            const [x, y] = toScene(frame, [point.x, point.y]);
            const z = point.z - frame.origin[2] + 0.06;
            return [
              ...chainSegments(
                [
                  [x - arm, y - arm, z],
                  [x + arm, y + arm, z],
                ],
                false,
              ),
              ...chainSegments(
                [
                  [x - arm, y + arm, z],
                  [x + arm, y - arm, z],
                ],
                false,
              ),
            ];
          }),
      );
    return [crosses(false), crosses(true)];
  }, [site.survey.points, frame, selectedId, arm]);
  return (
    <group>
      <InkLines segments={plain} colour={palette.ink} width={1.6} />
      <InkLines segments={chosen} colour={palette.stake} width={3} through />
    </group>
  );
}
