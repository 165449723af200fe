import type { ReactNode } from "react";
import { writeSite } from "../../site/index.js";
import { openShelf, useDesk } from "../../store/index.js";
import { words } from "../../words/index.js";
import { download, saveSite } from "../files.js";

/** Trouble with keeping the site, with the ways out of it. */
function Failed(): ReactNode {
  const keeping = useDesk((desk) => desk.keeping);
  if (keeping.state !== "failed") return null;
  return (
    <div className="notice wrong keeping-notice" role="alert">
      <p>{keeping.text}</p>
      <div className="tools">
        <button type="button" className="button main" onClick={saveSite}>
          {words.shelf.saveFile}
        </button>
        <button type="button" className="button" onClick={() => void openShelf()}>
          {words.shelf.menu}
        </button>
      </div>
    </div>
  );
}

/** Sites that have left the desk and could not be kept: they wait here to be saved. */
function SetAside(): ReactNode {
  const aside = useDesk((desk) => desk.setAside);
  const drop = useDesk((desk) => desk.dropSetAside);
  return aside.map((site, index) => (
    <div key={index} className="notice wrong keeping-notice" role="alert">
      <p>{words.shelf.setAside(site.name)}</p>
      <div className="tools">
        <button
          type="button"
          className="button main"
          onClick={() => {
            download(words.shelf.asideFile, writeSite(site), "application/json");
            drop(site);
          }}
        >
          {words.shelf.saveFile}
        </button>
        <button type="button" className="button" onClick={() => drop(site)}>
          {words.shelf.letGo}
        </button>
      </div>
    </div>
  ));
}

/** Says that another tab has the open site, with what can be done here. */
function OtherTab(): ReactNode {
  const turn = useDesk((desk) => desk.turn);
  const unsaved = useDesk((desk) => desk.unsaved);
  const workHere = useDesk((desk) => desk.workHere);
  const workOnCopy = useDesk((desk) => desk.workOnCopy);
  if (turn === "here") return null;
  const { elsewhereTitle, elsewhereText, movedTitle, movedText } = words.shelf;
  const { unsavedTitle, unsavedText } = words.shelf;
  const [title, text] = unsaved
    ? [unsavedTitle, unsavedText]
    : turn === "moved"
      ? [movedTitle, movedText]
      : [elsewhereTitle, elsewhereText];
  return (
    <div
      className={`notice keeping-notice ${unsaved ? "wrong" : "other-tab"}`}
      role="alert"
      data-turn={turn}
    >
      <p>
        <strong>{title}</strong>
      </p>
      <p>{text}</p>
      <div className="tools">
        {!unsaved && (
          <button type="button" className="button main" onClick={() => void workHere()}>
            {words.shelf.workHere}
          </button>
        )}
        <button
          type="button"
          className={unsaved ? "button main" : "button"}
          onClick={() => void workOnCopy()}
        >
          {words.shelf.workOnCopy}
        </button>
        {unsaved && (
          <button type="button" className="button" onClick={saveSite}>
            {words.shelf.saveFile}
          </button>
        )}
      </div>
    </div>
  );
}

/** How the open site is kept, where there is something to say of it. */
export function KeepingNotices(): ReactNode {
  return (
    <>
      <OtherTab />
      <Failed />
      <SetAside />
    </>
  );
}
