import type { ReactNode } from "react";
import { changePoint } from "../../site/index.js";
import type { SurveyPoint } from "../../site/index.js";
import { useDesk } from "../../store/index.js";
import { words } from "../../words/index.js";
import { PlaceFields } from "../dig/PlaceFields.js";
import { ElevationField } from "../fields/ElevationField.js";
import { useEdit } from "../useSite.js";

/** One survey point. */
export function PointForm({ point }: { point: SurveyPoint }): ReactNode {
  const edit = useEdit();
  const remove = useDesk((desk) => desk.removeSelected);
  const change = (what: string, next: Partial<SurveyPoint>): void =>
    edit(words.surveyLeaf.ofPointEdit(what, point.id), (now) =>
      changePoint(now, point.id, (one) => ({ ...one, ...next })),
    );
  return (
    <div className="form">
      <ElevationField
        label={words.surveyLeaf.ground}
        name="z"
        value={point.z}
        at={[]}
        onCommit={(z) => change(words.surveyLeaf.elevationEdit, { z })}
      />
      <PlaceFields
        at={[point.x, point.y]}
        onMove={([x, y]) => change(words.surveyLeaf.placeEdit, { x, y })}
      />
      <div className="tools">
        <button type="button" className="link" onClick={remove}>
          {words.surveyLeaf.removeThisPoint}
        </button>
      </div>
    </div>
  );
}
