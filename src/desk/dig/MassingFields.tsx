import type { ReactNode } from "react";
import { ruleOf } from "../../site/index.js";
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
        label={words.digLeaf.floor}
        name="base"
        value={work.base}
        at={work.outline}
        onCommit={(base) => change(words.digLeaf.floorEdit, { base })}
      />
      <MeasureField
        label={words.digLeaf.height}
        name="height"
        value={work.height}
        measure={length}
        least={0}
        above
        onCommit={(height) => change(words.digLeaf.heightEdit, { height })}
        typical={useTypical("storey")}
      />
      <CornerFields
        title={words.digLeaf.corners}
        corners={work.outline}
        least={3}
        onChange={(outline) => change(words.digLeaf.cornersEdit, { outline })}
      />
      <OutletFields work={work} />
      <StripOver work={work} />
    </>
  );
}

/** A pile that takes what is left over. */
export function PileFields({ work }: { work: Pile }): ReactNode {
  const { site } = useSite();
  const change = useChange(work);
  const rule = ruleOf(site, "spoil-back");
  const nearDoubt = (keepOff: number): string | null =>
    keepOff < rule.value ? words.digLeaf.nearerThanRuleBelow : null;
  return (
    <>
      <PlaceFields
        of={words.digLeaf.centre}
        at={work.at}
        onMove={(at) => change(words.digLeaf.placeEdit, { at })}
      />
      <MeasureField
        label={words.digLeaf.angleOfRepose}
        name="repose"
        value={work.repose}
        measure={bearing}
        least={0}
        above
        onCommit={(repose) => change(words.digLeaf.reposeEdit, { repose })}
        onClear={() => change(words.digLeaf.reposeEdit, { repose: undefined })}
      />
      <MeasureField
        label={words.digLeaf.heightAtMost}
        name="pile-height"
        value={work.height}
        measure={length}
        least={0}
        above
        onCommit={(height) => change(words.digLeaf.heightEdit, { height })}
        onClear={() => change(words.digLeaf.heightEdit, { height: undefined })}
        usual={words.digLeaf.asItHeaps}
        note={work.height === undefined ? undefined : words.digLeaf.whatLeftOverLies}
      />
      <MeasureField
        label={words.digLeaf.keepsOffEdges}
        name="pile-keep-off"
        value={work.keepOff}
        measure={length}
        least={0}
        onCommit={(keepOff) => change(words.digLeaf.distanceFromEdgesEdit, { keepOff })}
        onClear={() => change(words.digLeaf.distanceFromEdgesEdit, { keepOff: undefined })}
        usual={rule.value}
        doubt={nearDoubt}
        note={words.forms.spoilKept(length.print(rule.value, site.units), rule.source)}
      />
    </>
  );
}
