import type { MouseEvent, ReactNode } from "react";
import { allPicked, samePicked, useDesk } from "../../store/index.js";
import type { Picked } from "../../store/index.js";
import { MarkButtons } from "./MarkButtons.js";
import { useLongPress } from "./useLongPress.js";

/** Whether a click adds to what is picked. */
const adds = (event: MouseEvent): boolean => event.shiftKey || event.ctrlKey || event.metaKey;

/** What picks a row: a click, one that adds, and a finger that rests on it. */
function useRowPick(thing: Picked) {
  const picked = useDesk((desk) => allPicked(desk).some((one) => samePicked(one, thing)));
  const pick = useDesk((desk) => desk.pick);
  const select = useDesk((desk) => desk.select);
  const { tookClick, ...press } = useLongPress(() => {
    const desk = useDesk.getState();
    desk.setSeveral(true);
    desk.pickThese([thing], true);
  });
  return {
    picked,
    handlers: {
      ...press,
      onClick(event: MouseEvent) {
        if (tookClick()) return;
        const { several, also } = useDesk.getState();
        const letsGo = picked && !several && !adds(event) && also.length === 0;
        if (letsGo) select(null);
        else pick(thing, adds(event));
      },
    },
  };
}

interface MarkedRowProps {
  thing: Picked;
  name: string;
  of: { locked?: boolean | undefined; hidden?: boolean | undefined };
  /** What tests and styles read of the row. */
  data?: Readonly<Record<`data-${string}`, string | number | undefined>>;
  children: ReactNode;
}

/** A row of a list that picks its thing, with its lock and its eye at the end. */
export function MarkedRow({ thing, name, of, data, children }: MarkedRowProps): ReactNode {
  const { picked, handlers } = useRowPick(thing);
  return (
    <span className="marked-row" data-hidden={of.hidden === true ? "" : undefined}>
      <button type="button" className="row" aria-pressed={picked} {...data} {...handlers}>
        {children}
      </button>
      <MarkButtons thing={thing} name={name} of={of} />
    </span>
  );
}
