import type { ReactNode } from "react";
import { groundSlopeAt } from "../../estimate/index.js";
import { centreOfArea } from "../../site/index.js";
import type { Pad } from "../../site/index.js";
import { bearing, elevation, pipeSlope } from "../../units/index.js";
import { words } from "../../words/index.js";
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
        label={words.digLeaf.fallsRunOff}
        name="pad-fall"
        value={fall?.slope}
        measure={pipeSlope}
        least={0}
        most={1}
        onCommit={(slope) =>
          change(words.digLeaf.fallEdit, {
            fall: slope === 0 ? undefined : { bearing: fall?.bearing ?? downhill(), slope },
          })
        }
        onClear={() => change(words.digLeaf.fallEdit, { fall: undefined })}
        usual={words.digLeaf.levelUsual}
        doubt={(slope) => (slope > STEEP_FALL ? words.digLeaf.padUsuallyFalls1 : null)}
      />
      {fall !== undefined && (
        <MeasureField
          label={words.digLeaf.fallsTowards}
          name="pad-fall-bearing"
          value={fall.bearing}
          measure={bearing}
          onCommit={(towards) =>
            change(words.digLeaf.fallEdit, { fall: { ...fall, bearing: towards } })
          }
          note={words.digLeaf.finishedTopHoldsMiddle(print(lowest), print(highest))}
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
    change(words.digLeaf.courseEdit, {
      course: { depth: 0, material: "crushed-gravel", ...course, ...next },
    });
  return (
    <>
      <ElevationField
        label={words.digLeaf.finishedTop}
        name="top"
        value={work.top}
        at={outline}
        onCommit={(top) => change(words.digLeaf.topEdit, { top })}
      />
      <FallFields work={work} />
      <CourseFields
        label={words.digLeaf.course}
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
        onChange={(walls) => change(words.digLeaf.wallsEdit, { walls })}
      />
      <SlopeField
        label={words.digLeaf.filledSide}
        name="fill-run"
        value={work.fillRun}
        onCommit={(fillRun) => change(words.digLeaf.filledSideEdit, { fillRun })}
        typical={useTypical("fillRun")}
      />
      <MaterialField
        label={words.digLeaf.fill}
        name="fill"
        value={work.fill}
        kinds={["aggregate", "fill"]}
        own
        onChoose={(fill) => change(words.digLeaf.fillEdit, { fill })}
      />
      <CornerFields
        title={words.digLeaf.corners}
        corners={outline}
        least={ownSides ? outline.length : 3}
        onChange={(corners) => change(words.digLeaf.cornersEdit, { outline: corners })}
      />
      <LevelFields work={work} />
      <StripOver work={work} />
    </>
  );
}
