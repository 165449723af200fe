import { useEffect, useLayoutEffect, useRef } from "react";
import type { RefObject } from "react";
import type { Leaf } from "../store/index.js";

/**
 * Keeps how far each leaf was scrolled, and goes back there when it is opened again. What brings
 * something of a leaf into sight does so in an effect, after this.
 */
export function useScrollPlace(leaf: Leaf, holder: RefObject<HTMLElement | null>): void {
  const places = useRef(new Map<Leaf, number>());
  const open = useRef(leaf);
  useEffect(() => {
    const element = holder.current;
    if (element === null) return undefined;
    const note = (): void => void places.current.set(open.current, element.scrollTop);
    element.addEventListener("scroll", note, { passive: true });
    return () => element.removeEventListener("scroll", note);
  }, [holder]);
  useLayoutEffect(() => {
    open.current = leaf;
    holder.current?.scrollTo({ top: places.current.get(leaf) ?? 0 });
  }, [leaf, holder]);
}
