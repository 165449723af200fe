import { useEffect } from "react";
import type { ReactNode } from "react";
import { Button, Dialog, Modal, ModalOverlay } from "react-aria-components";
import { DialogHead } from "./DialogHead.js";
import { words } from "../words/index.js";
import { NewerNotice } from "./device/NewerNotice.js";
import { download } from "./files.js";
import { KeepingNotices } from "./shelf/Keeping.js";
import { jobInWords, useDesk } from "../store/index.js";

const SHOWN_MS = 5000;
/** A longer notice stands longer, ms a letter: slow reading (our choice, no source). */
const LETTER_MS = 90;
const MOST_SHOWN = 12;

function Unopened(): ReactNode {
  const unopened = useDesk((desk) => desk.unopened);
  const dismiss = useDesk((desk) => desk.dismissUnopened);
  return (
    <ModalOverlay
      className="overlay"
      isDismissable
      isOpen={unopened !== null}
      onOpenChange={(open) => !open && dismiss()}
    >
      <Modal className="modal">
        <Dialog className="dialog" role="alertdialog">
          <DialogHead title={words.desk.fileWasNotOpened} close={words.desk.close} />
          <div className="dialog-body">
            <p>
              <strong>{unopened?.file}</strong> {words.desk.cannotUsedSiteDesk}
            </p>
            {unopened?.text !== undefined && (
              <Button
                className="button"
                onPress={() => download("kept.site.json", unopened.text ?? "", "application/json")}
              >
                {words.desk.saveMend}
              </Button>
            )}
            <ol className="problem-list">
              {(unopened?.problems ?? []).slice(0, MOST_SHOWN).map((problem, index) => (
                <li key={`${problem.path} ${index}`}>
                  <code>{problem.path === "" ? words.desk.theFile : problem.path}</code>
                  <span>
                    {problem.text}; {problem.mend}
                  </span>
                </li>
              ))}
            </ol>
            {(unopened?.problems.length ?? 0) > MOST_SHOWN && (
              <p className="soft">
                {words.desk.moreKind((unopened?.problems.length ?? 0) - MOST_SHOWN)}
              </p>
            )}
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

/** How far the ground of a large survey is, with the way out of waiting for it. */
function GroundWaiting(): ReactNode {
  const waiting = useDesk((desk) => desk.waiting);
  const starting = useDesk((desk) => desk.starting);
  const stop = useDesk((desk) => desk.stopWaiting);
  // While a new site is written, its own leaf shows how far it is.
  if (waiting === null || starting) return null;
  return (
    <div className="notice ground-waiting">
      <label>
        {jobInWords(waiting)}
        <progress value={waiting.share} max={1} />
      </label>
      <button type="button" className="button" onClick={stop}>
        {words.desk.cancel}
      </button>
    </div>
  );
}

/** What just happened, in one line that goes away; trouble with keeping the site, which stays. */
export function Notices(): ReactNode {
  const notice = useDesk((desk) => desk.notice);
  const tell = useDesk((desk) => desk.tell);
  useEffect(() => {
    if (notice === "") return undefined;
    const timer = setTimeout(() => tell(""), Math.max(SHOWN_MS, notice.length * LETTER_MS));
    return () => clearTimeout(timer);
  }, [notice, tell]);
  return (
    <>
      <div className="notices">
        <KeepingNotices />
        <NewerNotice />
        <GroundWaiting />
        <p className={notice === "" ? "unseen" : "notice"} role="status">
          {notice}
        </p>
      </div>
      <Unopened />
    </>
  );
}
