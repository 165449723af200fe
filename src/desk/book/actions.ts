/** What can be done from the search, whatever leaf is open. */
import { setUnits } from "../../site/index.js";
import { useDesk } from "../../store/index.js";
import type { PlaceKind } from "../../store/index.js";
import { words } from "../../words/index.js";
import { askForSite, saveSite } from "../files.js";
import { openPanel, usePanels } from "./panels.js";

const says = words.book.actions;

export interface Action {
  id: string;
  title: string;
  more?: string;
  /** Row of the table of keys that does the same. */
  key?: string;
  run: () => void;
}

const placing = (): Action[] =>
  Object.entries(says.place).map(([kind, title]) => ({
    ...{ id: `place-${kind}`, title, more: says.placeMore },
    run: () => useDesk.getState().startPlacing(kind as PlaceKind),
  }));

/** How the page looks. */
function looking(): Action[] {
  const { show, edit } = useDesk.getState();
  const view = (id: "orbit" | "plan"): Action => ({
    ...{ id, title: says[id], more: says.look },
    run: () => show({ view: id }),
  });
  const light = (id: "system" | "light" | "dark", title: string): Action => ({
    ...{ id: `light-${id}`, title, more: says.light },
    run: () => show({ theme: id }),
  });
  return [
    view("orbit"),
    view("plan"),
    light("light", says.day),
    light("dark", says.night),
    light("system", says.system),
    {
      ...{ id: "feet", title: says.feet, more: says.units },
      run: () => edit("show feet", (site) => setUnits(site, "us")),
    },
    {
      ...{ id: "metres", title: says.metres, more: says.units },
      run: () => edit("show metres", (site) => setUnits(site, "metric")),
    },
  ];
}

/** Every action that the search offers, the most likely first. */
export function actions(): Action[] {
  const desk = useDesk.getState();
  return [
    { id: "undo", title: words.book.keys.undo, more: says.again, key: "undo", run: desk.undo },
    { id: "redo", title: words.book.keys.redo, more: says.again, key: "redo", run: desk.redo },
    { id: "save", title: says.save, key: "save", run: saveSite },
    { id: "open", title: says.open, run: askForSite },
    { id: "start", title: says.start, run: () => desk.show({ starting: true }) },
    ...placing(),
    { id: "findings", title: says.findings, run: () => openPanel("findings") },
    { id: "steps", title: says.steps, more: says.again, run: () => openPanel("steps") },
    ...looking(),
    { id: "print", title: says.print, run: () => window.print() },
    { id: "keys", title: says.keys, more: says.help, key: "keys", run: () => openPanel("keys") },
    {
      ...{ id: "tour", title: words.book.tour.ask, more: says.help },
      run: () => usePanels.setState({ touring: true }),
    },
    { id: "terms", title: says.terms, more: says.help, run: () => openPanel("terms") },
  ];
}
