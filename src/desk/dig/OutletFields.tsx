import type { ReactNode } from "react";
import { freshId } from "../../site/index.js";
import type { Building } from "../../site/index.js";
import { ElevationField } from "../fields/ElevationField.js";
import { lowestSide, outletInvert, useDesk } from "../../store/index.js";
import { words } from "../../words/index.js";
import { NameField } from "../fields/NameField.js";
import { useSite } from "../useSite.js";
import { PlaceFields } from "./PlaceFields.js";
import { useChange } from "./useChange.js";

type Outlet = NonNullable<Building["outlets"]>[number];

/** Where drains leave a building, each with its invert. */
export function OutletFields({ work }: { work: Building }): ReactNode {
  const { site } = useSite();
  const change = useChange(work);
  const place = useDesk((desk) => desk.startPlacing);
  const outlets = work.outlets ?? [];
  const set = (next: Outlet[]): void =>
    change(words.digLeaf.outletsEdit, { outlets: next.length > 0 ? next : undefined });
  const put = (index: number, next: Partial<Outlet>): void =>
    set(outlets.map((one, i) => (i === index ? { ...one, ...next } : one)));
  const add = (): void => {
    const id = freshId(
      site,
      "outlet",
      outlets.map((one) => one.id),
    );
    const at = lowestSide(site, work);
    const invert = outletInvert(site, work, at);
    set([...outlets, { id, name: words.digLeaf.drainOutlet, at, invert }]);
  };
  return (
    <>
      <h3>{words.digLeaf.whereDrainsLeave}</h3>
      {outlets.map((outlet, i) => (
        <fieldset key={outlet.id} aria-label={outlet.name}>
          <NameField
            label={words.digLeaf.outlet}
            value={outlet.name}
            onCommit={(name) => put(i, { name })}
          />
          <ElevationField
            label={words.digLeaf.invert}
            name={`outlet-${i + 1}`}
            value={outlet.invert}
            at={[outlet.at]}
            onCommit={(invert) => put(i, { invert })}
          />
          <PlaceFields at={outlet.at} onMove={(at) => put(i, { at })} />
          <div className="tools">
            <button
              type="button"
              className="link"
              onClick={() => set(outlets.filter((one) => one !== outlet))}
            >
              {words.digLeaf.removeThisOutlet}
            </button>
          </div>
        </fieldset>
      ))}
      <div className="tools">
        <button type="button" className="link" onClick={add}>
          {words.digLeaf.addOutlet}
        </button>
        <button type="button" className="link" onClick={() => place("outlet", work.id)}>
          {words.drawing.outletPlace}
        </button>
      </div>
    </>
  );
}
