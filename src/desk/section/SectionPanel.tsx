import type { ReactNode } from "react";
import { SectionSheet } from "../../drawn/index.js";
import { useDesk } from "../../store/index.js";
import { useSite } from "../useSite.js";

/** The panel under the scene that shows the ground cut open, once the section's line is drawn. */
export function SectionPanel(): ReactNode {
  const { site, schemeId } = useSite();
  const [from, to] = useDesk((desk) => desk.section) ?? [];
  const stage = useDesk((desk) => desk.stage);
  const { moveSection, stopSection } = useDesk.getState();
  if (from === undefined || to === undefined) return null;
  return (
    <SectionSheet
      {...{ site, schemeId, stage }}
      line={[from, to]}
      onMove={moveSection}
      onClose={stopSection}
    />
  );
}
