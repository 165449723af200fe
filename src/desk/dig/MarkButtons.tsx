import type { ReactNode } from "react";
import type { Mark, Thing } from "../../site/index.js";
import { useDesk } from "../../store/index.js";
import { words } from "../../words/index.js";

const SHACKLE = { shut: "M5 8V5.5a3 3 0 0 1 6 0V8", open: "M5 8V4.5a3 3 0 0 1 5.6-1.5" };

/** A padlock, shut or open. */
export function LockIcon({ shut }: { shut: boolean }): ReactNode {
  return (
    <svg className="mark-icon" viewBox="0 0 16 16" aria-hidden="true">
      <path d={shut ? SHACKLE.shut : SHACKLE.open} />
      <rect x="3" y="8" width="10" height="6" className={shut ? "filled" : undefined} />
    </svg>
  );
}

/** An eye, struck through when what it stands for is not seen. */
export function EyeIcon({ struck }: { struck: boolean }): ReactNode {
  return (
    <svg className="mark-icon" viewBox="0 0 16 16" aria-hidden="true">
      <path d="M1.5 8C3.5 4.5 12.5 4.5 14.5 8 12.5 11.5 3.5 11.5 1.5 8z" />
      <circle cx="8" cy="8" r="1.7" />
      {struck && <path d="M3 14 13 2" />}
    </svg>
  );
}

interface MarkButtonProps {
  thing: Thing;
  name: string;
  mark: Mark;
  on: boolean;
}

function MarkButton({ thing, name, mark, on }: MarkButtonProps): ReactNode {
  const set = useDesk((desk) => desk.mark);
  const { lock, unlock, hide, show } = words.picked;
  const locks = mark === "locked";
  const says = (locks ? (on ? unlock : lock) : on ? show : hide)(name);
  return (
    <button
      type="button"
      className="mark-button"
      data-mark={mark}
      data-on={on ? "" : undefined}
      aria-label={says}
      title={says}
      onClick={() => set(mark, !on, [thing])}
    >
      {locks ? <LockIcon shut={on} /> : <EyeIcon struck={on} />}
    </button>
  );
}

/** Lock and hide as two small buttons of a row. */
export function MarkButtons(props: {
  thing: Thing;
  name: string;
  of: { locked?: boolean | undefined; hidden?: boolean | undefined };
}): ReactNode {
  const { thing, name, of } = props;
  return (
    <span className="mark-buttons">
      <MarkButton thing={thing} name={name} mark="locked" on={of.locked === true} />
      <MarkButton thing={thing} name={name} mark="hidden" on={of.hidden === true} />
    </span>
  );
}

/** In words, in a row, that a thing is hidden or locked; nothing when it is neither. */
export function MarkWords({
  of,
}: {
  of: { locked?: boolean | undefined; hidden?: boolean | undefined };
}): ReactNode {
  const { isHidden, isLocked } = words.picked.list;
  const says = [of.locked === true ? isLocked : "", of.hidden === true ? isHidden : ""];
  const text = says.filter((word) => word !== "").join(", ");
  return text === "" ? null : <small className="mark-words"> {text}</small>;
}
