import { useEffect, useLayoutEffect, useMemo, useRef, type ReactElement } from "react";
import type { PlanPoint } from "../site/index.js";
import { words } from "../words/index.js";
import { toScene } from "./frame.js";
import { groundReading } from "./groundReading.js";
import type { SceneContents } from "./sceneTargets.js";
import { projectPoint, type SceneView } from "./sceneView.js";

interface GroundNoteProps {
  /** Site coordinates. */
  at: PlanPoint;
  schemeId: string;
  contents: SceneContents;
  view: SceneView;
  onClose: () => void;
}

/** A small tag on a place of the ground: its height, its slope, and how deep each layer lies. */
export function GroundNote(props: GroundNoteProps): ReactElement | null {
  const { at, schemeId, contents, view, onClose } = props;
  const tag = useRef<HTMLDivElement>(null);
  const { site, stage } = contents;
  const reading = useMemo(
    () => groundReading(site, schemeId, stage, at),
    [site, schemeId, stage, at],
  );
  useLayoutEffect(() => {
    const put = (): void => {
      if (tag.current !== null) placeTag(tag.current, at, contents, view);
    };
    put();
    return view.subscribe(put);
  }, [at, contents, view, reading]);
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.key !== "Escape") return;
      event.preventDefault();
      event.stopPropagation();
      onClose();
    };
    document.addEventListener("keydown", onKey, true);
    return () => document.removeEventListener("keydown", onKey, true);
  }, [onClose]);
  if (reading === null) return null;
  return (
    <div className="ground-note" ref={tag} role="status" data-testid="ground-note">
      <div className="ground-note-head">
        <b>{reading.height}</b>
        <button type="button" aria-label={words.looking.closeNote} onClick={onClose}>
          ×
        </button>
      </div>
      {reading.change !== null && <p>{reading.change}</p>}
      <p>{reading.slope}</p>
      <ul>
        {reading.layers.map((layer, i) => (
          <li key={i}>
            <span>{layer.name}</span> <span>{layer.down}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}

/** px at the foot of the scene that the stages' slider takes. */
const ABOVE_STAGES = 68;

function placeTag(
  tag: HTMLElement,
  place: PlanPoint,
  contents: SceneContents,
  view: SceneView,
): void {
  const [x, y] = toScene(contents.frame, place);
  const ground = contents.ground.heightAt(x, y);
  const at = ground === null ? null : projectPoint(view, [x, y, ground.z]);
  tag.hidden = at === null;
  if (at === null) return;
  const [width, height] = [tag.offsetWidth, tag.offsetHeight];
  // Beside the finger that asked, and on the screen.
  const wanted = at.left + 22 + width > view.width - 8 ? at.left - 22 - width : at.left + 22;
  const left = Math.max(8, Math.min(view.width - 8 - width, wanted));
  const top = Math.max(8, Math.min(view.height - ABOVE_STAGES - height, at.top - height / 2));
  tag.style.transform = `translate(${Math.round(left)}px, ${Math.round(top)}px)`;
}
