import type { ReactNode } from "react";
import type { PressureSystem } from "../../site/index.js";
import { length } from "../../units/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { MeasureField } from "../fields/MeasureField.js";
import { usePressureChange } from "./useFlow.js";

type Chamber = NonNullable<PressureSystem["chamber"]>;

const SHAPES = [
  { id: "tank", name: "the tank less its walls" },
  { id: "box", name: "a box" },
  { id: "round", name: "round, standing" },
  { id: "lying", name: "round, lying" },
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
    ["length", "Length, inside"],
    ["width", "Width, inside"],
  ],
  round: [["diameter", "Across, inside"]],
  lying: [
    ["diameter", "Across, inside"],
    ["length", "Length, inside"],
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
        label="Inside of the chamber"
        name="chamber"
        value={by}
        choices={
          by === "table" ? [...SHAPES, { id: "table" as const, name: "by a table" }] : SHAPES
        }
        onChoose={(shape) => {
          if (shape === "table") return;
          change("chamber", { chamber: shape === "tank" ? undefined : FIRST[shape] });
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
            onCommit={(size) => change("chamber", { chamber: { ...chamber, [key]: size } })}
          />
        ))}
      <MeasureField
        label="Its floor over the tank's underside"
        name="chamber-floor"
        value={system.floor}
        usual={0.1}
        measure={length}
        onCommit={(floor) => change("floor", { floor })}
        onClear={() => change("floor", { floor: undefined })}
      />
    </>
  );
}
