/** Every key of the desk in one table: what listens to keys and the sheet of keys both read it. */
import { useDesk } from "../../store/index.js";
import type { PlanPoint } from "../../site/index.js";
import { FOOT } from "../../units/index.js";
import { words } from "../../words/index.js";
import { saveSite } from "../files.js";
import { pickAllByKey, raiseByKey } from "../pickedKeys.js";
import { openPanel } from "./panels.js";
import { isApple } from "./screen.js";

const says = words.book.keys;

/** One way to press: a key as `KeyboardEvent.key` names it, letters in lower case. */
export interface Press {
  key: string;
  /** Ctrl, or ⌘ where there is one. */
  mod?: true;
  shift?: true;
}

export type KeyGroup = keyof typeof says.groups;

export interface KeyRow {
  id: string;
  group: KeyGroup;
  says: string;
  /** Ways to press it, or keys that go together, such as the four arrows. */
  presses: readonly Press[];
  /**
   * `anywhere`; `not-typing`: not while a field is being typed in; `free`: only when the keys belong
   * to no field, list, menu or dialog; `own`: whatever has the focus listens for it itself.
   */
  where: "anywhere" | "not-typing" | "free" | "own";
  /** True when there was something to do; else the key is left to the browser. */
  run?: (event: KeyboardEvent) => boolean;
}

const ARROWS: Readonly<Record<string, PlanPoint>> = {
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
};

const arrows = (shift?: true): Press[] =>
  ["ArrowLeft", "ArrowUp", "ArrowRight", "ArrowDown"].map((key) =>
    shift === undefined ? { key } : { key, shift },
  );

/** m that an arrow moves what is picked. */
const smallStep = (): number =>
  useDesk.getState().history?.present.units === "us" ? 0.5 * FOOT : 0.1;

/** Something is picked and no drag is under way. */
function canChangePicked(): boolean {
  const { selected, history } = useDesk.getState();
  return selected !== null && history !== null && history.mark === null;
}

function nudge(event: KeyboardEvent, step: number): boolean {
  const arrow = ARROWS[event.key];
  if (arrow === undefined || !canChangePicked()) return false;
  useDesk.getState().nudge([arrow[0] * step, arrow[1] * step]);
  return true;
}

function letGo(): boolean {
  const desk = useDesk.getState();
  if (desk.placing !== null) desk.stopPlacing();
  else if (desk.section !== null && desk.section.length < 2) desk.stopSection();
  else if (desk.selected !== null || desk.several) {
    desk.setSeveral(false);
    desk.select(null);
  } else if (desk.section !== null) desk.stopSection();
  else return false;
  return true;
}

function remove(): boolean {
  if (!canChangePicked()) return false;
  useDesk.getState().removeSelected();
  return true;
}

/** Does it, and says that there was something to do. */
const always =
  (act: () => void): (() => boolean) =>
  () => {
    act();
    return true;
  };

const pageKeys = (): KeyRow[] => [
  {
    ...{ id: "search", group: "page", says: says.search, where: "anywhere" },
    presses: [{ key: "k", mod: true }],
    run: () => {
      if (useDesk.getState().starting) return false;
      openPanel("search");
      return true;
    },
  },
  {
    ...{ id: "save", group: "page", says: says.save, where: "anywhere" },
    presses: [{ key: "s", mod: true }],
    run: always(saveSite),
  },
  {
    ...{ id: "undo", group: "page", says: says.undo, where: "not-typing" },
    presses: [{ key: "z", mod: true }],
    run: always(() => useDesk.getState().undo()),
  },
  {
    ...{ id: "redo", group: "page", says: says.redo, where: "not-typing" },
    presses: [
      { key: "y", mod: true },
      { key: "z", mod: true, shift: true },
    ],
    run: always(() => useDesk.getState().redo()),
  },
  {
    ...{ id: "keys", group: "page", says: says.keys, where: "free" },
    presses: [{ key: "?" }],
    run: always(() => openPanel("keys")),
  },
];

const pickedKeys = (steps: { small: string; far: string }): KeyRow[] => [
  {
    ...{ id: "let-go", group: "picked", says: says.letGo, where: "free" },
    presses: [{ key: "Escape" }],
    run: letGo,
  },
  {
    ...{ id: "remove", group: "picked", says: says.remove, where: "free" },
    presses: [{ key: "Delete" }, { key: "Backspace" }],
    run: remove,
  },
  {
    ...{ id: "nudge", group: "picked", says: says.nudge(steps.small), where: "free" },
    presses: arrows(),
    run: (event) => nudge(event, smallStep()),
  },
  {
    ...{ id: "nudge-far", group: "picked", says: says.nudgeFar(steps.far), where: "free" },
    presses: arrows(true),
    run: (event) => nudge(event, 10 * smallStep()),
  },
  {
    ...{ id: "raise", group: "picked", says: words.picked.keys.raise, where: "free" },
    presses: [{ key: "PageUp" }, { key: "PageDown" }],
    run: (event) => raiseByKey(event, 1),
  },
  {
    ...{ id: "raise-far", group: "picked", says: words.picked.keys.raiseFar, where: "free" },
    presses: [
      { key: "PageUp", shift: true },
      { key: "PageDown", shift: true },
    ],
    run: (event) => raiseByKey(event, 10),
  },
  {
    ...{ id: "pick-all", group: "picked", says: words.picked.keys.all, where: "free" },
    presses: [{ key: "a", mod: true }],
    run: pickAllByKey,
  },
];

/** Keys that the scene, a field or a slider listens for while it has the focus. */
const ownKeys = (): KeyRow[] => {
  const row = (id: string, group: KeyGroup, text: string, ...presses: Press[]): KeyRow => ({
    ...{ id, group, says: text, presses },
    where: "own",
  });
  return [
    row("place-move", "placing", says.placeMove, ...arrows()),
    row("place-corner", "placing", says.placeCorner, { key: " " }),
    row("place-back", "placing", says.placeBack, { key: "Backspace" }),
    row("place-done", "placing", says.placeDone, { key: "Enter" }),
    row("handle", "placing", says.handle, ...arrows()),
    row("corner-add", "placing", words.drawing.keys.add, { key: "Enter" }),
    row("corner-remove", "placing", words.drawing.keys.remove, { key: "Delete" }),
    row("free", "placing", says.free, { key: "Alt" }),
    row("commit", "fields", says.commit, { key: "Enter" }),
    row("put-back", "fields", says.putBack, { key: "Escape" }),
    row("space", "fields", says.space, { key: " " }, { key: "Enter" }),
    row("stage", "fields", says.stage, { key: "ArrowLeft" }, { key: "ArrowRight" }),
  ];
};

/** The whole table; `steps` are the printed lengths that an arrow moves what is picked by. */
export const keyTable = (steps: { small: string; far: string }): KeyRow[] => [
  ...pageKeys(),
  ...pickedKeys(steps),
  ...ownKeys(),
];

const LISTENED: readonly KeyRow[] = keyTable({ small: "", far: "" });

/** True when an event is this press. Shift tells letters and arrows apart, not signs such as "?". */
export function isPress(
  { key, mod, shift }: Press,
  event: Pick<KeyboardEvent, "key" | "ctrlKey" | "metaKey" | "altKey" | "shiftKey">,
): boolean {
  const pressed = event.key.length === 1 ? event.key.toLowerCase() : event.key;
  if (pressed !== key) return false;
  // Escape lets go whatever else is held.
  if (key === "Escape") return true;
  const isSign = key.length === 1 && !/[a-z]/.test(key);
  const isHeld = event.ctrlKey || event.metaKey;
  if (isHeld !== (mod === true) || event.altKey) return false;
  // Only arrows and letters mean another thing with Shift.
  const tells = !isSign && key !== "Delete" && key !== "Backspace";
  return !tells || event.shiftKey === (shift === true);
}

/** Whether the keys belong to what has the focus: a field, a list, a menu, a dialog. */
function typesElsewhere(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  return (
    target.closest(
      "input, textarea, select, [role=dialog], [role=menu], [role=slider], summary",
    ) !== null
  );
}

/** In a field with typing under way, Ctrl+Z is the field's own. */
function hasTyping(target: EventTarget | null): boolean {
  if (target instanceof HTMLTextAreaElement) return true;
  return target instanceof HTMLInputElement && target.dataset["typing"] !== undefined;
}

function listensHere({ where }: KeyRow, target: EventTarget | null): boolean {
  if (where === "anywhere") return true;
  if (where === "not-typing") return !hasTyping(target);
  return where === "free" && !typesElsewhere(target);
}

/** Does what a key is for. True when it was one of the table and there was something to do. */
export function takeKey(event: KeyboardEvent): boolean {
  return LISTENED.some(
    (row) =>
      row.run !== undefined &&
      row.presses.some((press) => isPress(press, event)) &&
      listensHere(row, event.target) &&
      row.run(event),
  );
}

const KEY_WORDS: Readonly<Record<string, string>> = {
  ArrowLeft: "←",
  ArrowUp: "↑",
  ArrowRight: "→",
  ArrowDown: "↓",
  Escape: "Esc",
  " ": "Space",
  Delete: "Del",
  PageUp: "PgUp",
  PageDown: "PgDn",
};
const APPLE_WORDS: Readonly<Record<string, string>> = { Backspace: "⌫", Alt: "⌥", Enter: "↵" };

/** A press as it is printed on this machine's keys, key by key: ["Ctrl", "K"]. */
export function printPress({ key, mod, shift }: Press, apple: boolean): string[] {
  const plain = KEY_WORDS[key] ?? (key.length === 1 ? key.toUpperCase() : key);
  return [
    ...(mod === true ? [apple ? "⌘" : "Ctrl"] : []),
    ...(shift === true ? [apple ? "⇧" : "Shift"] : []),
    apple ? (APPLE_WORDS[key] ?? plain) : plain,
  ];
}

/** How the first way to press a row is written beside its action: "Ctrl+K". */
export function shortKey(id: string, apple: boolean): string | null {
  const press = LISTENED.find((row) => row.id === id)?.presses[0];
  return press === undefined ? null : printPress(press, apple).join(apple ? "" : "+");
}

/** What a button does with its key on this machine: "Undo (Ctrl+Z)". */
export function withKey(title: string, id: string): string {
  const key = shortKey(id, isApple());
  return key === null ? title : `${title} (${key})`;
}
