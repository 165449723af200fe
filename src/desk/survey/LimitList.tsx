import { useId, type ReactNode } from "react";
import { LIMIT_KINDS, limitKind } from "../../site/index.js";
import { useDesk } from "../../store/index.js";
import { length } from "../../units/index.js";
import { words } from "../../words/index.js";
import { MarkedRow } from "../dig/MarkedRow.js";
import { MarkWords } from "../dig/MarkButtons.js";
import { useLimitDrafts } from "../limits/drafts.js";
import { useSite } from "../useSite.js";
import { LimitForm } from "./LimitForm.js";

const { limit: says } = words.drawing;
const SIGNS = { place: "○", line: "∿", area: "▱" } as const;

/** What limits the site, each to be picked and changed, and the placing of more. */
export function LimitList(): ReactNode {
  const { site } = useSite();
  const selected = useDesk((desk) => desk.selected);
  const alone = useDesk((desk) => desk.also.length === 0);
  const limits = site.limits ?? [];
  const picked = limits.find(
    (one) => alone && selected?.kind === "limit" && one.id === selected.id,
  );
  return (
    <>
      <h2>
        {says.title} <span className="aside">{says.aside}</span>
      </h2>
      {limits.length === 0 && <p className="says">{says.none}</p>}
      <ul className="rows">
        {limits.map((limit) => {
          const kind = limitKind(limit.kind);
          const name = limit.name ?? kind?.name ?? limit.kind;
          return (
            <li key={limit.id}>
              <MarkedRow thing={{ kind: "limit", id: limit.id }} name={name} of={limit}>
                <span aria-hidden="true">
                  {SIGNS[kind?.shape ?? (limit.at === undefined ? "line" : "place")]}
                </span>
                <span className="text">
                  {name}
                  <MarkWords of={limit} />
                </span>
                <span className="amount">
                  {limit.setback !== undefined && length.print(limit.setback, site.units)}
                </span>
              </MarkedRow>
              {picked === limit && <LimitForm key={limit.id} limit={limit} />}
            </li>
          );
        })}
      </ul>
      <PlaceLimit />
    </>
  );
}

/** Which kind comes next, and the button that begins it. */
function PlaceLimit(): ReactNode {
  const id = useId();
  const kind = useLimitDrafts((draft) => draft.kind);
  const start = useDesk((desk) => desk.startPlacing);
  return (
    <div className="place-limit">
      <label htmlFor={id}>{says.placeA}</label>
      <select
        id={id}
        value={kind}
        onChange={(event) => useLimitDrafts.setState({ kind: event.target.value })}
      >
        {LIMIT_KINDS.map((one) => (
          <option key={one.id} value={one.id}>
            {one.name}
          </option>
        ))}
      </select>
      <button type="button" className="link" onClick={() => start("limit", kind)}>
        {says.place}
      </button>
    </div>
  );
}
