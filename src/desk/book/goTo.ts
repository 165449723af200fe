import { useDesk } from "../../store/index.js";
import type { Leaf } from "../../store/index.js";
import { scrollLeafTo } from "../scrollLeaf.js";
import type { FindingPlace } from "./placeOfFinding.js";
import { usePanels } from "./panels.js";

/** ms that a leaf is given to be fetched and to show what was asked for. */
const MOST_WAIT_MS = 4000;
/** Frames to wait first: a dialog that closes gives the focus back in these. */
const LEAST_FRAMES = 3;
/** ms that the place which was gone to is marked. */
const MARKED_MS = 1800;

export type Find = (leaf: Element) => Element | null;

/** The first of the ways to find a place that leads to one. */
export const firstOf =
  (...ways: readonly Find[]): Find =>
  (leaf) => {
    for (const way of ways) {
      const found = way(leaf);
      if (found !== null) return found;
    }
    return null;
  };

/** Finds by a selector. */
export const bySelector =
  (selector: string): Find =>
  (leaf) =>
    leaf.querySelector(selector);

/** Finds the section whose heading begins with these words. */
export const byHeading =
  (words: string): Find =>
  (leaf) =>
    [...leaf.querySelectorAll("h2")].find((one) => one.textContent.trim().startsWith(words)) ??
    null;

/** Finds the open line or table row whose first words are these. */
export const byRow =
  (words: string): Find =>
  (leaf) =>
    [...leaf.querySelectorAll("summary .text, th[scope=row], .row .text, label")].find((one) =>
      one.textContent.trim().startsWith(words),
    ) ?? null;

function openAround(element: Element): void {
  for (let at: Element | null = element; at !== null; at = at.parentElement) {
    if (at instanceof HTMLDetailsElement) at.open = true;
  }
}

function arriveAt(element: HTMLElement, takeFocus: boolean): void {
  openAround(element);
  for (const one of element.querySelectorAll<HTMLDetailsElement>("[data-figure-working]"))
    one.open = true;
  scrollLeafTo(element);
  element.setAttribute("data-sought", "");
  setTimeout(() => element.removeAttribute("data-sought"), MARKED_MS);
  if (!takeFocus) return;
  if (element.tabIndex < 0) element.tabIndex = -1;
  element.focus({ preventScroll: true });
}

let asked = 0;

/**
 * Opens a leaf and brings a place in it into sight, as soon as the leaf shows it; when it never
 * does, the leaf is open all the same. With `takeFocus` the keyboard goes on from there.
 */
export function goToLeaf(leaf: Leaf, find: Find | null, takeFocus: boolean): void {
  useDesk.getState().show({ leaf });
  usePanels.setState(({ leafAsked }) => ({ leafAsked: leafAsked + 1 }));
  asked += 1;
  const mine = asked;
  const began = performance.now();
  let frame = 0;
  const look = (): void => {
    frame += 1;
    // A later wish takes the place of this one.
    if (mine !== asked) return;
    const holder = document.querySelector(".leaf");
    const wanted = holder === null || find === null ? holder : find(holder);
    if (frame >= LEAST_FRAMES && wanted instanceof HTMLElement) arriveAt(wanted, takeFocus);
    else if (performance.now() - began < MOST_WAIT_MS) requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}

const quoted = (text: string): string => `"${CSS.escape(text)}"`;

/** The leaf on which each of the strip's figures stands with its working. */
const HOME_OF_FIGURE = {
  cut: "dig",
  rock: "dig",
  spoil: "dig",
  days: "machines",
  cost: "cost",
} as const satisfies Record<string, Leaf>;

export type StripFigure = keyof typeof HOME_OF_FIGURE;

/** Goes from the strip to where a figure stands, and opens how it was reached. */
export function goToFigure(figure: StripFigure): void {
  const leaf = HOME_OF_FIGURE[figure];
  // While a work is picked the Dig leaf shows that work's figures, not the whole dig's.
  if (leaf === "dig") useDesk.getState().select(null);
  goToLeaf(leaf, bySelector(`[data-figure-home=${figure}]`), true);
}

/** Goes to where a finding is at home: picks it, turns the view to it, opens its fields. */
export function goToFinding(
  place: FindingPlace,
  finding: { code: string; where: string },
  takeFocus: boolean,
): void {
  const { leaf, picked, pipe, limit, name } = place;
  if (picked !== null) useDesk.getState().flyTo(picked, leaf);
  const card = bySelector(
    `[data-finding=${quoted(finding.code)}][data-where=${quoted(finding.where)}]`,
  );
  const ways: Find[] = [];
  if (pipe !== null) ways.push(bySelector(`[data-pipe=${quoted(pipe)}]`));
  if (leaf === "dig" && picked !== null) ways.push(bySelector(".work-heading"));
  if (picked?.kind === "probe" || picked?.kind === "point") {
    ways.push(bySelector(".row[aria-pressed=true]"));
  }
  if (limit !== null && name !== null) ways.push(byRow(name), byHeading("Limits"));
  goToLeaf(leaf, firstOf(...ways, card), takeFocus);
}
