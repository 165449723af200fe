import type { ReactNode } from "react";
import { words } from "../words/index.js";
import type { Sheet } from "./useSheet.js";

/** Two buttons that do what pulling does; on a phone only. */
export function SheetGrip({ sheet }: { sheet: Sheet }): ReactNode {
  const { at, move } = sheet;
  return (
    <div className="sheet-grip">
      <button
        type="button"
        className="round"
        aria-label={words.leaf.lower}
        disabled={at === "down"}
        onClick={() => move("down")}
      >
        ▾
      </button>
      <button
        type="button"
        className="round"
        aria-label={words.leaf.raise}
        disabled={at === "up"}
        onClick={() => move("up")}
      >
        ▴
      </button>
    </div>
  );
}
