import type { ReactNode } from "react";
import { freshId, withoutAbsent } from "../../site/index.js";
import type { Pipe, Trench } from "../../site/index.js";
import { coverToPlace, nextPipeName, pipeSize, PRESSURE_PIPE } from "../../store/index.js";
import { length } from "../../units/index.js";
import { words } from "../../words/index.js";
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
  { key: "start", label: words.digLeaf.startWall },
  { key: "end", label: words.digLeaf.endWall },
] as const;

/** A trench: its strip and walls, what the pipe lies in, the pipes, and the path. */
export function TrenchFields({ work }: { work: Trench }): ReactNode {
  const { site, schemeId } = useSite();
  const change = useChange(work);
  const scheme = site.schemes.find((one) => one.id === schemeId);
  const isField = scheme?.flow?.field?.includes(work.id) === true;
  const setPipes = (pipes: Pipe[]): void => change(words.digLeaf.pipesEdit, { pipes });
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
    change(words.digLeaf.endWallsEdit, { ends: Object.keys(left).length === 0 ? undefined : left });
  };
  return (
    <>
      <MeasureField
        label={words.digLeaf.widthOfFloor}
        name="width"
        value={work.width}
        measure={length}
        least={0}
        above
        onCommit={(width) => change(words.digLeaf.widthEdit, { width })}
        typical={useTypical(isField ? "fieldTrench" : "trench")}
      />
      <WallFields
        walls={work.walls}
        sides={TRENCH_SIDES}
        typical={useTypical("trenchWall")}
        onChange={(walls) => change(words.digLeaf.wallsEdit, { walls })}
      />
      {ENDS.map(({ key, label }) => (
        <SlopeField
          key={key}
          label={label}
          name={`${key}-wall`}
          value={work.ends?.[key]}
          onCommit={(run) =>
            change(words.digLeaf.endWallsEdit, { ends: { ...work.ends, [key]: run } })
          }
          onClear={() => clearEnd(key)}
          usual={words.digLeaf.vertical}
        />
      ))}
      <CourseFields
        term="bedding"
        label={words.digLeaf.bedding}
        measured="thick"
        name="bedding"
        {...work.bedding}
        typical={useTypical(isField ? "fieldUnder" : "pipeBedding")}
        onDepth={(depth) =>
          change(words.digLeaf.beddingEdit, { bedding: { ...work.bedding, depth } })
        }
        onMaterial={(material) =>
          change(words.digLeaf.beddingEdit, { bedding: { ...work.bedding, material } })
        }
      />
      <CourseFields
        term="pipeZone"
        label={words.digLeaf.pipeZone}
        measured="above"
        name="zone"
        depth={work.zone.above}
        material={work.zone.material}
        typical={useTypical(isField ? "fieldOver" : "zone")}
        onDepth={(above) => change(words.digLeaf.pipeZoneEdit, { zone: { ...work.zone, above } })}
        onMaterial={(material) =>
          change(words.digLeaf.pipeZoneEdit, { zone: { ...work.zone, material } })
        }
      />
      <BackfillFields
        backfill={work.backfill}
        crown={work.crown}
        onBackfill={(backfill) => change(words.digLeaf.backfillEdit, { backfill })}
        onCrown={(crown) => change(words.digLeaf.crownEdit, { crown })}
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
          {words.digLeaf.anotherPipeTrench}
        </button>
      </div>
      <CornerFields
        title={words.digLeaf.placesAlongPath}
        corners={work.path}
        least={2}
        onChange={(path) => change(words.digLeaf.pathEdit, { path })}
      />
    </>
  );
}
