import type { ReactElement } from "react";
import type { PlanPoint } from "../site/index.js";
import { words } from "../words/index.js";
import { snap } from "./dragging.js";
import { snapStep } from "./figures.js";
import { toSite } from "./frame.js";
import type { SiteSceneProps } from "./props.js";
import type { SceneContents } from "./sceneTargets.js";

interface SectionHintProps {
  /** Ends set so far: none or one. */
  count: number;
  missed: boolean;
  contents: SceneContents;
  onAcross: SiteSceneProps["onSectionAcross"];
  onCancel: () => void;
}

/** What to do next while a section's line is drawn. */
export function SectionHint(props: SectionHintProps): ReactElement {
  const { count, missed, contents, onAcross, onCancel } = props;
  return (
    <div className="scene-hint" data-testid="section-hint">
      <p role="status">
        {missed && words.scene.noGroundThereChoose}
        {count === 0 ? words.scene.chooseWhereSectionBegins : words.scene.nowChooseWhereEnds}
      </p>
      <button type="button" onClick={() => onAcross(acrossSite(contents))}>
        {words.scene.acrossTheSite}
      </button>
      <button type="button" data-testid="section-cancel" onClick={onCancel}>
        {words.scene.cancel}
      </button>
    </div>
  );
}

/** A line from west to east over the middle of the lot, for a start without a pointer. */
function acrossSite({ frame, site }: SceneContents): readonly [PlanPoint, PlanPoint] {
  const step = snapStep(site.units);
  const xs = frame.edge.map((place) => place[0]);
  const [west, east] = [Math.min(...xs), Math.max(...xs)];
  const inset = 0.1 * (east - west);
  const place = (x: number): PlanPoint => {
    const [sx, sy] = toSite(frame, [x, frame.centre[1]]);
    return [snap(sx, step), snap(sy, step)];
  };
  return [place(west + inset), place(east - inset)];
}
