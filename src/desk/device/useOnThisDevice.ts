import { useEffect } from "react";
import { followNetwork, keepOnDevice, useOnDevice } from "../../offline/index.js";
import { useDesk } from "../../store/index.js";
import { words } from "../../words/index.js";
import { openSiteFile } from "../files.js";
import { fetchTheRest, SCENE_PART } from "../late/parts.js";

/** Site files with which the system opens Bankyard, once it is installed there. */
interface LaunchQueue {
  setConsumer: (use: (launch: { files: readonly FileSystemFileHandle[] }) => void) => void;
}

declare global {
  interface Window {
    /** Where the browser can be the app that a file is opened with. */
    launchQueue?: LaunchQueue;
  }
}

let begun = false;

/**
 * Once the page has painted: what it shows first, then the rest of it, then all of it kept on this
 * device. The development server's files change under a service worker, so there it is left out.
 */
async function fetchAndKeep(): Promise<void> {
  await SCENE_PART.fetch();
  await fetchTheRest();
  if (import.meta.env.PROD) await keepOnDevice();
}

/** Brings the page onto this device, follows the network, and opens files handed to the app. */
export function useOnThisDevice(): void {
  useEffect(() => {
    if (!begun) {
      begun = true;
      void fetchAndKeep();
      window.launchQueue?.setConsumer(({ files: [file] }) => {
        void file?.getFile().then(openSiteFile);
      });
    }
    return followNetwork();
  }, []);
  const isFresh = useOnDevice((device) => device.kept === "fresh");
  const isQuiet = useDesk((desk) => desk.notice === "");
  useEffect(() => {
    // What the person just did has its own line first.
    if (!isFresh || !isQuiet) return;
    useOnDevice.setState({ kept: "there" });
    useDesk.getState().tell(words.offline.ready);
  }, [isFresh, isQuiet]);
}
