import { useEffect, useRef } from "react";
import type { ReactNode } from "react";
import { useDesk } from "../store/index.js";
import type { Leaf } from "../store/index.js";
import { CautionsButton } from "./Cautions.js";
import { CostLeaf } from "./cost/CostLeaf.js";
import { DigLeaf } from "./dig/DigLeaf.js";
import { FlowLeaf } from "./flow/FlowLeaf.js";
import { HandoverLeaf } from "./handover/HandoverLeaf.js";
import { LEAF_TITLES } from "./Header.js";
import { MachinesLeaf } from "./machines/MachinesLeaf.js";
import { SheetGrip } from "./SheetGrip.js";
import { useSheet } from "./useSheet.js";
import { SurveyLeaf } from "./survey/SurveyLeaf.js";

const LEAF_BODIES: Readonly<Record<Leaf, () => ReactNode>> = {
  survey: SurveyLeaf,
  dig: DigLeaf,
  flow: FlowLeaf,
  machines: MachinesLeaf,
  cost: CostLeaf,
  handover: HandoverLeaf,
};

/** The open leaf of the book; on a phone a sheet that can be drawn up or put down. */
export function LeafHolder(): ReactNode {
  const leaf = useDesk((desk) => desk.leaf);
  const placing = useDesk(
    (desk) => desk.placing !== null || (desk.section !== null && desk.section.length < 2),
  );
  const sheet = useSheet(leaf);
  const holder = useRef<HTMLElement>(null);
  const Body = LEAF_BODIES[leaf];
  useEffect(() => {
    holder.current?.scrollTo({ top: 0 });
  }, [leaf]);
  const shown = placing ? "down" : sheet.at;
  return (
    <aside className="leaf" ref={holder} data-sheet={shown} aria-label={LEAF_TITLES[leaf]}>
      <div className="leaf-head" {...sheet.pull}>
        <h1>{LEAF_TITLES[leaf]}</h1>
        <CautionsButton />
        <SheetGrip sheet={sheet} />
      </div>
      <div className="leaf-body">
        <Body />
      </div>
    </aside>
  );
}
