import type { ReactNode } from "react";
import type { PressureSystem } from "../../site/index.js";
import { length } from "../../units/index.js";
import { words } from "../../words/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { MeasureField } from "../fields/MeasureField.js";
import { usePressureChange } from "./useFlow.js";

type Chamber = NonNullable<PressureSystem["chamber"]>;

const SHAPES = [
  { id: "tank", name: words.flowLeaf.tankLessWalls },
  { id: "box", name: words.flowLeaf.aBox },
  { id: "round", name: words.flowLeaf.roundStanding },
  { id: "lying", name: words.flowLeaf.roundLying },
] as const;

/** m: a first chamber of a shape (typical, no source). */
const FIRST: Readonly<Record<"box" | "round" | "lying", Chamber>> = {
  box: { by: "box", length: 1.5, width: 1 },
  round: { by: "round", diameter: 1 },
  lying: { by: "lying", diameter: 1.2, length: 2 },
};

/** Sizes of each shape that are typed, m. */
const SIZES: Readonly<Record<"box" | "round" | "lying", readonly (readonly [string, string])[]>> = {
  box: [
    ["length", words.flowLeaf.lengthInside],
    ["width", words.flowLeaf.widthInside],
  ],
  round: [["diameter", words.flowLeaf.acrossInside]],
  lying: [
    ["diameter", words.flowLeaf.acrossInside],
    ["length", words.flowLeaf.lengthInside],
  ],
};

/** The inside of the chamber that the pump stands in; a table of volumes comes from the file only. */
export function ChamberFields({ system }: { system: PressureSystem }): ReactNode {
  const change = usePressureChange(system);
  const { chamber } = system;
  const by = chamber?.by ?? "tank";
  return (
    <>
      <ChoiceField
        label={words.flowLeaf.insideChamber}
        name="chamber"
        value={by}
        choices={
          by === "table"
            ? [...SHAPES, { id: "table" as const, name: words.flowLeaf.byATable }]
            : SHAPES
        }
        onChoose={(shape) => {
          if (shape === "table") return;
          change(words.flowLeaf.chamberEdit, {
            chamber: shape === "tank" ? undefined : FIRST[shape],
          });
        }}
      />
      {chamber !== undefined &&
        chamber.by !== "table" &&
        SIZES[chamber.by].map(([key, label]) => (
          <MeasureField
            key={key}
            label={label}
            name={`chamber-${key}`}
            value={
              Object.entries(chamber).flatMap(([name, one]) =>
                name === key && typeof one === "number" ? [one] : [],
              )[0]
            }
            measure={length}
            least={0}
            above
            onCommit={(size) =>
              change(words.flowLeaf.chamberEdit, { chamber: { ...chamber, [key]: size } })
            }
          />
        ))}
      <MeasureField
        label={words.flowLeaf.floorOverTanksUnderside}
        name="chamber-floor"
        value={system.floor}
        usual={0.1}
        measure={length}
        onCommit={(floor) => change(words.flowLeaf.floorEdit, { floor })}
        onClear={() => change(words.flowLeaf.floorEdit, { floor: undefined })}
      />
    </>
  );
}
