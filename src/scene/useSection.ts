import { useCallback, useState } from "react";
import type { PlanPoint } from "../site/index.js";
import type { SiteSceneProps } from "./props.js";

/** The drawing of a section's line, as far as the scene alone knows it. */
export interface SectionTool {
  /** Place under the pointer while the line is drawn, site coordinates; null off the ground. */
  hover: PlanPoint | null;
  /** True when the latest tap met no ground. */
  missed: boolean;
  hoverAt: (at: PlanPoint | null) => void;
  /** A tap on a place, or beside the ground (null). */
  tap: (at: PlanPoint | null) => void;
}

/** True while the next taps set the ends of a section. */
export function isDrawing(section: SiteSceneProps["section"]): boolean {
  return section !== null && section.length < 2;
}

/** Keeps where the pointer is while a section's line is drawn. */
export function useSection(
  section: SiteSceneProps["section"],
  onTap: SiteSceneProps["onSectionTap"],
): SectionTool {
  const [held, setHeld] = useState<{ hover: PlanPoint | null; missed: boolean } | null>(null);
  const drawing = isDrawing(section);
  if (!drawing && held !== null) setHeld(null);
  const hoverAt = useCallback(
    (hover: PlanPoint | null) => setHeld((now) => ({ missed: now?.missed ?? false, hover })),
    [],
  );
  const tap = (at: PlanPoint | null): void => {
    setHeld({ hover: at, missed: at === null });
    if (at !== null) onTap(at);
  };
  return { hover: held?.hover ?? null, missed: held?.missed ?? false, hoverAt, tap };
}
