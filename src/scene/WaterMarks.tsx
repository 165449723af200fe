import { useEffect, useLayoutEffect, useMemo, useRef, type ReactElement } from "react";
import { BufferAttribute, BufferGeometry, DoubleSide } from "three";
import type { WorkRunoff } from "../estimate/index.js";
import type { PlanPoint } from "../site/index.js";
import { drape } from "./drape.js";
import { toScene, type SceneFrame, type ScenePoint } from "./frame.js";
import { chainSegments, InkLines } from "./InkLines.js";
import type { ScenePalette } from "./palette.js";
import type { SceneContents } from "./sceneTargets.js";
import { projectPoint, type SceneView } from "./sceneView.js";
import type { StageGround } from "./stageGround.js";
import type { ShownWay } from "./useWater.js";
import { arrowHeads, cellsOn, poolOn } from "./waterShapes.js";

interface WaterMarksProps {
  ways: readonly ShownWay[];
  /** The work whose slope is shown; null for none. */
  drains: WorkRunoff | null;
  frame: SceneFrame;
  ground: StageGround;
  palette: ScenePalette;
}

/** Ways of water with the hollows that they fill, and the slope that drains to a work. */
export function WaterMarks({ ways, drains, ...rest }: WaterMarksProps): ReactElement {
  return (
    <group>
      {ways.map((way, i) => (
        <WayMark key={i} way={way} {...rest} />
      ))}
      {drains !== null && <SlopeMark drains={drains} {...rest} />}
    </group>
  );
}

type OneMark = Omit<WaterMarksProps, "ways" | "drains">;

/** A way runs on the ground as found, and shows through what was dug or stands there since. */
function WayMark({ way, frame, palette }: OneMark & { way: ShownWay }): ReactElement {
  const { origin, reach } = frame;
  const path = useMemo(
    () =>
      way.path.map(([x, y, z]): ScenePoint => [x - origin[0], y - origin[1], z - origin[2] + 0.06]),
    [way, origin],
  );
  const line = useMemo(() => chainSegments(path, false), [path]);
  const heads = useMemo(() => arrowHeads(path, reach / 6, reach / 45), [path, reach]);
  const pools = useMemo(() => way.hollows.map((pool) => poolOn(pool, origin)), [way, origin]);
  return (
    <>
      {pools.map((pool, i) => (
        <Sheet key={i} corners={pool} colour={palette.pool} opacity={0.78} />
      ))}
      <InkLines segments={line} colour={palette.water} width={3} through />
      <InkLines segments={heads} colour={palette.water} width={2.4} through />
    </>
  );
}

function SlopeMark({
  drains,
  frame,
  ground,
  palette,
}: OneMark & { drains: WorkRunoff }): ReactElement {
  const cells = useMemo(() => {
    // Nearly as wide as the ground that each stands for, so that they hardly overlap.
    const each = drains.area / Math.max(1, drains.starts.length);
    return cellsOn(
      drains.starts.map((at) => toScene(frame, at)),
      Math.sqrt(each / Math.PI) * 0.95,
      ground,
    );
  }, [drains, frame, ground]);
  const draped = (path: WorkRunoff["longest"] | null): Float32Array => {
    const plan = (path ?? []).map(([x, y]): PlanPoint => toScene(frame, [x, y]));
    return chainSegments(drape(plan, ground, 0.08, false), false);
  };
  // eslint-disable-next-line react-hooks/exhaustive-deps
  const longest = useMemo(() => draped(drains.longest), [drains, frame, ground]);
  // eslint-disable-next-line react-hooks/exhaustive-deps
  const ditch = useMemo(() => draped(drains.ditch), [drains, frame, ground]);
  return (
    <>
      <Sheet corners={cells} colour={palette.pool} opacity={0.5} />
      <InkLines segments={longest} colour={palette.water} width={2.2} through />
      <InkLines segments={ditch} colour={palette.water} width={4} dash={0.9} through />
    </>
  );
}

/** A see-through sheet of triangles. */
function Sheet(props: { corners: Float32Array; colour: string; opacity: number }): ReactElement {
  const { corners, colour, opacity } = props;
  const geometry = useMemo(
    () => new BufferGeometry().setAttribute("position", new BufferAttribute(corners, 3)),
    [corners],
  );
  useEffect(() => () => geometry.dispose(), [geometry]);
  return (
    <mesh geometry={geometry} raycast={() => null} renderOrder={1}>
      <meshBasicMaterial
        color={colour}
        transparent
        opacity={opacity}
        depthWrite={false}
        side={DoubleSide}
        polygonOffset
        polygonOffsetFactor={-2}
        polygonOffsetUnits={-2}
      />
    </mesh>
  );
}

/** The number of each way, where it begins. */
export function WayNumbers(props: {
  ways: readonly ShownWay[];
  contents: SceneContents;
  view: SceneView;
}): ReactElement {
  const { ways, contents, view } = props;
  const layer = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => placeNumbers(layer.current, ways, contents, view));
  useEffect(
    () => view.subscribe(() => placeNumbers(layer.current, ways, contents, view)),
    [ways, contents, view],
  );
  return (
    <div className="way-numbers" ref={layer} aria-hidden="true">
      {ways.map((_, i) => (
        <span key={i}>{i + 1}</span>
      ))}
    </div>
  );
}

function placeNumbers(
  layer: HTMLElement | null,
  ways: readonly ShownWay[],
  { frame }: SceneContents,
  view: SceneView,
): void {
  ways.forEach(({ path }, i) => {
    const text = layer?.children[i];
    const [x, y, z] = path[0] ?? [NaN, NaN, NaN];
    const on = projectPoint(view, [x - frame.origin[0], y - frame.origin[1], z - frame.origin[2]]);
    if (!(text instanceof HTMLElement)) return;
    text.hidden = on === null;
    if (on === null) return;
    text.style.transform = `translate(${Math.round(on.left)}px, ${Math.round(on.top)}px) translate(-50%, -50%)`;
  });
}
