import { useCallback, useEffect, useLayoutEffect, useRef } from "react";
import { typesElsewhere } from "./keys.js";
import { pickedPlaces } from "./pickedPlaces.js";
import type { Selection, SiteSceneProps } from "./props.js";
import type { SceneContents } from "./sceneTargets.js";
import type { SceneView } from "./sceneView.js";

/**
 * Turns the view to what is picked: by the returned function, by the key F, and when the owner asks
 * for it. With nothing picked F shows the whole lot.
 */
export function useFraming(
  view: SceneView,
  contents: SceneContents,
  props: Pick<SiteSceneProps, "selected" | "frameAsked">,
): (selection?: Selection) => void {
  const latest = useRef({ contents, selected: props.selected });
  useLayoutEffect(() => {
    latest.current = { contents, selected: props.selected };
  });
  const frameIt = useCallback(
    (selection?: Selection) => {
      const it = selection ?? latest.current.selected;
      if (it === null) view.fitLot();
      else view.frame(pickedPlaces(latest.current.contents, it));
    },
    [view],
  );
  const asked = useRef(props.frameAsked);
  useEffect(() => {
    if (props.frameAsked > asked.current) frameIt();
    asked.current = props.frameAsked;
  }, [props.frameAsked, frameIt]);
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      const plain = !event.ctrlKey && !event.metaKey && !event.altKey;
      if (event.key.toLowerCase() !== "f" || !plain || event.defaultPrevented) return;
      if (typesElsewhere(event.target)) return;
      event.preventDefault();
      frameIt();
    };
    document.addEventListener("keydown", onKey);
    return () => document.removeEventListener("keydown", onKey);
  }, [frameIt]);
  return frameIt;
}
