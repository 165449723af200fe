import { useEffect, type ReactElement } from "react";
import { words } from "../words/index.js";
import { typesElsewhere } from "./keys.js";
import type { SceneView, WalkWay } from "./sceneView.js";

interface WalkPadProps {
  view: SceneView;
  /** True while the arrow keys and Escape belong to a tool. */
  busy: boolean;
  onStop: () => void;
}

const PAD: readonly { way: WalkWay; name: string; sign: string }[] = [
  { way: "ahead", name: words.looking.stepAhead, sign: "↑" },
  { way: "left", name: words.looking.stepLeft, sign: "←" },
  { way: "back", name: words.looking.stepBack, sign: "↓" },
  { way: "right", name: words.looking.stepRight, sign: "→" },
];

const LETTERS: Readonly<Record<string, WalkWay>> = {
  w: "ahead",
  s: "back",
  a: "left",
  d: "right",
  q: "turnLeft",
  e: "turnRight",
  pageup: "up",
  pagedown: "down",
  shift: "run",
};

const ARROWS: Readonly<Record<string, WalkWay>> = {
  arrowup: "ahead",
  arrowdown: "back",
  arrowleft: "left",
  arrowright: "right",
};

/** ms that one press of a pad's button by the keyboard walks. */
const ONE_STEP = 300;

/** How one walks: by keys, and on a touch screen by four buttons that are held down. */
export function WalkPad({ view, busy, onStop }: WalkPadProps): ReactElement {
  useWalkKeys(view, busy, onStop);
  return (
    <>
      <p className="walk-hint" data-testid="walk-hint">
        {words.looking.walkHint}
      </p>
      <div className="walk-pad" role="group" aria-label={words.looking.walkPad}>
        {PAD.map(({ way, name, sign }) => (
          <button
            key={way}
            type="button"
            data-way={way}
            aria-label={name}
            onPointerDown={(event) => {
              event.currentTarget.setPointerCapture(event.pointerId);
              view.go(way, true);
            }}
            onLostPointerCapture={() => view.go(way, false)}
            onContextMenu={(event) => event.preventDefault()}
            onClick={(event) => {
              // A pointer's press is told above; this is the keyboard's.
              if (event.detail !== 0) return;
              view.go(way, true);
              setTimeout(() => view.go(way, false), ONE_STEP);
            }}
          >
            <span aria-hidden="true">{sign}</span>
          </button>
        ))}
      </div>
    </>
  );
}

function useWalkKeys(view: SceneView, busy: boolean, onStop: () => void): void {
  useEffect(() => {
    const wayOf = (event: KeyboardEvent): WalkWay | undefined => {
      const key = event.key.toLowerCase();
      return LETTERS[key] ?? (busy ? undefined : ARROWS[key]);
    };
    const down = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.metaKey || event.altKey || typesElsewhere(event.target)) return;
      if (event.key === "Escape" && !busy && view.drag.phase === "idle") onStop();
      else {
        const way = wayOf(event);
        if (way === undefined) return;
        view.go(way, true);
        // Shift alone means nothing; with a letter it must go on as it does.
        if (way === "run") return;
      }
      event.preventDefault();
      event.stopPropagation();
    };
    const up = (event: KeyboardEvent): void => {
      const way = LETTERS[event.key.toLowerCase()] ?? ARROWS[event.key.toLowerCase()];
      if (way !== undefined) view.go(way, false);
    };
    const still = (): void => {
      for (const way of [...Object.values(LETTERS), ...Object.values(ARROWS)]) view.go(way, false);
    };
    document.addEventListener("keydown", down, true);
    document.addEventListener("keyup", up, true);
    window.addEventListener("blur", still);
    return () => {
      still();
      document.removeEventListener("keydown", down, true);
      document.removeEventListener("keyup", up, true);
      window.removeEventListener("blur", still);
    };
  }, [view, busy, onStop]);
}
