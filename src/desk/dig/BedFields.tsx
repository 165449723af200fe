import type { ReactNode } from "react";
import type { Bed } from "../../site/index.js";
import { length } from "../../units/index.js";
import { ElevationField } from "../fields/ElevationField.js";
import { MaterialField } from "../fields/MaterialField.js";
import { MeasureField } from "../fields/MeasureField.js";
import { useTypical } from "../fields/useTypical.js";
import { BearingField, PlaceFields } from "./PlaceFields.js";
import { StripOver } from "./StripFields.js";
import { useChange } from "./useChange.js";

const SIZES = [
  { key: "length", label: "Length, outside" },
  { key: "width", label: "Width, outside" },
  { key: "height", label: "Height" },
] as const;

function Filling({ work }: { work: Bed }): ReactNode {
  const change = useChange(work);
  const { filling } = work;
  const setCourse = (index: number, next: Partial<(typeof filling)[number]>): void =>
    change("filling", {
      filling: filling.map((one, other) => (other === index ? { ...one, ...next } : one)),
    });
  return filling.map((course, index) => (
    <fieldset key={index} aria-label={`Filling ${index + 1} from the bottom`}>
      <MaterialField
        label={index === 0 ? "From the bottom" : "then"}
        value={course.material}
        kinds={["aggregate", "fill", "soil", "topsoil"]}
        onChoose={(material) => setCourse(index, { material })}
      />
      <MeasureField
        label="deep"
        value={course.depth}
        measure={length}
        least={0}
        above
        onCommit={(depth) => setCourse(index, { depth })}
      />
    </fieldset>
  ));
}

/** A raised bed: its size, where it stands, and what fills it. */
export function BedFields({ work }: { work: Bed }): ReactNode {
  const change = useChange(work);
  return (
    <>
      <ElevationField
        label="Stands on"
        name="base"
        value={work.base}
        at={[work.at]}
        onCommit={(base) => change("level", { base })}
      />
      {SIZES.map(({ key, label }) => (
        <MeasureField
          key={key}
          label={label}
          name={key}
          value={work[key]}
          measure={length}
          least={0}
          above
          onCommit={(size) => change(key, { [key]: size })}
        />
      ))}
      <MeasureField
        label="Wall, thick"
        name="wall"
        value={work.wall}
        measure={length}
        onCommit={(wall) => change("wall", { wall })}
        typical={useTypical("bedWall")}
      />
      <MeasureField
        label="Overflow above its base"
        name="overflow"
        value={work.overflow}
        usual="none"
        measure={length}
        onCommit={(overflow) => change("overflow", { overflow })}
        onClear={() => change("overflow", { overflow: undefined })}
      />
      <label className="tick">
        <input
          type="checkbox"
          checked={work.follows === "ground"}
          onChange={(event) =>
            change("following", { follows: event.target.checked ? "ground" : undefined })
          }
        />
        Rises and falls with the ground when moved
      </label>
      <h3>What fills it</h3>
      <Filling work={work} />
      <h3>Where it lies</h3>
      <PlaceFields of="Centre" at={work.at} onMove={(at) => change("place", { at })} />
      <BearingField value={work.bearing} onTurn={(bearing) => change("bearing", { bearing })} />
      <StripOver work={work} />
    </>
  );
}
