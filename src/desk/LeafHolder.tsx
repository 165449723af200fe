import { useEffect, useRef, useState } from "react";
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
import { SurveyLeaf } from "./survey/SurveyLeaf.js";

const LEAF_BODIES: Readonly<Record<Leaf, () => ReactNode>> = {
  survey: SurveyLeaf,
  dig: DigLeaf,
  flow: FlowLeaf,
  machines: MachinesLeaf,
  cost: CostLeaf,
  handover: HandoverLeaf,
};

type Sheet = "down" | "half" | "up";
const NEXT_SHEET = { down: "half", half: "up", up: "down" } as const;
const SHEET_WORDS = { down: "Show the leaf", half: "More of the leaf", up: "More of the ground" };

/** The open leaf of the book; on a phone a sheet that can be drawn up or put down. */
export function LeafHolder(): ReactNode {
  const leaf = useDesk((desk) => desk.leaf);
  const placing = useDesk(
    (desk) => desk.placing !== null || (desk.section !== null && desk.section.length < 2),
  );
  const [set, setSet] = useState<{ sheet: Sheet; leaf: Leaf }>({ sheet: "half", leaf });
  // Whoever asks for another leaf wants to see it.
  const sheet = set.sheet === "down" && set.leaf !== leaf ? "half" : set.sheet;
  const holder = useRef<HTMLElement>(null);
  const Body = LEAF_BODIES[leaf];
  useEffect(() => {
    holder.current?.scrollTo({ top: 0 });
  }, [leaf]);
  const shown = placing ? "down" : sheet;
  return (
    <aside className="leaf" ref={holder} data-sheet={shown} aria-label={LEAF_TITLES[leaf]}>
      <div className="leaf-head">
        <h1>{LEAF_TITLES[leaf]}</h1>
        <CautionsButton />
        <button
          type="button"
          className="round sheet-grip"
          aria-label={SHEET_WORDS[sheet]}
          onClick={() => setSet({ sheet: NEXT_SHEET[sheet], leaf })}
        >
          {sheet === "up" ? "▾" : "▴"}
        </button>
      </div>
      <div className="leaf-body">
        <Body />
      </div>
    </aside>
  );
}
