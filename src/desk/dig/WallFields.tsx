import type { ReactNode } from "react";
import type { Site, Walls } from "../../site/index.js";
import { benchToPlace } from "../../store/index.js";
import { length, wallSlope } from "../../units/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { MeasureField } from "../fields/MeasureField.js";
import { useSite } from "../useSite.js";

const WAYS = [
  { id: "run", name: "One slope" },
  { id: "layers", name: "Each layer's own" },
  { id: "benches", name: "Benches" },
] as const;

/** Walls cut another way, with sizes to start from. */
function freshWalls(by: Walls["by"], site: Site): Walls {
  const bench = benchToPlace(site);
  if (by === "benches") return { by, rise: bench, tread: bench };
  return by === "run" ? { by, run: 1 } : { by };
}

/** How the walls of a hole are cut. */
export function WallFields(props: { walls: Walls; onChange: (walls: Walls) => void }): ReactNode {
  const { walls, onChange } = props;
  const { site } = useSite();
  return (
    <>
      <ChoiceField
        label="Walls"
        name="walls"
        value={walls.by}
        choices={WAYS}
        onChoose={(by) => by !== walls.by && onChange(freshWalls(by, site))}
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
