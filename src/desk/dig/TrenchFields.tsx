import type { ReactNode } from "react";
import { freshId, withoutAbsent } from "../../site/index.js";
import type { Pipe, Trench } from "../../site/index.js";
import { coverToPlace, nextPipeName, pipeSize, PRESSURE_PIPE } from "../../store/index.js";
import { length } from "../../units/index.js";
import { MeasureField } from "../fields/MeasureField.js";
import { useTypical } from "../fields/useTypical.js";
import { useSite } from "../useSite.js";
import { BackfillFields, CourseFields } from "./EarthFields.js";
import { PipeFields } from "./PipeFields.js";
import { CornerFields } from "./PlaceFields.js";
import { TRENCH_SIDES } from "./sides.js";
import { SlopeField, WallFields } from "./WallFields.js";
import { useChange } from "./useChange.js";

const ENDS = [
  { key: "start", label: "Start wall" },
  { key: "end", label: "End wall" },
] as const;

/** A trench: its strip and walls, what the pipe lies in, the pipes, and the path. */
export function TrenchFields({ work }: { work: Trench }): ReactNode {
  const { site, schemeId } = useSite();
  const change = useChange(work);
  const setPipes = (pipes: Pipe[]): void => change("pipes", { pipes });
  const addPipe = (): void =>
    setPipes([
      ...work.pipes,
      {
        id: freshId(site, "pipe"),
        name: nextPipeName(site, schemeId, "pressure"),
        service: "pressure",
        ...pipeSize(PRESSURE_PIPE),
        grade: { by: "cover", depth: coverToPlace(site) },
      },
    ]);
  const clearEnd = (key: "start" | "end"): void => {
    const left = withoutAbsent({ ...work.ends, [key]: undefined });
    change("end walls", { ends: Object.keys(left).length === 0 ? undefined : left });
  };
  return (
    <>
      <MeasureField
        label="Width of floor"
        name="width"
        value={work.width}
        measure={length}
        least={0}
        above
        onCommit={(width) => change("width", { width })}
        typical={useTypical("trench")}
      />
      <WallFields
        walls={work.walls}
        sides={TRENCH_SIDES}
        typical={useTypical("trenchWall")}
        onChange={(walls) => change("walls", { walls })}
      />
      {ENDS.map(({ key, label }) => (
        <SlopeField
          key={key}
          label={label}
          name={`${key}-wall`}
          value={work.ends?.[key]}
          onCommit={(run) => change("end walls", { ends: { ...work.ends, [key]: run } })}
          onClear={() => clearEnd(key)}
          usual="vertical"
        />
      ))}
      <CourseFields
        term="bedding"
        label="Bedding"
        measured="thick"
        name="bedding"
        {...work.bedding}
        typical={useTypical("pipeBedding")}
        onDepth={(depth) => change("bedding", { bedding: { ...work.bedding, depth } })}
        onMaterial={(material) => change("bedding", { bedding: { ...work.bedding, material } })}
      />
      <CourseFields
        term="pipeZone"
        label="Pipe zone"
        measured="above"
        name="zone"
        depth={work.zone.above}
        material={work.zone.material}
        typical={useTypical("zone")}
        onDepth={(above) => change("pipe zone", { zone: { ...work.zone, above } })}
        onMaterial={(material) => change("pipe zone", { zone: { ...work.zone, material } })}
      />
      <BackfillFields
        backfill={work.backfill}
        crown={work.crown}
        onBackfill={(backfill) => change("backfill", { backfill })}
        onCrown={(crown) => change("crown", { crown })}
      />
      {work.pipes.map((pipe) => (
        <PipeFields
          key={pipe.id}
          pipe={pipe}
          path={work.path}
          onRemove={
            work.pipes.length < 2
              ? null
              : () => setPipes(work.pipes.filter((one) => one.id !== pipe.id))
          }
        />
      ))}
      <div className="tools">
        <button type="button" className="link" onClick={addPipe}>
          + Another pipe in this trench
        </button>
      </div>
      <CornerFields
        title="places along the path"
        corners={work.path}
        least={2}
        onChange={(path) => change("path", { path })}
      />
    </>
  );
}
