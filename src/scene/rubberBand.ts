import type { ScreenPoint } from "./dragging.js";
import type { Selection } from "./props.js";
import type { SceneContents } from "./sceneTargets.js";
import { projectPoint, type SceneView } from "./sceneView.js";
import { toScene } from "./frame.js";
import type { ScreenBox } from "./spotLayout.js";
import { workMiddle } from "../estimate/index.js";

/** px that the pointer must go before a press draws a rectangle. */
const LEAST = 5;

/** The box between two places on the screen, whichever way it was drawn. */
export function boxBetween(a: ScreenPoint, b: ScreenPoint): ScreenBox {
  return {
    left: Math.min(a.left, b.left),
    top: Math.min(a.top, b.top),
    width: Math.abs(a.left - b.left),
    height: Math.abs(a.top - b.top),
  };
}

/** Whether a place on the screen lies in a box, its edges included. */
export function isWithin(box: ScreenBox, at: ScreenPoint): boolean {
  const [x, y] = [at.left - box.left, at.top - box.top];
  return x >= 0 && y >= 0 && x <= box.width && y <= box.height;
}

/** The works whose middles, on the ground, lie within the box on the screen. */
export function worksWithin(contents: SceneContents, view: SceneView, box: ScreenBox): Selection[] {
  const { works, frame, ground } = contents;
  return works.flatMap((work): Selection[] => {
    const [x, y] = toScene(frame, workMiddle(work));
    const at = projectPoint(view, [x, y, ground.heightAt(x, y)?.z ?? frame.centre[2]]);
    return at !== null && isWithin(box, at) ? [{ kind: "work", id: work.id }] : [];
  });
}

/** A rectangle drawn over the scene with the pointer: one at a time, with an element of its own. */
export class RubberBand {
  private element: HTMLDivElement | null = null;

  constructor(
    private readonly root: HTMLElement,
    private readonly from: ScreenPoint,
    /** What lay under the press: a press that goes nowhere picks it. */
    readonly under: Selection | null,
  ) {}

  /** Draws it to where the pointer is. */
  stretch(to: ScreenPoint): void {
    const box = boxBetween(this.from, to);
    if (this.element === null) {
      if (Math.max(box.width, box.height) < LEAST) return;
      this.element = document.createElement("div");
      this.element.className = "scene-band";
      this.root.append(this.element);
    }
    const { style } = this.element;
    style.transform = `translate(${box.left}px, ${box.top}px)`;
    style.width = `${box.width}px`;
    style.height = `${box.height}px`;
  }

  /** Takes it away; the box that was drawn, or null when the press went nowhere. */
  end(to: ScreenPoint): ScreenBox | null {
    const drawn = this.element !== null;
    this.element?.remove();
    this.element = null;
    return drawn ? boxBetween(this.from, to) : null;
  }
}
