import type { ReactNode } from "react";
import { LEFT_OUT } from "../../handover/index.js";
import { leaveOut, useHandover } from "../../store/index.js";
import { words } from "../../words/index.js";

const says = words.viewer.making;

/** What the page and the link hold, for whom they are made. */
export function CopyChoice(): ReactNode {
  const leftOut = useHandover((hand) => hand.leftOut);
  const isKept = useHandover((hand) => hand.isLeftOutKept);
  return (
    <fieldset className="copy-choice">
      <legend>{says.for}</legend>
      {LEFT_OUT.map((what) => (
        <label className="tick" key={what}>
          <input
            type="checkbox"
            name={`copy-${what}`}
            checked={!leftOut.includes(what)}
            onChange={({ target }) => leaveOut(what, !target.checked)}
          />
          {says.with[what]}
        </label>
      ))}
      <p className="says">{leftOut.length === 0 ? says.whom : says.stays}</p>
      {!isKept && <p className="says">{says.notKept}</p>}
    </fieldset>
  );
}
