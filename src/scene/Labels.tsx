import { useEffect, useLayoutEffect, useMemo, useRef, type ReactElement } from "react";
import type { PlanPoint, Work } from "../site/index.js";
import { words } from "../words/index.js";
import { workFigure } from "./figures.js";
import { worstOfWork } from "./findingMarks.js";
import type { ScenePoint } from "./frame.js";
import { layLabels, type LabelBox } from "./labelLayout.js";
import type { Selection } from "./props.js";
import { hasTag, probeEnds, screenBoxOf, workAnchor, type SceneContents } from "./sceneTargets.js";
import { projectPoint, type SceneView } from "./sceneView.js";
import type { ScreenBox } from "./spotLayout.js";
import { placeOf, slideFor } from "./pickAt.js";
import type { StartPress } from "./useScenePointer.js";

interface LabelsProps {
  contents: SceneContents;
  selected: Selection | null;
  view: SceneView;
  onSelect: (selection: Selection) => void;
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
}

/** Paper tags over the works, each with a line to its thing; kept apart on the screen. */
export function Labels({
  contents,
  selected,
  view,
  onSelect,
  startPress,
  idle,
}: LabelsProps): ReactElement {
  const tags = useMemo(() => tagsOf(contents, selected), [contents, selected]);
  const layer = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    if (layer.current !== null) placeTags(layer.current, tags, contents, view);
  });
  useEffect(
    () =>
      view.subscribe(() => {
        if (layer.current !== null) placeTags(layer.current, tags, contents, view);
        // First, so that the heights know in the same frame where the labels stand.
      }, true),
    [tags, contents, view],
  );
  return (
    <div className="scene-tags" ref={layer} inert={idle}>
      <svg className="scene-stalks" aria-hidden="true">
        {tags.map((tag) => (
          <g key={tag.selection.id} data-chosen={sameThing(tag.selection, selected)}>
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
          aria-pressed={sameThing(tag.selection, selected)}
          onPointerDown={(event) => {
            if (event.button !== 0 || tag.place === null) return;
            const slide = slideFor(contents, tag.selection);
            startPress(event, tag.selection, { part: "body" }, tag.place, slide);
          }}
          onClick={(event) => {
            // A pointer's click is told by the press; this is the keyboard's.
            if (event.detail === 0) onSelect(tag.selection);
          }}
        >
          <b>
            {tag.name}
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

function sameThing(a: Selection, b: Selection | null): boolean {
  return b !== null && a.kind === b.kind && a.id === b.id;
}

function tagsOf(contents: SceneContents, selected: Selection | null): Tag[] {
  const tags = contents.works.map((work): Tag => {
    const selection: Selection = { kind: "work", id: work.id };
    return {
      selection,
      name: work.name,
      figure: workFigure(contents.site, work, contents.estimate, contents.stage),
      found: worstOfWork(work, contents.estimate?.findings ?? []),
      anchor: workAnchor(work, contents),
      fits: (width) => hasTag(work, selected, width),
      place: placeOf(contents, selection),
      work,
    };
  });
  const ends = selected?.kind === "probe" ? probeEnds(contents, selected.id) : null;
  if (selected !== null && ends !== null) {
    const place = placeOf(contents, selected);
    const name = `Probe ${selected.id}`;
    const anchor = ends.top;
    const fits = (): boolean => true;
    tags.push({
      ...{ selection: selected, name, figure: null, found: null },
      ...{ anchor, fits, place, work: null },
    });
  }
  return tags;
}

/** Sets the places of the tags and their stalks straight on the elements: no render per frame. */
function placeTags(
  layer: HTMLElement,
  tags: readonly Tag[],
  contents: SceneContents,
  view: SceneView,
): void {
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
    button?.toggleAttribute("hidden", hidden);
    stalks[index]?.setAttribute("visibility", hidden ? "hidden" : "visible");
    if (hidden && !off && tag.work !== null) {
      const thing = screenBoxOf(tag.work, contents, view);
      if (thing !== null && thing.width < view.width / 3) unnamed.push(thing);
    }
    if (hidden || button === undefined) return;
    const [width, height] = [button.offsetWidth, button.offsetHeight];
    const thing = tag.work === null ? null : screenBoxOf(tag.work, contents, view);
    // Close to, a thing fills the view: then the label keeps clear of its middle only.
    const small = thing !== null && thing.width < view.width / 3 && thing.height < view.height / 3;
    shown.push({ index, box: { anchor, width, height, ...(small ? { thing } : {}) } });
  });
  const bounds = { left: 8, top: 56, right: view.width - 8, bottom: view.height - 76 };
  const places = layLabels(
    shown.map((s) => s.box),
    bounds,
    unnamed,
  );
  view.tags = shown.map(({ box }, i) => ({
    ...(places[i] ?? box.anchor),
    width: box.width,
    height: box.height,
  }));
  shown.forEach(({ index, box }, i) => {
    const place = places[i];
    const button = buttons[index];
    if (place === undefined || button === undefined) return;
    button.style.transform = `translate(${Math.round(place.left)}px, ${Math.round(place.top)}px)`;
    drawStalk(stalks[index], box, place);
  });
}

function drawStalk(
  stalk: SVGGElement | undefined,
  box: LabelBox,
  place: { left: number; top: number },
): void {
  const [line, dot] = [stalk?.querySelector("line"), stalk?.querySelector("circle")];
  const { left, top } = box.anchor;
  const nearX = Math.min(place.left + box.width, Math.max(place.left, left));
  const nearY = Math.min(place.top + box.height, Math.max(place.top, top));
  line?.setAttribute("x1", String(left));
  line?.setAttribute("y1", String(top));
  line?.setAttribute("x2", String(nearX));
  line?.setAttribute("y2", String(nearY));
  dot?.setAttribute("cx", String(left));
  dot?.setAttribute("cy", String(top));
}
