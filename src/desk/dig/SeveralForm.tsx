import type { ReactNode } from "react";
import { hasMark } from "../../site/index.js";
import type { Site } from "../../site/index.js";
import { nameOfPicked, picksIn, useDesk } from "../../store/index.js";
import type { Picked } from "../../store/index.js";
import { distance } from "../../units/index.js";
import { words } from "../../words/index.js";
import { MeasureField } from "../fields/MeasureField.js";
import { useSite } from "../useSite.js";
import { CopyTo } from "./CopyTo.js";
import { MarkTools } from "./MarkTools.js";

/** The things that are picked and still there. */
export function usePicked(): readonly Picked[] {
  const { site, schemeId } = useSite();
  const selected = useDesk((desk) => desk.selected);
  const also = useDesk((desk) => desk.also);
  return picksIn(site, schemeId, { selected, also });
}

function namesOf(site: Site, schemeId: string, things: readonly Picked[]): string {
  return words.picked.and(things.map((one) => nameOfPicked(site, schemeId, one) ?? one.id));
}

/** A short form for several things at once: what is typed moves them all, in one step. */
export function SeveralForm({ things }: { things: readonly Picked[] }): ReactNode {
  const { site, schemeId } = useSite();
  const moveBy = useDesk((desk) => desk.moveBy);
  const desk = useDesk.getState();
  const { form } = words.picked;
  const locked = things.filter((one) => hasMark(site, schemeId, one, "locked"));
  const works = things.some(({ kind }) => kind === "work");
  const field = (label: string, name: string, by: (m: number) => [number, number, number]) => (
    <MeasureField
      label={label}
      name={name}
      value={undefined}
      usual={0}
      measure={distance}
      onCommit={(metres) => moveBy(by(metres))}
      onClear={() => undefined}
    />
  );
  return (
    <section className="form" aria-label={form.severalHead(String(things.length))}>
      <h2 className="work-heading">{form.severalHead(String(things.length))}</h2>
      <p className="says">{namesOf(site, schemeId, things)}</p>
      {locked.length > 0 && (
        <p className="says">{form.someLocked(namesOf(site, schemeId, locked))}</p>
      )}
      {field(form.moveEast, "by-east", (m) => [m, 0, 0])}
      {field(form.moveNorth, "by-north", (m) => [0, m, 0])}
      {works && field(form.moveUp, "by-up", (m) => [0, 0, m])}
      <div className="tools">
        {works && (
          <button type="button" className="link" onClick={desk.duplicateSelected}>
            {form.copy}
          </button>
        )}
        {works && <CopyTo />}
        <MarkTools things={things} />
        <button type="button" className="link" onClick={desk.removeSelected}>
          {form.remove}
        </button>
        <button type="button" className="link" onClick={() => desk.select(null)}>
          {form.letGo}
        </button>
      </div>
    </section>
  );
}
