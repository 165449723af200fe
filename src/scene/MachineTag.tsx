import { useEffect, useLayoutEffect, useRef, useState, type ReactElement } from "react";
import type { MachineAtWork } from "./machinesAtWork.js";
import "./machineTag.css";
import { projectPoint, type SceneView } from "./sceneView.js";
import { boxAround, type ScreenBox } from "./spotLayout.js";

interface MachineTagProps {
  machine: MachineAtWork;
  view: SceneView;
  /** True while something is placed: then it takes neither taps nor the focus. */
  idle: boolean;
}

/**
 * A mark over a machine that says what it is: while the pointer is on machine or mark, while the
 * mark has the focus, and for as long as it is held open by a tap.
 */
export function MachineTag({ machine, view, idle }: MachineTagProps): ReactElement {
  const tag = useRef<HTMLDivElement>(null);
  const [held, setHeld] = useState(false);
  const [pointed, setPointed] = useState(false);
  // After each rendering: the words have their size only while they show.
  useLayoutEffect(() => place(tag.current, machine, view));
  useEffect(() => view.subscribe(() => place(tag.current, machine, view)), [machine, view]);
  useEffect(() => {
    const scene = tag.current?.closest(".scene");
    if (!(scene instanceof HTMLElement)) return undefined;
    const moved = (event: PointerEvent): void => {
      if (event.pointerType !== "mouse") return;
      const frame = scene.getBoundingClientRect();
      const on = boxOf(machine, view);
      setPointed(
        event.buttons === 0 &&
          on !== null &&
          holds(on, event.clientX - frame.left, event.clientY - frame.top),
      );
    };
    const left = (): void => setPointed(false);
    scene.addEventListener("pointermove", moved, { passive: true });
    scene.addEventListener("pointerleave", left);
    return () => {
      scene.removeEventListener("pointermove", moved);
      scene.removeEventListener("pointerleave", left);
    };
  }, [machine, view]);
  return (
    <div className="machine-tag" ref={tag} data-open={held || pointed} inert={idle}>
      <button
        type="button"
        aria-label={machine.says.join("; ")}
        aria-pressed={held}
        data-testid="machine-tag"
        onFocus={() => place(tag.current, machine, view)}
        onClick={() => setHeld(!held)}
      >
        <i aria-hidden="true" />
      </button>
      <p aria-hidden="true">
        <b>{machine.says[0]}</b>
        <span>{machine.says[1]}</span>
      </p>
    </div>
  );
}

function boxOf(machine: MachineAtWork, view: SceneView): ScreenBox | null {
  return boxAround(machine.about.map((at) => projectPoint(view, at)));
}

function holds({ left, top, width, height }: ScreenBox, x: number, y: number): boolean {
  return x >= left && y >= top && x <= left + width && y <= top + height;
}

/** px that the words keep from the mark, and from the scene's sides and what lies over its top. */
const OFF = 12;
const KEPT = { side: 8, top: 58 };

function place(tag: HTMLElement | null, machine: MachineAtWork, view: SceneView): void {
  if (tag === null) return;
  const [x, y, z] = machine.at;
  const on = projectPoint(view, [x, y, z + 1]);
  tag.hidden =
    on === null || on.left < 0 || on.left > view.width || on.top < 0 || on.top > view.height;
  if (on === null) return;
  tag.style.transform = `translate(${Math.round(on.left)}px, ${Math.round(on.top)}px)`;
  const said = tag.querySelector("p");
  if (said === null) return;
  const [width, height] = [said.offsetWidth, said.offsetHeight];
  // Beside the mark where there is room, over it, else under it.
  const right = on.left + OFF + width <= view.width - KEPT.side;
  const left = Math.max(KEPT.side, right ? on.left + OFF : on.left - OFF - width);
  const over = on.top - OFF - height;
  const top = over >= KEPT.top ? over : on.top + 2 * OFF;
  said.style.transform = `translate(${Math.round(left - on.left)}px, ${Math.round(top - on.top)}px)`;
}
