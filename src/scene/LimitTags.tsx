import { useEffect, useLayoutEffect, useRef, type ReactElement } from "react";
import { area, pipeSlope } from "../units/index.js";
import { words } from "../words/index.js";
import type { LimitMarksShown, LimitTag } from "./marksOfLimits.js";
import type { SceneContents } from "./sceneTargets.js";
import { projectPoint, type SceneView } from "./sceneView.js";
import { sharedArea, type ScreenBox } from "./spotLayout.js";
import "./limitTags.css";

interface LimitTagsProps {
  marks: LimitMarksShown;
  contents: SceneContents;
  view: SceneView;
}

/** Distances written at the bands and lines, and what the shading of steep ground stands for. */
export function LimitTags({ marks, contents, view }: LimitTagsProps): ReactElement {
  const layer = useRef<HTMLDivElement>(null);
  const { tags, steep } = marks;
  const { units } = contents.site;
  useLayoutEffect(() => place(layer.current, tags, view));
  useEffect(() => view.subscribe(() => place(layer.current, tags, view)), [tags, view]);
  return (
    <>
      <div className="limit-tags" ref={layer} data-testid="limit-tags">
        {tags.map(({ text, wrong }, i) => (
          <span key={i} data-wrong={wrong || undefined}>
            {text}
          </span>
        ))}
      </div>
      {steep !== null && (
        <p className="steep-note" data-testid="steep-note" data-over="" title={steep.source}>
          {steepWords(
            area.print(steep.area, units),
            pipeSlope.print(steep.from, units),
            steep.area,
          )}
        </p>
      )}
    </>
  );
}

function steepWords(printed: string, share: string, square: number): string {
  return square > 0 ? words.limits.steepNote(printed, share) : words.limits.noSteep(share);
}

/** Puts each tag at its place; one that has no room beside labels and earlier tags is left out. */
function place(layer: HTMLElement | null, tags: readonly LimitTag[], view: SceneView): void {
  const full: ScreenBox[] = [...view.tags];
  tags.forEach(({ seats }, i) => {
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
    const box = boxes.find((one) => !full.some((other) => sharedArea(one, other) > 0));
    tag.hidden = box === undefined;
    if (box === undefined) return;
    full.push(box);
    tag.style.transform = `translate(${Math.round(box.left)}px, ${Math.round(box.top)}px)`;
  });
}
