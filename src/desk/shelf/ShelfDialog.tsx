import { useState } from "react";
import type { ReactNode } from "react";
import { Dialog, Modal, ModalOverlay } from "react-aria-components";
import { DialogHead } from "../DialogHead.js";
import {
  bringBack,
  closeShelf,
  fileOnShelf,
  useDesk,
  useShelf,
  zipOfShelf,
} from "../../store/index.js";
import type { ShelfSite } from "../../store/index.js";
import { words } from "../../words/index.js";
import { askForSite, download, downloadBlob } from "../files.js";
import { printBytes } from "./relative.js";
import { ShelfRow } from "./ShelfRow.js";

/** More sites than this get a box to search in. */
const MANY = 8;

async function saveOne(site: ShelfSite): Promise<void> {
  try {
    const file = await fileOnShelf(site.id);
    if (file === null) useShelf.setState({ note: words.shelf.gone });
    else download(file.name, file.text, "application/json");
  } catch (fault) {
    const why = fault instanceof Error ? fault.message : String(fault);
    useShelf.setState({ note: words.shelf.zipFailed(site.name, why) });
  }
}

async function saveAll(): Promise<void> {
  const made = await zipOfShelf();
  if (made !== null) downloadBlob(made.name, made.zip);
}

/** What just happened, and the way back from a deletion. */
function Note(): ReactNode {
  const note = useShelf((shelf) => shelf.note);
  const removed = useShelf((shelf) => shelf.removed);
  return (
    <div role="status" className={note === "" && removed === null ? "unseen" : "shelf-note"}>
      {note !== "" && <p>{note}</p>}
      {removed !== null && (
        <>
          <p>{words.shelf.deleted(removed.name)}</p>
          <button type="button" className="button" autoFocus onClick={() => void bringBack()}>
            {words.shelf.undoDelete}
          </button>
        </>
      )}
    </div>
  );
}

function EmptyShelf(): ReactNode {
  return (
    <div className="shelf-empty">
      <h3>{words.shelf.none}</h3>
      <p>{words.shelf.noneWhy}</p>
    </div>
  );
}

/** The list, and above it a box to search in when it is long. */
function SiteList({ sites }: { sites: readonly ShelfSite[] }): ReactNode {
  const siteId = useDesk((desk) => desk.siteId);
  const [wanted, setWanted] = useState("");
  // The clock of the moment in which the list was opened; it is looked at for seconds.
  const [now] = useState(() => Date.now());
  const isLong = sites.length > MANY;
  const needle = isLong ? wanted.trim().toLowerCase() : "";
  const shown = sites.filter((site) => site.name.toLowerCase().includes(needle));
  return (
    <>
      {isLong && (
        <label className="shelf-search">
          {words.shelf.search}
          <input
            type="search"
            className="shelf-input"
            value={wanted}
            onChange={(event) => setWanted(event.currentTarget.value)}
          />
        </label>
      )}
      {shown.length === 0 && <p role="status">{words.shelf.noMatch(wanted.trim())}</p>}
      <ul className="shelf-list">
        {shown.map((site) => (
          <ShelfRow
            key={site.id}
            site={site}
            isOnDesk={site.id === siteId}
            now={Math.max(now, site.changed)}
            onSave={(one) => void saveOne(one)}
          />
        ))}
      </ul>
    </>
  );
}

function ShelfBody(): ReactNode {
  const sites = useShelf((shelf) => shelf.sites);
  const trouble = useShelf((shelf) => shelf.trouble);
  const room = useShelf((shelf) => shelf.room);
  if (sites === null) return <p role="status">{words.shelf.loading}</p>;
  if (trouble !== null) return <p role="alert">{trouble}</p>;
  return (
    <>
      {sites.length === 0 ? <EmptyShelf /> : <SiteList sites={sites} />}
      <p className="soft shelf-about">
        {words.shelf.about}
        {room !== null && ` ${words.shelf.room(printBytes(room.used), printBytes(room.whole))}`}
      </p>
    </>
  );
}

/** Every site that this browser keeps: open, rename, copy, save, delete. */
export function ShelfDialog(): ReactNode {
  const isOpen = useShelf((shelf) => shelf.isOpen);
  const isEmpty = useShelf((shelf) => (shelf.sites ?? []).length === 0);
  return (
    <ModalOverlay
      className="overlay shelf-overlay"
      isDismissable
      isOpen={isOpen}
      onOpenChange={(open) => !open && void closeShelf()}
    >
      <Modal className="modal shelf-modal">
        <Dialog className="dialog shelf">
          <DialogHead title={words.shelf.title} close={words.shelf.close} />
          <div className="dialog-body">
            <Note />
            <ShelfBody />
          </div>
          <div className="shelf-foot tools">
            <button
              type="button"
              className="button"
              disabled={isEmpty}
              onClick={() => void saveAll()}
            >
              {words.shelf.saveAll}
            </button>
            <button type="button" className="button" onClick={askForSite}>
              {words.shelf.openZip}
            </button>
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
