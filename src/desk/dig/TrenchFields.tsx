import type { ReactNode } from "react";
import { freshId } from "../../site/index.js";
import type { Pipe, Trench } from "../../site/index.js";
import { coverToPlace, nextPipeName, pipeSize, PRESSURE_PIPE } from "../../store/index.js";
import { length } from "../../units/index.js";
import { MaterialField } from "../fields/MaterialField.js";
import { MeasureField } from "../fields/MeasureField.js";
import { useSite } from "../useSite.js";
import { PipeFields } from "./PipeFields.js";
import { CornerFields } from "./PlaceFields.js";
import { WallFields } from "./WallFields.js";
import { useChange } from "./useChange.js";

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
      />
      <WallFields walls={work.walls} onChange={(walls) => change("walls", { walls })} />
      <MeasureField
        label="Bedding, thick"
        name="bedding"
        value={work.bedding.depth}
        measure={length}
        onCommit={(depth) => change("bedding", { bedding: { ...work.bedding, depth } })}
      />
      <MaterialField
        label="Bedding of"
        name="bedding-material"
        value={work.bedding.material}
        kinds={["aggregate", "fill"]}
        onChoose={(material) => change("bedding", { bedding: { ...work.bedding, material } })}
      />
      <MeasureField
        label="Pipe zone, over the pipe"
        name="zone"
        value={work.zone.above}
        measure={length}
        onCommit={(above) => change("pipe zone", { zone: { ...work.zone, above } })}
      />
      <MaterialField
        label="Pipe zone of"
        name="zone-material"
        value={work.zone.material}
        kinds={["aggregate", "fill"]}
        onChoose={(material) => change("pipe zone", { zone: { ...work.zone, material } })}
      />
      <MaterialField
        label="Backfill"
        name="backfill"
        value={work.backfill}
        kinds={["aggregate", "fill"]}
        own
        onChoose={(backfill) => change("backfill", { backfill })}
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
