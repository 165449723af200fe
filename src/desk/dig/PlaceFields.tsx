import type { ReactNode } from "react";
import type { PlanPoint } from "../../site/index.js";
import { bearing as bearingMeasure, distance } from "../../units/index.js";
import { words } from "../../words/index.js";
import { MeasureField } from "../fields/MeasureField.js";

interface PlaceFieldsProps {
  /** What stands at the place: "Centre" of a work, else nothing where the heading says it. */
  of?: string;
  at: PlanPoint;
  onMove: (at: PlanPoint) => void;
}

/** East and north of a place in plan. */
export function PlaceFields({ of, at, onMove }: PlaceFieldsProps): ReactNode {
  return (
    <>
      <MeasureField
        label={
          of === undefined ? (
            words.digLeaf.east
          ) : (
            <>
              {of}, <small>{words.digLeaf.eastShort}</small>
            </>
          )
        }
        name="east"
        value={at[0]}
        measure={distance}
        onCommit={(east) => onMove([east, at[1]])}
      />
      <MeasureField
        label={
          of === undefined ? (
            words.digLeaf.north
          ) : (
            <>
              {of}, <small>{words.digLeaf.northShort}</small>
            </>
          )
        }
        name="north"
        value={at[1]}
        measure={distance}
        onCommit={(north) => onMove([at[0], north])}
      />
    </>
  );
}

interface BearingFieldProps {
  value: number;
  onTurn: (bearing: number) => void;
}

/** Which way the long side lies. */
export function BearingField({ value, onTurn }: BearingFieldProps): ReactNode {
  return (
    <MeasureField
      label={
        <>
          {words.digLeaf.longSide} <small>{words.digLeaf.bearing}</small>
        </>
      }
      name="bearing"
      value={value}
      measure={bearingMeasure}
      onCommit={onTurn}
    />
  );
}

interface CornersProps {
  title: string;
  corners: readonly PlanPoint[];
  /** Fewest that must stay. */
  least: number;
  onChange: (corners: PlanPoint[]) => void;
}

/** The corners of an outline, or the bends of a path, each with its own fields. */
export function CornerFields({ title, corners, least, onChange }: CornersProps): ReactNode {
  return (
    <details className="working">
      <summary>
        <span className="text">
          {corners.length} {title}
        </span>
      </summary>
      <div className="inside">
        {corners.map((corner, index) => (
          <fieldset key={index}>
            <legend className="slab">
              {index + 1}
              {corners.length > least && (
                <>
                  {" "}
                  <button
                    type="button"
                    className="link"
                    onClick={() => onChange(corners.filter((_, other) => other !== index))}
                  >
                    {words.digLeaf.remove}
                    <span className="unseen"> {words.digLeaf.place(index + 1)}</span>
                  </button>
                </>
              )}
            </legend>
            <PlaceFields
              at={corner}
              onMove={(at) => onChange(corners.map((one, other) => (other === index ? at : one)))}
            />
          </fieldset>
        ))}
      </div>
    </details>
  );
}
