import { useMemo, useState } from "react";
import type { DragEvent, ReactNode } from "react";
import { examples, useDesk } from "../store/index.js";
import { words } from "../words/index.js";
import { BookPanels } from "./book/BookPanels.js";
import { askForSite } from "./files.js";
import { openDropped } from "./SiteMenu.js";
import { useOnThisDevice } from "./device/useOnThisDevice.js";
import { Header } from "./Header.js";
import { SectionPanel, StartSite } from "./late/overPage.js";
import { LeafHolder } from "./LeafHolder.js";
import { Notices } from "./Notices.js";
import { Report } from "./handover/Report.js";
import { ScenePlace } from "./ScenePlace.js";
import { ShelfDialog } from "./shelf/ShelfDialog.js";
import { Strip } from "./Strip.js";
import { useKeys } from "./useKeys.js";
import { OpenSiteContext } from "./useSite.js";
import type { OpenSite } from "./useSite.js";
import { useTheme } from "./useTheme.js";

/** Handlers that open a file dropped anywhere on the page, and whether one hangs over it. */
function useDrop(): { over: boolean; handlers: object } {
  const [over, setOver] = useState(false);
  const carriesFile = (event: DragEvent): boolean => event.dataTransfer.types.includes("Files");
  return {
    over,
    handlers: {
      onDragOver(event: DragEvent) {
        if (!carriesFile(event)) return;
        event.preventDefault();
        setOver(true);
      },
      onDragLeave(event: DragEvent) {
        if (event.relatedTarget === null) setOver(false);
      },
      onDrop(event: DragEvent) {
        if (!carriesFile(event)) return;
        event.preventDefault();
        setOver(false);
        openDropped(event.dataTransfer.files);
      },
    },
  };
}

function Waiting(): ReactNode {
  const status = useDesk((desk) => desk.status);
  const show = useDesk((desk) => desk.show);
  return (
    <main className="waiting">
      {status === "opening" ? (
        <p role="status">{words.desk.openingTheBook}</p>
      ) : (
        <>
          <h1>{words.book.empty.cleanTitle}</h1>
          <p>{words.book.empty.clean}</p>
          <div className="empty-ways">
            <button type="button" className="button main" onClick={() => show({ starting: true })}>
              {words.book.empty.start}
            </button>
            <button type="button" className="button" onClick={askForSite}>
              {words.book.empty.open}
            </button>
            {examples.map((example) => (
              <button
                key={example.id}
                type="button"
                className="button"
                onClick={() => void useDesk.getState().openExample(example.id)}
              >
                {words.book.empty.example(example.title)}
              </button>
            ))}
          </div>
        </>
      )}
    </main>
  );
}

/** The desk: header, scene, strip and leaf of the open site; or an empty page that says what to do. */
export function Desk(): ReactNode {
  const site = useDesk((desk) => desk.history?.present ?? null);
  const schemeId = useDesk((desk) => desk.schemeId);
  const estimate = useDesk((desk) => desk.estimate);
  const starting = useDesk((desk) => desk.starting);
  const theme = useTheme();
  const { over, handlers } = useDrop();
  useKeys();
  useOnThisDevice();
  const open = useMemo<OpenSite | null>(
    () => (site === null ? null : { site, schemeId, estimate }),
    [site, schemeId, estimate],
  );
  return (
    <OpenSiteContext value={open}>
      <div className="desk" {...handlers}>
        <Header />
        {open === null ? (
          <Waiting />
        ) : (
          <>
            <ScenePlace theme={theme} />
            {estimate !== null && <SectionPanel />}
            <LeafHolder />
            <Strip />
          </>
        )}
        {over && <div className="drop-here">{words.desk.dropSiteFileOpen}</div>}
      </div>
      <Notices />
      <BookPanels />
      <ShelfDialog />
      {starting && <StartSite />}
      {open !== null && <Report />}
    </OpenSiteContext>
  );
}
