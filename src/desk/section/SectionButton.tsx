import type { ReactNode } from "react";
import { useDesk } from "../../store/index.js";

/** Begins the drawing of a section, or puts the section away. */
export function SectionButton(): ReactNode {
  const on = useDesk((desk) => desk.section !== null);
  const start = useDesk((desk) => desk.startSection);
  const stop = useDesk((desk) => desk.stopSection);
  return (
    <button
      type="button"
      className="section-button"
      aria-pressed={on}
      title="Cut the ground open along a line"
      onClick={() => (on ? stop() : start())}
    >
      Section
    </button>
  );
}
