import { useCallback, useEffect, useRef } from "react";
import type { TakePicture } from "../../scene/index.js";
import { keepPictureOf, useDesk, useShelf } from "../../store/index.js";

/** How long edits pause before the scene is taken, ms. */
const PAUSE = 900;

async function keepOne(take: TakePicture | null): Promise<void> {
  const { siteId, turn, keeping } = useDesk.getState();
  if (take === null || turn !== "here" || keeping.state !== "kept") return;
  const picture = await take();
  // Another site may have come meanwhile.
  if (picture === null || useDesk.getState().siteId !== siteId) return;
  await keepPictureOf(siteId, picture);
}

function keepTold(take: TakePicture | null): void {
  keepOne(take).catch(useDesk.getState().keepFailed);
}

/**
 * Takes a small picture of the scene for the list of sites when edits have paused and the site is
 * kept; of a large survey only when the list is opened, since reading a picture halts the page until
 * all of it is drawn (up to 2 s, measured with 100,000 points and drawing by software). Gives what the scene is to be told, so that it hands over the way to take it. It follows the
 * store by itself: that the site has been kept is no reason to draw the scene.
 */
export function useSmallPicture(): (take: TakePicture | null) => void {
  const take = useRef<TakePicture | null>(null);
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const stop = useDesk.subscribe((now, before) => {
      const isSame =
        now.history === before.history &&
        now.siteId === before.siteId &&
        now.schemeId === before.schemeId &&
        now.keeping.state === before.keeping.state;
      if (isSame) return;
      clearTimeout(timer);
      if (now.drawn !== null) return;
      timer = setTimeout(() => keepTold(take.current), PAUSE);
    });
    const stopShelf = useShelf.subscribe((now, before) => {
      const opens = now.isOpen && !before.isOpen;
      if (opens && useDesk.getState().drawn !== null) keepTold(take.current);
    });
    return () => {
      stop();
      stopShelf();
      clearTimeout(timer);
    };
  }, []);
  return useCallback((ready) => {
    take.current = ready;
  }, []);
}
