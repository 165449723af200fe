import { useEffect, useState } from "react";
import type { ReactNode } from "react";
import { Dialog, Modal, ModalOverlay } from "react-aria-components";
import { DialogHead } from "../DialogHead.js";
import { isLeftOut, printSheet } from "../../site/index.js";
import { cancelMaking, drawSheets, restSheets, useHandover } from "../../store/index.js";
import type { SheetSeen } from "../../store/index.js";
import { words } from "../../words/index.js";
import { useEdit, useSite } from "../useSite.js";
import { saveFiles } from "./saveFiles.js";
import { SheetView } from "./SheetView.js";

const says = words.handing.sheets;

/** The sheets as they will be printed: which of them, and what each plan shows. */
export function SheetsDialog({ onClose }: { onClose: () => void }): ReactNode {
  return (
    <ModalOverlay
      className="overlay sheets-overlay"
      isDismissable
      isOpen
      onOpenChange={(open) => !open && onClose()}
    >
      <Modal className="modal sheets-modal">
        <Dialog className="dialog sheets-dialog">
          <DialogHead title={says.dialog} close={says.close} />
          <SheetsBody />
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function SheetsBody(): ReactNode {
  const { site, schemeId } = useSite();
  const sheets = useHandover((hand) => hand.sheets);
  const isDrawing = useHandover((hand) => hand.drawing !== null);
  const fault = useHandover((hand) => hand.fault);
  const [chosen, setChosen] = useState<string | null>(null);
  useEffect(() => drawSheets(site, schemeId), [site, schemeId]);
  useEffect(() => restSheets, []);
  const seen = sheets?.seen ?? [];
  const current = seen.find(({ id }) => id === chosen) ?? seen[0];
  return (
    <div className="sheets-body">
      {fault !== null && !isDrawing && (
        <div role="alert" className="sheets-fault">
          <p>{says.failed(fault)}</p>
          <button type="button" className="button" onClick={() => drawSheets(site, schemeId)}>
            {says.again}
          </button>
        </div>
      )}
      <div className="sheets-head">
        <MakePdf />
        <p role="status" className={isDrawing ? "sheets-coming" : undefined}>
          {isDrawing ? says.drawing : ""}
        </p>
      </div>
      {current !== undefined && (
        <>
          <SheetList sheets={seen} current={current.id} onChoose={setChosen} />
          <SheetView key={current.id} sheet={current} isOld={isDrawing} />
        </>
      )}
    </div>
  );
}

/** The way to the file from here: what is seen is what is printed. */
function MakePdf(): ReactNode {
  const { site, schemeId } = useSite();
  const isBusy = useHandover((hand) => hand.making !== null);
  return (
    <>
      <button
        type="button"
        className="button"
        disabled={isBusy}
        onClick={() => void saveFiles(site, schemeId, ["sheets"], {})}
      >
        {isBusy ? says.makingPdf : says.makePdf}
      </button>
      {isBusy && (
        <button type="button" className="button" onClick={cancelMaking}>
          {words.handing.files.cancel}
        </button>
      )}
    </>
  );
}

interface SheetListProps {
  sheets: readonly SheetSeen[];
  current: string;
  onChoose: (id: string) => void;
}

/** Every sheet with a tick for the printed ones; a press on a name shows it. */
function SheetList({ sheets, current, onChoose }: SheetListProps): ReactNode {
  const edit = useEdit();
  const chosen = useSite().site.sheets;
  const of = sheets.filter(({ number }) => number !== null).length;
  return (
    <nav aria-label={says.list} className="sheet-list">
      <ol>
        {sheets.map(({ id, of: subjects, title, number, always }) => (
          <li key={id}>
            <label className="sheet-tick">
              <input
                type="checkbox"
                aria-label={`${says.print}: ${title}`}
                checked={!isLeftOut(chosen, { id, of: subjects }) || always}
                disabled={always}
                onChange={({ target }) =>
                  edit(says.printStep(title, target.checked), (now) =>
                    printSheet(now, { id, of: subjects }, target.checked),
                  )
                }
              />
            </label>
            <button
              type="button"
              aria-current={id === current ? "page" : undefined}
              onClick={() => onChoose(id)}
            >
              {number === null ? says.leftOut(title) : says.numbered(number, of, title)}
            </button>
          </li>
        ))}
      </ol>
      <p className="says">{says.always}</p>
    </nav>
  );
}
