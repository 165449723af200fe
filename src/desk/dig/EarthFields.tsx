import type { ReactNode } from "react";
import { length } from "../../units/index.js";
import { MaterialField } from "../fields/MaterialField.js";
import { MeasureField } from "../fields/MeasureField.js";
import { ShareField } from "../fields/ShareField.js";
import type { TypicalValue } from "../fields/Typical.js";
import { Term } from "../book/Term.js";
import type { TermId } from "../book/Term.js";

interface CourseFieldsProps {
  /** What it is: "Bedding". */
  label: string;
  /** Explains the label. */
  term?: TermId;
  /** How its depth is measured: "thick". */
  measured: string;
  name: string;
  depth: number;
  /** Undefined where there is no such course: only its depth is asked for then. */
  material: string | undefined;
  onDepth: (depth: number) => void;
  onMaterial: (material: string) => void;
  typical?: TypicalValue;
}

/** A course that is brought in: how thick, and of what. */
export function CourseFields(props: CourseFieldsProps): ReactNode {
  const { label, term, measured, name, depth, material, onDepth, onMaterial, typical } = props;
  return (
    <>
      <MeasureField
        label={
          <>
            {term === undefined ? label : <Term id={term}>{label}</Term>}, {measured}
          </>
        }
        name={name}
        value={depth}
        measure={length}
        least={0}
        onCommit={onDepth}
        typical={typical}
      />
      {material !== undefined && (
        <MaterialField
          label={`${label} of`}
          name={`${name}-material`}
          value={material}
          kinds={["aggregate", "fill"]}
          onChoose={onMaterial}
        />
      )}
    </>
  );
}

/** Share of the depth above which a crown is asked about. Common practice, no source. */
const HIGH_CROWN = 0.15;

interface BackfillFieldsProps {
  backfill: string;
  crown: number | undefined;
  onBackfill: (backfill: string) => void;
  onCrown: (crown: number | undefined) => void;
}

/** What a hole is filled with again, and how far it is heaped up for settling. */
export function BackfillFields(props: BackfillFieldsProps): ReactNode {
  const { backfill, crown, onBackfill, onCrown } = props;
  return (
    <>
      <MaterialField
        label="Backfill"
        name="backfill"
        value={backfill}
        kinds={["aggregate", "fill"]}
        own
        onChoose={onBackfill}
      />
      <ShareField
        label={
          <>
            <Term id="crown">Crown</Term>, for settling
          </>
        }
        name="crown"
        value={crown}
        most={0.5}
        onCommit={onCrown}
        onClear={() => onCrown(undefined)}
        usual="none"
        note={
          crown === undefined
            ? undefined
            : "Heaped above the ground by this share of its depth. Backfill that is not compacted sinks in its first wet seasons: 5 to 10% is common practice, no source."
        }
        doubt={(share) =>
          share > HIGH_CROWN ? "That is more than backfill usually settles. Is it meant?" : null
        }
      />
    </>
  );
}
