import { useRef, useState } from "react";
import type { ReactNode } from "react";
import { hiddenThings, reorderWork } from "../../site/index.js";
import type { Work } from "../../site/index.js";
import { earthVolume } from "../../units/index.js";
import { useDesk } from "../../store/index.js";
import { words } from "../../words/index.js";
import { sumOf } from "../../drawn/index.js";
import { WorkSwatch } from "../Swatch.js";
import { useEdit, useSite } from "../useSite.js";
import { dropLine } from "./listOrder.js";
import { MarkWords } from "./MarkButtons.js";
import { MarkedRow } from "./MarkedRow.js";
import { RowGrip } from "./RowGrip.js";
import type { RowDrag } from "./RowGrip.js";

function WorkRow({ work }: { work: Work }): ReactNode {
  const { site, estimate } = useSite();
  const quantities = estimate?.works.find((one) => one.id === work.id);
  const cut = quantities === undefined ? undefined : sumOf(quantities.cut);
  return (
    <MarkedRow
      thing={{ kind: "work", id: work.id }}
      name={work.name}
      of={work}
      data={{
        "data-work": work.id,
        "data-cut": cut,
        "data-at": "at" in work ? work.at.join(" ") : undefined,
        "data-base": "base" in work ? work.base : undefined,
      }}
    >
      <WorkSwatch kind={work.kind} />
      <span className="text">
        {work.name}
        <MarkWords of={work} />
      </span>
      <span className="amount">
        {cut === undefined || cut === 0 ? "–" : earthVolume.print(cut, site.units)}
      </span>
    </MarkedRow>
  );
}

/** What is done with the list as a whole: several picked by taps, all shown again. */
function ListTools(): ReactNode {
  const { site, schemeId } = useSite();
  const several = useDesk((desk) => desk.several);
  const setSeveral = useDesk((desk) => desk.setSeveral);
  const pickAll = useDesk((desk) => desk.pickAll);
  const showAll = useDesk((desk) => desk.showAll);
  const hidden = hiddenThings(site, schemeId).length;
  const { list } = words.picked;
  return (
    <div className="tools list-tools">
      <button
        type="button"
        className="link"
        aria-pressed={several}
        onClick={() => setSeveral(!several)}
      >
        {list.several}
      </button>
      <button type="button" className="link" onClick={pickAll}>
        {list.all}
      </button>
      {hidden > 0 && (
        <button type="button" className="link" onClick={showAll}>
          {list.showAll(String(hidden))}
        </button>
      )}
      {several && <span className="soft">{list.severalOn}</span>}
    </div>
  );
}

/** The works in building order: picked, locked, hidden, and moved earlier or later. */
export function WorkList({ works }: { works: readonly Work[] }): ReactNode {
  const { schemeId } = useSite();
  const edit = useEdit();
  const list = useRef<HTMLOListElement>(null);
  const [drag, setDrag] = useState<RowDrag | null>(null);
  const line = drag === null ? null : dropLine(drag.from, drag.to);
  return (
    <>
      <ol className="rows work-list" ref={list} aria-label={words.picked.list.name}>
        {works.map((work, index) => (
          <li
            key={work.id}
            className="work-row"
            data-held={drag?.from === index ? "" : undefined}
            data-drop={line?.row === index ? line.side : undefined}
            data-hidden={work.hidden === true ? "" : undefined}
          >
            <RowGrip
              list={list}
              index={index}
              name={work.name}
              onDrag={setDrag}
              onMove={(to) =>
                edit(words.picked.steps.order(work.name), (now) =>
                  reorderWork(now, schemeId, work.id, to),
                )
              }
            />
            <WorkRow work={work} />
          </li>
        ))}
      </ol>
      <ListTools />
      {works.length > 1 && <p className="says soft">{words.picked.list.why}</p>}
    </>
  );
}
