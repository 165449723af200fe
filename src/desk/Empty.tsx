import type { ReactNode } from "react";
import { useDesk } from "../store/index.js";
import type { PlaceKind } from "../store/index.js";

/** What a leaf says where there is nothing yet: what is missing, what to do, and the way to it. */
export function Empty(props: { title: string; text: string; children: ReactNode }): ReactNode {
  return (
    <div className="empty">
      <h3>{props.title}</h3>
      <p>{props.text}</p>
      <div className="empty-ways">{props.children}</div>
    </div>
  );
}

/** Starts placing, from a leaf that has none yet. */
export function PlaceButton({ kind, text }: { kind: PlaceKind; text: string }): ReactNode {
  const start = useDesk((desk) => desk.startPlacing);
  return (
    <button type="button" className="button" onClick={() => start(kind)}>
      {text}
    </button>
  );
}
