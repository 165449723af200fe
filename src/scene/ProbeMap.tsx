import { useMemo, useRef, type ReactElement } from "react";
import type { PlanPoint } from "../site/index.js";
import { words } from "../words/index.js";
import { drape } from "./drape.js";
import { toScene, type SceneFrame } from "./frame.js";
import { chainSegments, InkLines } from "./InkLines.js";
import { RANK, useOverLayer, writable } from "./overLayers.js";
import type { ScenePalette } from "./palette.js";
import type { ProbeWorth } from "./props.js";
import type { SceneContents } from "./sceneTargets.js";
import { projectPoint, type SceneView } from "./sceneView.js";
import { sharedArea, type ScreenBox } from "./spotLayout.js";
import type { StageGround } from "./stageGround.js";

interface ProbeMapProps {
  worth: ProbeWorth;
  frame: SceneFrame;
  ground: StageGround;
  palette: ScenePalette;
}

const CORNERS = 12;
/** Circles smaller than this share of the largest would be dots that tell nothing. */
const SMALLEST = 0.12;

/** How much a further probe would tell, place by place: a circle the larger the more; the best marked. */
export function ProbeMap({ worth, frame, ground, palette }: ProbeMapProps): ReactElement {
  const circles = useMemo(() => {
    const most = Math.max(...worth.places.map(({ share }) => share));
    const largest = spacing(worth) * 0.46;
    return joined(
      worth.places.flatMap(({ at, share }) => {
        const size = most > 0 ? Math.sqrt(share / most) : 0;
        return size < SMALLEST ? [] : [circle(toScene(frame, at), size * largest)];
      }),
      ground,
    );
  }, [worth, frame, ground]);
  const best = useMemo(() => {
    if (worth.best === null) return new Float32Array();
    const [x, y] = toScene(frame, worth.best);
    const arm = Math.max(0.6, frame.reach / 40);
    return joined(
      [
        circle([x, y], arm * 0.7),
        [
          [x - arm, y],
          [x + arm, y],
        ],
        [
          [x, y - arm],
          [x, y + arm],
        ],
      ],
      ground,
    );
  }, [worth, frame, ground]);
  return (
    <group>
      <InkLines segments={circles} colour={palette.ink} width={1.2} opacity={0.75} through />
      <InkLines segments={best} colour={palette.stake} width={3} through />
    </group>
  );
}

/** m between neighbours: the least distance from the first place to another. */
function spacing({ places }: ProbeWorth): number {
  const [first, ...others] = places;
  if (first === undefined || others.length === 0) return 1;
  return Math.min(...others.map(({ at }) => Math.hypot(at[0] - first.at[0], at[1] - first.at[1])));
}

function circle([x, y]: readonly [number, number, ...unknown[]], radius: number): PlanPoint[] {
  return Array.from({ length: CORNERS + 1 }, (_, i): PlanPoint => {
    const turn = (2 * Math.PI * i) / CORNERS;
    return [x + radius * Math.cos(turn), y + radius * Math.sin(turn)];
  });
}

function joined(paths: readonly PlanPoint[][], ground: StageGround): Float32Array {
  return Float32Array.from(
    paths.flatMap((path) => [...chainSegments(drape(path, ground, 0.08, false, 1), false)]),
  );
}

/** What the mark of the next probe is called, beside it. */
export function NextProbeTag(props: {
  at: PlanPoint;
  contents: SceneContents;
  view: SceneView;
}): ReactElement {
  const { at, contents, view } = props;
  const tag = useRef<HTMLDivElement>(null);
  useOverLayer(view, RANK.nextProbe, (taken) => place(tag.current, at, contents, view, taken));
  return (
    <div className="scene-next-probe" ref={tag} data-testid="next-probe-tag">
      {words.scene.probeHereNext}
    </div>
  );
}

/** px of the tag and its distance from the mark. */
const TAG = { width: 124, height: 26, off: 14 };

function place(
  tag: HTMLElement | null,
  at: PlanPoint,
  { frame, ground }: SceneContents,
  view: SceneView,
  taken: readonly ScreenBox[],
): readonly ScreenBox[] {
  if (tag === null) return [];
  const [x, y] = toScene(frame, at);
  const on = projectPoint(view, [x, y, ground.heightAt(x, y)?.z ?? 0]);
  tag.hidden = on === null;
  if (on === null) return [];
  const { width, height, off } = TAG;
  const free = writable(view);
  // To the right or left of the mark, above or below it, then farther off: the first that covers
  // nothing, else the one that covers least.
  const seats = [1, 2.6, 4.2].flatMap((far) =>
    [-height * far - off / 2, off / 2 + height * (far - 1)].flatMap((down) =>
      [off, -off - width, -width / 2].map((aside): ScreenBox => {
        const most = { left: free.left + free.width - width, top: free.top + free.height - height };
        const left = Math.min(most.left, Math.max(free.left, on.left + aside));
        return { left, top: Math.min(most.top, Math.max(free.top, on.top + down)), width, height };
      }),
    ),
  );
  const covers = (seat: ScreenBox): number =>
    taken.reduce((sum, other) => sum + sharedArea(seat, other), 0);
  const seat = seats.reduce((best, one) => (covers(one) < covers(best) ? one : best));
  tag.style.transform = `translate(${Math.round(seat.left)}px, ${Math.round(seat.top)}px)`;
  return [seat];
}
