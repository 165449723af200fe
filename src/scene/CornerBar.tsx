import { useEffect, type ReactElement } from "react";
import { findLimit } from "../site/index.js";
import { words } from "../words/index.js";
import type { Selection } from "./props.js";
import type { SceneContents } from "./sceneTargets.js";
import { limitName } from "./snapTargets.js";

interface CornerBarProps {
  contents: SceneContents;
  selected: Selection;
  index: number;
  onRemove: () => void;
  onClose: () => void;
}

/** The corner that is chosen, and what can be done with it: Delete removes it, Escape lets it go. */
export function CornerBar(props: CornerBarProps): ReactElement {
  const { contents, selected, index, onRemove, onClose } = props;
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      const on = event.target;
      if (on instanceof HTMLElement && on.closest("input, textarea, select, [role=dialog]")) return;
      const removes = event.key === "Delete" || event.key === "Backspace";
      if (!removes && event.key !== "Escape") return;
      event.preventDefault();
      event.stopPropagation();
      if (removes) onRemove();
      else onClose();
    };
    document.addEventListener("keydown", onKey, true);
    return () => document.removeEventListener("keydown", onKey, true);
  }, [onRemove, onClose]);
  const says = words.drawing.corner;
  return (
    <div className="scene-hint scene-corner-bar" data-testid="scene-corner-bar">
      <p role="status">{says.title(String(index + 1), nameOf(contents, selected))}</p>
      <button type="button" onClick={onRemove}>
        {says.remove}
      </button>
      <button type="button" onClick={onClose}>
        {says.letGo}
      </button>
    </div>
  );
}

function nameOf({ site, works }: SceneContents, { kind, id }: Selection): string {
  const limit = kind === "limit" ? findLimit(site, id) : null;
  if (limit !== null) return limitName(limit);
  return works.find((work) => work.id === id)?.name ?? id;
}
