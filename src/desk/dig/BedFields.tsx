import type { ReactNode } from "react";
import type { Bed } from "../../site/index.js";
import { length } from "../../units/index.js";
import { words } from "../../words/index.js";
import { ElevationField } from "../fields/ElevationField.js";
import { MaterialField } from "../fields/MaterialField.js";
import { MeasureField } from "../fields/MeasureField.js";
import { useTypical } from "../fields/useTypical.js";
import { BearingField, PlaceFields } from "./PlaceFields.js";
import { StripOver } from "./StripFields.js";
import { useChange } from "./useChange.js";

const SIZES = [
  { key: "length", label: words.digLeaf.lengthOutside },
  { key: "width", label: words.digLeaf.widthOutside },
  { key: "height", label: words.digLeaf.height },
] as const;

function Filling({ work }: { work: Bed }): ReactNode {
  const change = useChange(work);
  const { filling } = work;
  const setCourse = (index: number, next: Partial<(typeof filling)[number]>): void =>
    change(words.digLeaf.fillingEdit, {
      filling: filling.map((one, other) => (other === index ? { ...one, ...next } : one)),
    });
  return filling.map((course, index) => (
    <fieldset key={index} aria-label={words.digLeaf.fillingFromBottom(index + 1)}>
      <MaterialField
        label={index === 0 ? words.digLeaf.fromTheBottom : words.digLeaf.then}
        value={course.material}
        kinds={["aggregate", "fill", "soil", "topsoil"]}
        onChoose={(material) => setCourse(index, { material })}
      />
      <MeasureField
        label={words.digLeaf.deep}
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
        label={words.digLeaf.standsOn}
        name="base"
        value={work.base}
        at={[work.at]}
        onCommit={(base) => change(words.digLeaf.levelEdit, { base })}
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
        label={words.digLeaf.wallThick}
        name="wall"
        value={work.wall}
        measure={length}
        onCommit={(wall) => change(words.digLeaf.wallEdit, { wall })}
        typical={useTypical("bedWall")}
      />
      <MeasureField
        label={words.digLeaf.overflowAboveBase}
        name="overflow"
        value={work.overflow}
        usual={words.digLeaf.none}
        measure={length}
        onCommit={(overflow) => change(words.digLeaf.overflowEdit, { overflow })}
        onClear={() => change(words.digLeaf.overflowEdit, { overflow: undefined })}
      />
      <label className="tick">
        <input
          type="checkbox"
          checked={work.follows === "ground"}
          onChange={(event) =>
            change(words.digLeaf.followingEdit, {
              follows: event.target.checked ? "ground" : undefined,
            })
          }
        />
        {words.digLeaf.risesFallsWithGround}
      </label>
      <h3>{words.digLeaf.whatFillsIt}</h3>
      <Filling work={work} />
      <h3>{words.digLeaf.whereItLies}</h3>
      <PlaceFields
        of={words.digLeaf.centre}
        at={work.at}
        onMove={(at) => change(words.digLeaf.placeEdit, { at })}
      />
      <BearingField
        value={work.bearing}
        onTurn={(bearing) => change(words.digLeaf.bearingEdit, { bearing })}
      />
      <StripOver work={work} />
    </>
  );
}
