import type { ReactNode } from "react";
import type { Tank } from "../../site/index.js";
import { tankDepth, useDesk, withDepthKept } from "../../store/index.js";
import { length } from "../../units/index.js";
import { words } from "../../words/index.js";
import { useEdit, useSite } from "../useSite.js";

/** How deep a tank lies where it is now, and one press that gives it the depth that it had. */
export function TankDepthLine({ work }: { work: Tank }): ReactNode {
  const { site, schemeId } = useSite();
  const history = useDesk((desk) => desk.history);
  const edit = useEdit();
  const depth = history === null ? null : tankDepth(history, schemeId, work.id);
  if (depth === null || depth.cover === null) return null;
  const { cover, moved } = depth;
  const print = (metres: number): string => length.print(Math.abs(metres), site.units);
  return (
    <p className="says soft" role="status" data-testid="tank-depth">
      {words.joined.cover(print(cover), cover < 0)}
      {moved !== null && (
        <>
          {" "}
          {words.joined.groundMoved(print(moved.rise), moved.rise < 0)}{" "}
          <button
            type="button"
            className="link"
            onClick={() =>
              edit(words.joined.keepDepthEdit(work.name), (now) =>
                withDepthKept(now, schemeId, work.id, moved),
              )
            }
          >
            {words.joined.keepDepth}
          </button>
        </>
      )}
    </p>
  );
}
