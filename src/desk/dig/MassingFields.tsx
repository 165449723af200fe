import type { ReactNode } from "react";
import { USUAL_KEEP_OFF } from "../../site/index.js";
import type { Building, Pile } from "../../site/index.js";
import { bearing, length } from "../../units/index.js";
import { ElevationField } from "../fields/ElevationField.js";
import { words } from "../../words/index.js";
import { MeasureField } from "../fields/MeasureField.js";
import { useTypical } from "../fields/useTypical.js";
import { useSite } from "../useSite.js";
import { OutletFields } from "./OutletFields.js";
import { CornerFields, PlaceFields } from "./PlaceFields.js";
import { StripOver } from "./StripFields.js";
import { useChange } from "./useChange.js";

/** A building: its floor and height; it is drawn and kept clear of, not dug. */
export function BuildingFields({ work }: { work: Building }): ReactNode {
  const change = useChange(work);
  return (
    <>
      <ElevationField
        label="Floor"
        name="base"
        value={work.base}
        at={work.outline}
        onCommit={(base) => change("floor", { base })}
      />
      <MeasureField
        label="Height"
        name="height"
        value={work.height}
        measure={length}
        least={0}
        above
        onCommit={(height) => change("height", { height })}
        typical={useTypical("storey")}
      />
      <CornerFields
        title="corners"
        corners={work.outline}
        least={3}
        onChange={(outline) => change("corners", { outline })}
      />
      <OutletFields work={work} />
      <StripOver work={work} />
    </>
  );
}

const nearDoubt = (keepOff: number): string | null =>
  keepOff < USUAL_KEEP_OFF
    ? "That is nearer than the rule below allows: spoil on the edge loads the wall and rolls in."
    : null;

/** A pile that takes what is left over. */
export function PileFields({ work }: { work: Pile }): ReactNode {
  const { units } = useSite().site;
  const change = useChange(work);
  return (
    <>
      <PlaceFields of="Centre" at={work.at} onMove={(at) => change("place", { at })} />
      <MeasureField
        label="Angle of repose"
        name="repose"
        value={work.repose}
        measure={bearing}
        least={0}
        above
        onCommit={(repose) => change("repose", { repose })}
        onClear={() => change("repose", { repose: undefined })}
      />
      <MeasureField
        label="Height, at most"
        name="pile-height"
        value={work.height}
        measure={length}
        least={0}
        above
        onCommit={(height) => change("height", { height })}
        onClear={() => change("height", { height: undefined })}
        usual="as it heaps"
        note={
          work.height === undefined ? undefined : "What is left over lies wider, with a flat top."
        }
      />
      <MeasureField
        label="Keeps off edges"
        name="pile-keep-off"
        value={work.keepOff}
        measure={length}
        least={0}
        onCommit={(keepOff) => change("distance from edges", { keepOff })}
        onClear={() => change("distance from edges", { keepOff: undefined })}
        usual={USUAL_KEEP_OFF}
        doubt={nearDoubt}
        note={words.forms.spoilKept(length.print(USUAL_KEEP_OFF, units))}
      />
    </>
  );
}
