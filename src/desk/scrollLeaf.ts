import { useEffect, type RefObject } from "react";

/** Breathing space over what is brought into sight, px. */
const SPARE = 6;

/**
 * Brings an element of the open leaf to the top of that leaf, under its head. Scrolls the leaf and
 * nothing else: the browser's own way moves the page behind it as well, which cannot be scrolled
 * back. Does nothing for an element that is not in a leaf.
 */
export function scrollLeafTo(element: Element | null): void {
  const leaf = element?.closest(".leaf");
  if (!element || !leaf) return;
  const head = leaf.querySelector(".leaf-head")?.clientHeight ?? 0;
  const below = element.getBoundingClientRect().top - leaf.getBoundingClientRect().top;
  leaf.scrollTo({ top: leaf.scrollTop + below - head - SPARE });
}

/** Part of a leaf's height below which what comes up may lie under the fold. */
const UNDER_THE_FOLD = 0.6;

/** Brings an element into sight when it comes up, where it is not in sight already. */
export function useIntoSight(ref: RefObject<Element | null>): void {
  useEffect(() => {
    const leaf = ref.current?.closest(".leaf");
    if (!ref.current || !leaf) return;
    const below = ref.current.getBoundingClientRect().top - leaf.getBoundingClientRect().top;
    if (below > leaf.clientHeight * UNDER_THE_FOLD || below < 0) scrollLeafTo(ref.current);
  }, [ref]);
}
