import { useRef } from "react";
import type { ReactNode } from "react";
import { useDesk } from "../store/index.js";
import { words } from "../words/index.js";
import { CautionsButton } from "./Cautions.js";
import { LEAF_TITLES } from "./leafTitles.js";
import { Late, LeafComing } from "./late/Late.js";
import { LEAF_PARTS } from "./late/parts.js";
import { SheetGrip } from "./SheetGrip.js";
import { useScrollPlace } from "./useScrollPlace.js";
import { useSheet } from "./useSheet.js";

/** What an untouched example is, and the way to a site of one's own. */
function ExampleLine(): ReactNode {
  // The Survey leaf has its own way there.
  const isExample = useDesk((desk) => desk.keeping.state === "example" && desk.leaf === "dig");
  const show = useDesk((desk) => desk.show);
  if (!isExample) return null;
  return (
    <p className="example-line">
      <span>{words.leaf.example}</span>
      <button type="button" className="link" onClick={() => show({ starting: true })}>
        {words.leaf.startOwn}
      </button>
    </p>
  );
}

/** The open leaf of the book; on a phone a sheet that can be drawn up or put down. */
export function LeafHolder(): ReactNode {
  const leaf = useDesk((desk) => desk.leaf);
  const placing = useDesk(
    (desk) => desk.placing !== null || (desk.section !== null && desk.section.length < 2),
  );
  const sheet = useSheet(leaf);
  const holder = useRef<HTMLElement>(null);
  useScrollPlace(leaf, holder);
  const shown = placing ? "down" : sheet.at;
  return (
    <aside className="leaf" ref={holder} data-sheet={shown} aria-label={LEAF_TITLES[leaf]}>
      <div className="leaf-head" {...sheet.pull}>
        <h1>{LEAF_TITLES[leaf]}</h1>
        <CautionsButton />
        <SheetGrip sheet={sheet} />
      </div>
      <div className="leaf-body">
        <ExampleLine />
        <Late part={LEAF_PARTS[leaf]} name={words.offline.thisLeaf} coming={<LeafComing />}>
          {(Body) => <Body />}
        </Late>
      </div>
    </aside>
  );
}
