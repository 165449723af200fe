import type { ReactNode } from "react";
import { changePoint } from "../../site/index.js";
import type { SurveyPoint } from "../../site/index.js";
import { useDesk } from "../../store/index.js";
import { PlaceFields } from "../dig/PlaceFields.js";
import { ElevationField } from "../fields/ElevationField.js";
import { useEdit } from "../useSite.js";

/** One survey point. */
export function PointForm({ point }: { point: SurveyPoint }): ReactNode {
  const edit = useEdit();
  const remove = useDesk((desk) => desk.removeSelected);
  const change = (what: string, next: Partial<SurveyPoint>): void =>
    edit(`${what} of point ${point.id}`, (now) =>
      changePoint(now, point.id, (one) => ({ ...one, ...next })),
    );
  return (
    <div className="form">
      <ElevationField
        label="Ground"
        name="z"
        value={point.z}
        at={[]}
        onCommit={(z) => change("elevation", { z })}
      />
      <PlaceFields at={[point.x, point.y]} onMove={([x, y]) => change("place", { x, y })} />
      <div className="tools">
        <button type="button" className="link" onClick={remove}>
          Remove this point
        </button>
      </div>
    </div>
  );
}
