import type { ReactNode } from "react";
import type { Walls } from "../../site/index.js";
import { length, wallSlope } from "../../units/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { MeasureField } from "../fields/MeasureField.js";

const WAYS = [
  { id: "run", name: "One slope" },
  { id: "layers", name: "Each layer's own" },
  { id: "benches", name: "Benches" },
] as const;

const FRESH: Readonly<Record<Walls["by"], Walls>> = {
  run: { by: "run", run: 1 },
  layers: { by: "layers" },
  benches: { by: "benches", rise: 1.2, tread: 1.2 },
};

/** How the walls of a hole are cut. */
export function WallFields(props: { walls: Walls; onChange: (walls: Walls) => void }): ReactNode {
  const { walls, onChange } = props;
  return (
    <>
      <ChoiceField
        label="Walls"
        name="walls"
        value={walls.by}
        choices={WAYS}
        onChoose={(by) => by !== walls.by && onChange(FRESH[by])}
      />
      {walls.by === "run" && (
        <MeasureField
          label={
            <>
              Wall slope <small>run : rise</small>
            </>
          }
          name="wall-run"
          value={walls.run}
          measure={wallSlope}
          onCommit={(run) => onChange({ by: "run", run })}
        />
      )}
      {walls.by === "benches" && (
        <>
          <MeasureField
            label="Bench rise"
            name="bench-rise"
            value={walls.rise}
            measure={length}
            least={0}
            above
            onCommit={(rise) => onChange({ ...walls, rise })}
          />
          <MeasureField
            label="Bench tread"
            name="bench-tread"
            value={walls.tread}
            measure={length}
            least={0}
            above
            onCommit={(tread) => onChange({ ...walls, tread })}
          />
        </>
      )}
    </>
  );
}
