import { useDesk } from "../../store/index.js";
import { words } from "../../words/index.js";

/** Whether the page could be loaded anew now. */
export async function serverAnswers(): Promise<boolean> {
  try {
    return (await fetch(document.baseURI, { method: "HEAD", cache: "no-store" })).ok;
  } catch {
    return false;
  }
}

/** Keeps the site; false, and said, when this browser cannot. */
export async function keptForReload(): Promise<boolean> {
  const desk = useDesk.getState();
  await desk.keepNow();
  if (useDesk.getState().keeping.state !== "failed") return true;
  desk.tell(words.offline.notKept);
  return false;
}

/** Loads the page anew once the site is kept. */
export async function loadAnew(): Promise<void> {
  if (await keptForReload()) location.reload();
}
