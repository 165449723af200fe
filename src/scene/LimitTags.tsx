import { useRef, type ReactElement } from "react";
import { area, pipeSlope, type UnitSystem } from "../units/index.js";
import { words } from "../words/index.js";
import type { LimitMarksShown, LimitTag } from "./marksOfLimits.js";
import { RANK, useOverLayer } from "./overLayers.js";
import type { SceneContents } from "./sceneTargets.js";
import { projectPoint, type SceneView } from "./sceneView.js";
import { sharedArea, type ScreenBox } from "./spotLayout.js";
import "./limitTags.css";

interface LimitTagsProps {
  marks: LimitMarksShown;
  contents: SceneContents;
  view: SceneView;
}

/** Distances written at the bands and lines, and what hatch and shading stand for. */
export function LimitTags({ marks, contents, view }: LimitTagsProps): ReactElement {
  const layer = useRef<HTMLDivElement>(null);
  const { tags } = marks;
  const { units } = contents.site;
  useOverLayer(view, RANK.limits, (taken) => place(layer.current, tags, view, taken));
  return (
    <>
      <div className="limit-tags" ref={layer} data-testid="limit-tags">
        {tags.map(({ text, wrong }, i) => (
          <span key={i} data-wrong={wrong || undefined}>
            {text}
          </span>
        ))}
      </div>
      <LimitLegend {...{ marks, units }} />
    </>
  );
}

/** What hatch and shading of the ground stand for. */
function LimitLegend(props: { marks: LimitMarksShown; units: UnitSystem }): ReactElement {
  const { setbacks, field, steep } = props.marks;
  const has = (of: Float32Array | undefined): boolean => of?.some((deep) => deep > 0) === true;
  return (
    <div className="limit-legend" data-testid="limit-legend" data-over="">
      {setbacks && !has(field?.some) && <p data-look="none">{words.limits.noBands}</p>}
      {setbacks && has(field?.some) && <p data-look="some">{words.limits.hatchSome}</p>}
      {setbacks && has(field?.every) && <p data-look="every">{words.limits.hatchEvery}</p>}
      {steep !== null && (
        <p data-look="steep" data-testid="steep-note" title={steep.source}>
          {steepWords(
            area.print(steep.area, props.units),
            pipeSlope.print(steep.from, props.units),
            steep.area,
          )}
        </p>
      )}
    </div>
  );
}

function steepWords(printed: string, share: string, square: number): string {
  return square > 0 ? words.limits.steepNote(printed, share) : words.limits.noSteep(share);
}

/** Part of the view that distances may cover, so that on a phone the ground can still be seen. */
const MOST_COVERED = 0.05;

/**
 * Puts each tag at its place; one that has no room beside labels and earlier tags is left out, and so
 * is one beyond `MOST_COVERED`, but for those that tell of a setback fallen short of.
 */
function place(
  layer: HTMLElement | null,
  tags: readonly LimitTag[],
  view: SceneView,
  taken: readonly ScreenBox[],
): readonly ScreenBox[] {
  const stood: ScreenBox[] = [];
  let room = MOST_COVERED * view.width * view.height;
  tags.forEach(({ seats, wrong }, i) => {
    const tag = layer?.children[i];
    if (!(tag instanceof HTMLElement)) return;
    // What is hidden has no size.
    tag.hidden = false;
    const [width, height] = [tag.offsetWidth, tag.offsetHeight];
    const boxes = seats.flatMap((at) => {
      const on = projectPoint(view, at);
      return on === null
        ? []
        : [{ left: on.left - width / 2, top: on.top - height / 2, width, height }];
    });
    const full = [...taken, ...stood];
    const fits = wrong || width * height <= room;
    const box = fits
      ? boxes.find((one) => !full.some((other) => sharedArea(one, other) > 0))
      : undefined;
    tag.hidden = box === undefined;
    if (box === undefined) return;
    room -= width * height;
    stood.push(box);
    tag.style.transform = `translate(${Math.round(box.left)}px, ${Math.round(box.top)}px)`;
  });
  return stood;
}
