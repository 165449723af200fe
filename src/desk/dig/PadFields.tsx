import type { ReactNode } from "react";
import { groundSlopeAt } from "../../estimate/index.js";
import { centreOfArea } from "../../site/index.js";
import type { Pad } from "../../site/index.js";
import { bearing, elevation, pipeSlope } from "../../units/index.js";
import { ElevationField } from "../fields/ElevationField.js";
import { MaterialField } from "../fields/MaterialField.js";
import { MeasureField } from "../fields/MeasureField.js";
import { useTypical } from "../fields/useTypical.js";
import { useSite } from "../useSite.js";
import { CourseFields } from "./EarthFields.js";
import { LevelFields } from "./LevelFields.js";
import { CornerFields } from "./PlaceFields.js";
import { StripOver } from "./StripFields.js";
import { padSides } from "./sides.js";
import { useChange } from "./useChange.js";
import { SlopeField, WallFields } from "./WallFields.js";

/** Drop per run above which a pad's fall is asked about. Common practice, no source. */
const STEEP_FALL = 0.05;

/** Lowest and highest corner of a pad that falls, m. */
function cornerRange({ outline, top, fall }: Pad): [lowest: number, highest: number] {
  const [cx, cy] = centreOfArea(outline);
  const turn = ((fall?.bearing ?? 0) * Math.PI) / 180;
  const tops = outline.map(
    ([x, y]) => top - (fall?.slope ?? 0) * ((x - cx) * Math.sin(turn) + (y - cy) * Math.cos(turn)),
  );
  return [Math.min(...tops), Math.max(...tops)];
}

function FallFields({ work }: { work: Pad }): ReactNode {
  const { site } = useSite();
  const change = useChange(work);
  const { fall } = work;
  const downhill = (): number =>
    Math.round(groundSlopeAt(site, centreOfArea(work.outline))?.fallsTowards ?? 180);
  const [lowest, highest] = cornerRange(work);
  const print = (z: number): string => elevation.print(z, site.units);
  return (
    <>
      <MeasureField
        label="Falls, for run-off"
        name="pad-fall"
        value={fall?.slope}
        measure={pipeSlope}
        least={0}
        most={1}
        onCommit={(slope) =>
          change("fall", {
            fall: slope === 0 ? undefined : { bearing: fall?.bearing ?? downhill(), slope },
          })
        }
        onClear={() => change("fall", { fall: undefined })}
        usual="level"
        doubt={(slope) =>
          slope > STEEP_FALL
            ? "A pad usually falls 1 to 2%, enough for water to run off. Is it meant?"
            : null
        }
      />
      {fall !== undefined && (
        <MeasureField
          label="Falls towards"
          name="pad-fall-bearing"
          value={fall.bearing}
          measure={bearing}
          onCommit={(towards) => change("fall", { fall: { ...fall, bearing: towards } })}
          note={`The finished top holds at the middle; its corners stand from ${print(lowest)} to ${print(highest)}. 1 to 2% lets water run off: common practice, no source.`}
        />
      )}
    </>
  );
}

/** A pad: its finished elevation and fall, what it is made of, how its sides stand, its levels. */
export function PadFields({ work }: { work: Pad }): ReactNode {
  const change = useChange(work);
  const { course, outline } = work;
  const ownSides = work.walls.by === "run" && work.walls.sides !== undefined;
  const setCourse = (next: Partial<NonNullable<Pad["course"]>>): void =>
    change("course", { course: { depth: 0, material: "crushed-gravel", ...course, ...next } });
  return (
    <>
      <ElevationField
        label="Finished top"
        name="top"
        value={work.top}
        at={outline}
        onCommit={(top) => change("top", { top })}
      />
      <FallFields work={work} />
      <CourseFields
        label="Course"
        measured="thick"
        name="course"
        depth={course?.depth ?? 0}
        material={course?.material}
        onDepth={(depth) => setCourse({ depth })}
        onMaterial={(material) => setCourse({ material })}
      />
      <WallFields
        walls={work.walls}
        sides={padSides(outline)}
        typical={useTypical("holeWall")}
        onChange={(walls) => change("walls", { walls })}
      />
      <SlopeField
        label="Filled side"
        name="fill-run"
        value={work.fillRun}
        onCommit={(fillRun) => change("filled side", { fillRun })}
        typical={useTypical("fillRun")}
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
        corners={outline}
        least={ownSides ? outline.length : 3}
        onChange={(corners) => change("corners", { outline: corners })}
      />
      <LevelFields work={work} />
      <StripOver work={work} />
    </>
  );
}
