import type { ReactNode } from "react";
import { length } from "../../units/index.js";
import { words } from "../../words/index.js";
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
          label={words.digLeaf.materialOf(label)}
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
        label={words.digLeaf.backfill}
        name="backfill"
        value={backfill}
        kinds={["aggregate", "fill"]}
        own
        onChoose={onBackfill}
      />
      <ShareField
        label={
          <>
            <Term id="crown">{words.digLeaf.crown}</Term>
            {words.digLeaf.forSettling}
          </>
        }
        name="crown"
        value={crown}
        most={0.5}
        onCommit={onCrown}
        onClear={() => onCrown(undefined)}
        usual={words.digLeaf.none}
        note={crown === undefined ? undefined : words.digLeaf.heapedAboveGroundShare}
        doubt={(share) => (share > HIGH_CROWN ? words.digLeaf.moreThanBackfillUsually : null)}
      />
    </>
  );
}
