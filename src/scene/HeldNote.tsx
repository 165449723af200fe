import { useLayoutEffect, useRef, useSyncExternalStore, type ReactElement } from "react";
import type { Tank } from "../site/index.js";
import { length } from "../units/index.js";
import { words } from "../words/index.js";
import { toScene } from "./frame.js";
import type { Held, HeldDrag } from "./heldDrag.js";
import { holdWords } from "./holdWords.js";
import { LengthLabels } from "./LegLabels.js";
import type { SceneContents } from "./sceneTargets.js";
import { projectPoint, type SceneView } from "./sceneView.js";

interface HeldNoteProps {
  held: HeldDrag;
  contents: SceneContents;
  view: SceneView;
}

/** What holds the thing or corner that is dragged, in words, with the lengths of the corner's sides. */
export function HeldNote({ held, contents, view }: HeldNoteProps): ReactElement | null {
  const { drag } = useSyncExternalStore(held.subscribe, held.read);
  const note = useRef<HTMLDivElement>(null);
  const mark = useRef<HTMLElement>(null);
  useLayoutEffect(() => placeHeld(note.current, mark.current, drag, contents, view));
  useLayoutEffect(
    () => view.subscribe(() => placeHeld(note.current, mark.current, drag, contents, view)),
    [drag, contents, view],
  );
  if (drag === null) return null;
  const tank = draggedTank(drag, contents);
  const holding = holdWords(drag.holds, contents.site.units);
  const cover = tank === null ? "" : coverOf(tank, contents);
  const said = [holding, cover].filter((text) => text !== "").join(", ");
  return (
    <>
      <LengthLabels legs={drag.sides} contents={contents} view={view} />
      {said !== "" && (
        <>
          <i className="scene-hold" ref={mark} data-by={drag.holds[0]?.by} aria-hidden="true" />
          <div className="scene-note" ref={note} data-testid="scene-held">
            <em>{said}</em>
          </div>
        </>
      )}
    </>
  );
}

function draggedTank({ selection }: Held, { works }: SceneContents): Tank | null {
  const work = works.find((one) => selection.kind === "work" && one.id === selection.id);
  return work?.kind === "tank" ? work : null;
}

/** Ground as found over a tank's top, in words; "" beyond the survey. */
function coverOf(tank: Tank, { site, found, frame }: SceneContents): string {
  const [x, y] = toScene(frame, tank.at);
  const hit = found.heightAt(x, y);
  if (!hit) return "";
  const cover = hit.z + frame.origin[2] - tank.base - tank.body.height;
  return words.joined.coverShort(length.print(Math.abs(cover), site.units), cover < 0);
}

function placeHeld(
  note: HTMLElement | null,
  mark: HTMLElement | null,
  drag: Held | null,
  contents: SceneContents,
  view: SceneView,
): void {
  if (note === null || mark === null || drag === null) return;
  const { frame, ground } = contents;
  const place = drag.at ?? draggedTank(drag, contents)?.at ?? null;
  const [x, y] = place === null ? [NaN, NaN] : toScene(frame, place);
  const z = Number.isNaN(x) ? undefined : ground.heightAt(x, y)?.z;
  const at = z === undefined ? null : projectPoint(view, [x, y, z]);
  note.hidden = at === null;
  mark.hidden = at === null || drag.at === null;
  if (at === null) return;
  mark.style.transform = `translate(${Math.round(at.left)}px, ${Math.round(at.top)}px)`;
  const left = Math.max(4, Math.min(at.left + 18, view.width - note.offsetWidth - 4));
  note.style.transform = `translate(${Math.round(left)}px, ${Math.round(at.top + 18)}px)`;
}
