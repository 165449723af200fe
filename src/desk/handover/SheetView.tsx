import { useState } from "react";
import type { ReactNode } from "react";
import { PLAN_SCALES, scaleInWords, scaleRatio } from "../../sheets/index.js";
import { setPlanWindow } from "../../site/index.js";
import type { SheetSeen } from "../../store/index.js";
import { words } from "../../words/index.js";
import { lotOutline } from "../late/lotOutline.js";
import { useEdit, useSite } from "../useSite.js";
import { movedWindow, windowOnLot } from "./movedWindow.js";
import type { SheetWindow } from "./movedWindow.js";
import { SheetPicture } from "./SheetPicture.js";
import { useSheetDrag } from "./useSheetDrag.js";

const says = words.handing.sheets;

interface SheetViewProps {
  sheet: SheetSeen;
  /** True while a newer drawing is on its way. */
  isOld: boolean;
}

/** One sheet as it will be printed; a plan can be dragged on its paper and put to another scale. */
export function SheetView({ sheet, isOld }: SheetViewProps): ReactNode {
  const edit = useEdit();
  const [isLarge, setLarge] = useState(false);
  const { window: shown, title, id } = sheet;
  const isSeen = sheet.svg !== "";
  const show = (next: SheetWindow | null): void =>
    edit(says.windowStep(title), (now) => {
      if (next === null) return setPlanWindow(now, id, null);
      const { middle, scale } = windowOnLot(next, lotOutline(now));
      return setPlanWindow(now, id, { middle: [...middle], scale });
    });
  return (
    <div className="sheet-view" data-old={isOld ? "" : undefined}>
      <div className="tools sheet-tools">
        {isSeen && (
          <button type="button" className="button" onClick={() => setLarge(!isLarge)}>
            {isLarge ? says.whole : says.larger}
          </button>
        )}
        {shown !== null && <ScaleChoice window={shown} onChange={show} />}
        {shown !== null && (
          <button type="button" className="button" onClick={() => show(null)}>
            {says.showAll}
          </button>
        )}
      </div>
      {shown !== null && <p className="says">{isLarge ? says.wholeToMove : says.dragHint}</p>}
      <div className="sheet-frame" data-large={isLarge ? "" : undefined}>
        {!isSeen && <p className="sheet-absent">{says.notPrinted}</p>}
        <Paper
          sheet={sheet}
          onMove={shown === null || isLarge ? null : (by) => show(movedWindow(shown, by))}
        />
      </div>
    </div>
  );
}

function ScaleChoice(props: {
  window: SheetWindow;
  onChange: (window: SheetWindow) => void;
}): ReactNode {
  const { window: shown, onChange } = props;
  const { units } = useSite().site;
  const scales: readonly number[] = PLAN_SCALES[units];
  const all = scales.includes(shown.scale)
    ? scales
    : [...scales, shown.scale].sort((one, other) => one - other);
  return (
    <label className="sheet-scale">
      {says.scale}
      <select
        value={shown.scale}
        onChange={({ target }) => onChange({ ...shown, scale: Number(target.value) })}
      >
        {all.map((scale) => (
          <option key={scale} value={scale}>
            {says.asScale(scaleRatio(scale), scaleInWords(scale, units))}
          </option>
        ))}
      </select>
    </label>
  );
}

interface PaperProps {
  sheet: SheetSeen;
  /** mm on the paper, right and down, by which a plan was moved; null where it stays. */
  onMove: ((by: readonly [number, number]) => void) | null;
}

/** mm of paper that an arrow key moves a plan by. */
const KEY_STEP = 10;

const KEYS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-KEY_STEP, 0],
  ArrowRight: [KEY_STEP, 0],
  ArrowUp: [0, -KEY_STEP],
  ArrowDown: [0, KEY_STEP],
};

/** The sheet itself, and what moves a plan on it. */
function Paper({ sheet, onMove }: PaperProps): ReactNode {
  const drag = useSheetDrag(sheet.width, onMove);
  const picture = <SheetPicture svg={sheet.svg} style={drag.style} isHeld={drag.isHeld} />;
  if (onMove === null) return picture;
  return (
    <div
      className="sheet-plan"
      role="application"
      tabIndex={0}
      aria-label={`${says.picture(sheet.title)}. ${says.dragHint}`}
      {...drag.handlers}
      onKeyDown={(event) => {
        const by = KEYS[event.key];
        if (by === undefined) return;
        event.preventDefault();
        onMove(by);
      }}
    >
      {picture}
    </div>
  );
}
