import type { ReactNode } from "react";
import type { Building, Pad, Pile } from "../../site/index.js";
import { bearing, length, wallSlope } from "../../units/index.js";
import { ElevationField } from "../fields/ElevationField.js";
import { MaterialField } from "../fields/MaterialField.js";
import { MeasureField } from "../fields/MeasureField.js";
import { CornerFields, PlaceFields } from "./PlaceFields.js";
import { WallFields } from "./WallFields.js";
import { useChange } from "./useChange.js";

/** A level pad: its finished elevation, what it is made of, how its sides stand. */
export function PadFields({ work }: { work: Pad }): ReactNode {
  const change = useChange(work);
  const { course } = work;
  return (
    <>
      <ElevationField
        label="Finished top"
        name="top"
        value={work.top}
        at={work.outline}
        onCommit={(top) => change("top", { top })}
      />
      <MeasureField
        label="Gravel course, thick"
        name="course"
        value={course?.depth ?? 0}
        measure={length}
        onCommit={(depth) =>
          change("course", { course: { material: course?.material ?? "crushed-gravel", depth } })
        }
      />
      {course !== undefined && (
        <MaterialField
          label="Course of"
          name="course-material"
          value={course.material}
          kinds={["aggregate", "fill"]}
          onChoose={(material) => change("course", { course: { ...course, material } })}
        />
      )}
      <WallFields walls={work.walls} onChange={(walls) => change("walls", { walls })} />
      <MeasureField
        label={
          <>
            Filled side <small>run : rise</small>
          </>
        }
        name="fill-run"
        value={work.fillRun}
        measure={wallSlope}
        onCommit={(fillRun) => change("filled side", { fillRun })}
      />
      <MaterialField
        label="Fill"
        name="fill"
        value={work.fill}
        kinds={["aggregate", "fill"]}
        own
        onChoose={(fill) => change("fill", { fill })}
      />
      <CornerFields
        title="corners"
        corners={work.outline}
        least={3}
        onChange={(outline) => change("corners", { outline })}
      />
    </>
  );
}

/** A building: its floor and height; it is drawn and kept clear of, not dug. */
export function BuildingFields({ work }: { work: Building }): ReactNode {
  const change = useChange(work);
  return (
    <>
      <ElevationField
        label="Floor"
        name="base"
        value={work.base}
        at={work.outline}
        onCommit={(base) => change("floor", { base })}
      />
      <MeasureField
        label="Height"
        name="height"
        value={work.height}
        measure={length}
        least={0}
        above
        onCommit={(height) => change("height", { height })}
      />
      <CornerFields
        title="corners"
        corners={work.outline}
        least={3}
        onChange={(outline) => change("corners", { outline })}
      />
    </>
  );
}

/** A pile that takes what is left over. */
export function PileFields({ work }: { work: Pile }): ReactNode {
  const change = useChange(work);
  return (
    <>
      <PlaceFields at={work.at} onMove={(at) => change("place", { at })} />
      <MeasureField
        label="Stands at, from level"
        name="repose"
        value={work.repose}
        measure={bearing}
        least={0}
        above
        onCommit={(repose) => change("repose", { repose })}
      />
    </>
  );
}
