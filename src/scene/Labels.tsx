import { useMemo, useRef, type ReactElement } from "react";
import { findLimit, type PlanPoint, type Work } from "../site/index.js";
import { words } from "../words/index.js";
import { workFigure } from "./figures.js";
import { worstOfWork } from "./findingMarks.js";
import type { ScenePoint } from "./frame.js";
import { limitAnchor } from "./limitPick.js";
import { layLabels, stalkOf, type LabelBox } from "./labelLayout.js";
import { RANK, useOverLayer, writable } from "./overLayers.js";
import type { Selection } from "./props.js";
import {
  hasTag,
  NARROW,
  probeEnds,
  screenBoxOf,
  trenchStrips,
  workAnchor,
  type SceneContents,
} from "./sceneTargets.js";
import { isAmong, isLocked } from "./shown.js";
import { projectPoint, type SceneView } from "./sceneView.js";
import type { ScreenBox } from "./spotLayout.js";
import { limitName } from "./snapTargets.js";
import { placeOf, slideFor } from "./pickAt.js";
import type { StartPress } from "./useScenePointer.js";

interface LabelsProps {
  contents: SceneContents;
  selected: Selection | null;
  /** What else is chosen with it. */
  also: readonly Selection[];
  view: SceneView;
  onSelect: (selection: Selection, add: boolean) => void;
  startPress: StartPress;
  /** True while something is placed: then tags take neither clicks nor the focus. */
  idle: boolean;
}

interface Tag {
  selection: Selection;
  name: string;
  figure: string | null;
  /** The worst that was found about it. */
  found: "stop" | "caution" | null;
  anchor: ScenePoint;
  /** False where the scene is too narrow for it. */
  fits: (width: number) => boolean;
  place: PlanPoint | null;
  work: Work | null;
  /** True for what is picked. */
  chosen: boolean;
}

/** Paper tags over the works, each with a line to its thing; kept apart on the screen. */
export function Labels({
  contents,
  selected,
  also,
  view,
  onSelect,
  startPress,
  idle,
}: LabelsProps): ReactElement {
  const chosen = useMemo(() => [selected, ...also], [selected, also]);
  const tags = useMemo(() => tagsOf(contents, chosen), [contents, chosen]);
  const layer = useRef<HTMLDivElement>(null);
  useOverLayer(view, RANK.labels, (taken) =>
    layer.current === null ? [] : placeTags(layer.current, tags, contents, view, taken),
  );
  return (
    <div className="scene-tags" ref={layer} inert={idle}>
      <svg className="scene-stalks" aria-hidden="true">
        {tags.map((tag) => (
          <g key={tag.selection.id} data-chosen={isAmong(chosen, tag.selection)}>
            <line />
            <circle r="3" />
          </g>
        ))}
      </svg>
      {tags.map((tag) => (
        <button
          key={tag.selection.id}
          type="button"
          className="scene-tag"
          data-testid={`scene-label-${tag.selection.id}`}
          aria-pressed={isAmong(chosen, tag.selection)}
          onPointerDown={(event) => {
            if (event.button !== 0 || tag.place === null) return;
            const slide = slideFor(contents, tag.selection);
            startPress(event, tag.selection, { part: "body" }, tag.place, slide);
          }}
          onClick={(event) => {
            // A pointer's click is told by the press; this is the keyboard's.
            if (event.detail === 0) onSelect(tag.selection, event.shiftKey);
          }}
        >
          <b>
            {tag.name}
            {contents.fixed !== true && isLocked(contents, tag.selection) && <TagLock />}
            {tag.found !== null && (
              <i className="scene-found" data-level={tag.found}>
                <span className="unseen">, {words.book.findings.tag[tag.found]}</span>
              </i>
            )}
          </b>
          {tag.figure !== null && <span>{tag.figure}</span>}
        </button>
      ))}
    </div>
  );
}

/** A small padlock behind the name of what is locked. */
function TagLock(): ReactElement {
  return (
    <svg className="scene-tag-lock" viewBox="0 0 16 16" role="img">
      <title>{words.picked.list.isLocked}</title>
      <path d="M5 8V5.5a3 3 0 0 1 6 0V8" />
      <rect x="3" y="8" width="10" height="6" />
    </svg>
  );
}

function tagsOf(contents: SceneContents, chosen: readonly (Selection | null)[]): Tag[] {
  const tags = contents.works.map((work): Tag => {
    const selection: Selection = { kind: "work", id: work.id };
    return {
      selection,
      name: work.name,
      figure: workFigure(contents.site, work, contents.estimate, contents.stage),
      found: worstOfWork(work, contents.estimate?.findings ?? []),
      anchor: workAnchor(work, contents),
      fits: (width) => hasTag(work, chosen, width),
      place: placeOf(contents, selection),
      work,
      chosen: isAmong(chosen, selection),
    };
  });
  for (const selection of chosen) {
    const named = selection === null ? null : namedTag(contents, selection);
    if (selection === null || named === null) continue;
    const place = placeOf(contents, selection);
    const { name, anchor } = named;
    const fits = (): boolean => true;
    tags.push({
      ...{ selection, name, figure: null, found: null },
      ...{ anchor, fits, place, work: null, chosen: true },
    });
  }
  return tags;
}

/** Name and anchor of a thing that has a label only while it is chosen; null for what has none. */
function namedTag(
  contents: SceneContents,
  { kind, id }: Selection,
): { name: string; anchor: ScenePoint } | null {
  const ends = kind === "probe" ? probeEnds(contents, id) : null;
  if (ends !== null) return { name: words.scene.probe(id), anchor: ends.top };
  const limit = kind === "limit" ? findLimit(contents.site, id) : null;
  const anchor = limit === null ? null : limitAnchor(contents, limit);
  return limit === null || anchor === null ? null : { name: limitName(limit), anchor };
}

/**
 * Sets the places of the tags and their stalks straight on the elements: no render per frame. The
 * boxes of the tags, and of what the page lays over the ground.
 */
function placeTags(
  layer: HTMLElement,
  tags: readonly Tag[],
  contents: SceneContents,
  view: SceneView,
  taken: readonly ScreenBox[],
): readonly ScreenBox[] {
  const buttons = [...layer.querySelectorAll<HTMLElement>(".scene-tag")];
  const stalks = [...layer.querySelectorAll<SVGGElement>(".scene-stalks > g")];
  const shown: { index: number; box: LabelBox }[] = [];
  const unnamed: ScreenBox[] = [];
  tags.forEach((tag, index) => {
    const anchor = projectPoint(view, tag.anchor);
    const button = buttons[index];
    const off =
      anchor === null ||
      anchor.left < -20 ||
      anchor.top < -20 ||
      anchor.left > view.width + 20 ||
      anchor.top > view.height + 20;
    const hidden = off || !tag.fits(view.width);
    show(button, stalks[index], !hidden);
    if (hidden && !off && tag.work !== null) {
      const thing = screenBoxOf(tag.work, contents, view);
      if (thing !== null && thing.width < view.width / 3) unnamed.push(thing);
    }
    if (hidden || button === undefined) return;
    const [width, height] = [button.offsetWidth, button.offsetHeight];
    const thing = tag.work === null ? null : screenBoxOf(tag.work, contents, view);
    // Close to, a thing fills the view: then the label keeps clear of its middle only.
    const small = thing !== null && thing.width < view.width / 3 && thing.height < view.height / 3;
    const one = { index, box: { anchor, width, height, ...(small ? { thing } : {}) } };
    // What is picked has the first choice of a place.
    if (tag.chosen) shown.unshift(one);
    else shown.push(one);
  });
  const free = writable(view);
  // The button that shows what is picked stands at the right.
  const kept = layer.querySelector("[aria-pressed=true]") === null ? 0 : 58;
  const bounds = {
    ...{ left: free.left, top: free.top },
    ...{ right: free.left + free.width - kept, bottom: free.top + free.height },
  };
  const over = laidOver(layer);
  const places = layLabels(
    shown.map((s) => s.box),
    bounds,
    {
      unnamed,
      strips: trenchStrips(contents, view),
      taken: over,
      handles: taken,
      fewer: view.width < NARROW,
    },
  );
  shown.forEach(({ index, box }, i) => {
    const place = places[i] ?? null;
    const button = buttons[index];
    show(button, stalks[index], place !== null);
    if (place === null || button === undefined) return;
    button.style.transform = `translate(${Math.round(place.left)}px, ${Math.round(place.top)}px)`;
    drawStalk(stalks[index], box, place);
  });
  const stood = shown.flatMap(({ box: { width, height } }, i) => {
    const place = places[i] ?? null;
    return place === null ? [] : [{ ...place, width, height }];
  });
  return [...stood, ...over];
}

function show(button: HTMLElement | undefined, stalk: SVGGElement | undefined, on: boolean): void {
  button?.toggleAttribute("hidden", !on);
  stalk?.setAttribute("visibility", on ? "visible" : "hidden");
}

/** Boxes of what the scene itself lays over the ground: the scale, north, and the legend. */
function laidOver(layer: HTMLElement): ScreenBox[] {
  const over = layer.parentElement?.querySelectorAll<HTMLElement>(
    ".scene-scale, .scene-north, [data-over]",
  );
  return [...(over ?? [])].map((one) => ({
    ...{ left: one.offsetLeft, top: one.offsetTop },
    ...{ width: one.offsetWidth, height: one.offsetHeight },
  }));
}

function drawStalk(
  stalk: SVGGElement | undefined,
  box: LabelBox,
  place: { left: number; top: number },
): void {
  const [line, dot] = [stalk?.querySelector("line"), stalk?.querySelector("circle")];
  const [{ left, top }, near] = stalkOf(box, place);
  line?.setAttribute("x1", String(left));
  line?.setAttribute("y1", String(top));
  line?.setAttribute("x2", String(near.left));
  line?.setAttribute("y2", String(near.top));
  dot?.setAttribute("cx", String(left));
  dot?.setAttribute("cy", String(top));
}
