import type { ReactNode } from "react";
import { allPicked, useDesk } from "../store/index.js";
import { words } from "../words/index.js";

/** While taps gather several things: how many there are, and the way out. */
export function SeveralBar(): ReactNode {
  const several = useDesk((desk) => desk.several);
  const count = useDesk((desk) => allPicked(desk).length);
  const setSeveral = useDesk((desk) => desk.setSeveral);
  const show = useDesk((desk) => desk.show);
  if (!several) return null;
  const { form, bar } = words.picked;
  return (
    <div className="several-bar" role="status">
      <span>{count === 0 ? bar.none : form.severalHead(String(count))}</span>
      {count > 1 && (
        <button type="button" className="link" onClick={() => show({ leaf: "dig" })}>
          {bar.form}
        </button>
      )}
      <button type="button" className="link" onClick={() => setSeveral(false)}>
        {bar.done}
      </button>
    </div>
  );
}
