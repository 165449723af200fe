/** The permit's list and the distances kept, for the office. */
import { isKeptOffWater } from "../../estimate/index.js";
import type { ChecklistItem } from "../../estimate/index.js";
import { distance } from "../../units/index.js";
import { words } from "../../words/index.js";
import { listSheets } from "../lists/listSheets.js";
import type { RoomOf, SheetContent, SheetJob } from "../paper.js";
import { proseColumns } from "../prose.js";
import type { Table, TableRow } from "../table.js";
import type { Listed } from "./cover.js";
import { nameOfPlace } from "./placeNames.js";

const says = words.sheetsFront;

/** Which sheets show an item of the permit's list, by the ids of sheets or what their ids begin with. */
const SHOWN_ON: Readonly<Record<string, readonly string[] | "every">> = {
  scale: ["existing", "layout", "excavation", "profile", "section"],
  north: ["existing", "layout", "excavation"],
  owner: "every",
  parcel: "every",
  preparer: "every",
  date: "every",
  "lot-lines": ["existing", "layout"],
  contours: ["existing", "layout"],
  benchmark: ["cover", "existing"],
  elevations: ["profile", "section", "excavation"],
  "cuts-fills": ["quantities", "section"],
  buildings: ["existing", "layout"],
  access: ["existing", "layout", "excavation"],
  wells: ["existing", "layout"],
  water: ["existing", "layout"],
  flood: ["existing"],
  wetlands: ["existing"],
  easements: ["existing", "layout"],
  utilities: ["existing", "excavation"],
  trees: ["existing"],
  pits: ["existing"],
  "pit-at-tank": ["existing"],
  bedrooms: ["flow"],
  tank: ["layout", "section", "flow"],
  pipes: ["layout", "profile", "flow", "quantities"],
  field: ["layout", "flow"],
  reserve: ["layout"],
  setbacks: ["permit"],
  pump: ["layout", "detail", "flow"],
  hydraulics: ["flow"],
  dose: ["flow", "detail"],
  alarm: ["flow", "detail"],
};

/** The list, each item with how it stands, why, and on which sheets it is to be seen. */
export function permitSheets(
  job: SheetJob,
  room: RoomOf,
  listed: readonly Listed[],
): SheetContent[] {
  const { present, asked, source } = job.estimate.permit;
  const notes = [words.permit.paper.summary(present, asked), words.permit.list.source(source)];
  if (listed.some(({ partial }) => partial)) notes.push(says.partial);
  const setbacks = setbackTable(job);
  const columns = proseColumns(job.paper);
  return listSheets(
    job,
    room,
    "permit",
    says.permit,
    [
      ...notes,
      listTable(job, listed),
      ...(setbacks.rows.length === 0 ? [] : [setbacks]),
      ...(isKeptOffWater(job.site, job.estimate.setbacks) ? [words.limits.table.waterLine] : []),
    ],
    [columns, columns + 1],
  );
}

function listTable({ estimate }: SheetJob, listed: readonly Listed[]): Table {
  return {
    columns: [
      { head: says.item, share: 3.5 },
      { head: says.stands, share: 2.4 },
      { head: says.why, share: 5.1 },
      { head: says.onSheets, share: 1.7 },
    ],
    rows: estimate.permit.groups.flatMap(({ title, items }): TableRow[] => [
      { kind: "group", cells: [title] },
      ...items.map((item) => itemRow(item, listed)),
    ]),
  };
}

function itemRow(item: ChecklistItem, listed: readonly Listed[]): TableRow {
  const sheets = sheetsShowing(item.id, listed);
  const { states } = words.permit.list;
  // The sheets of this very set decide whether there is a scale: a set may have lists alone.
  const isScale = item.id === "scale" && sheets !== "" && item.state !== "not-applicable";
  if (item.id === "scale" && sheets === "" && item.state === "present") {
    return { cells: [item.title, states.missing, says.noScale, ""] };
  }
  // Somebody said so, with a reason beside it: there is none, or this office does not ask.
  const isAnswered = item.state === "not-applicable" && item.found !== item.state;
  const isShown = item.state === "present" || isScale;
  return {
    cells: [
      item.title,
      isScale ? states.present : isAnswered ? says.noneOrNotAsked : states[item.state],
      isScale ? says.scaleShown : item.because,
      isShown ? sheets || says.fileOnly : "",
    ],
  };
}

/** "2, 4–6" and the like; empty where no sheet of the set shows it. */
function sheetsShowing(item: string, listed: readonly Listed[]): string {
  const on = SHOWN_ON[item] ?? [];
  if (on === "every") return says.everySheet;
  return runsOf(listed.filter(({ id }) => on.some((begin) => id.startsWith(begin)))).join(", ");
}

/** Numbers that follow each other as one, "4–6"; a sheet that shows a part stands by itself. */
function runsOf(sheets: readonly Listed[]): string[] {
  const runs: { first: number; last: number; partial: boolean }[] = [];
  for (const { number, partial } of sheets) {
    const run = runs.at(-1);
    if (run !== undefined && !run.partial && !partial && run.last === number - 1) run.last = number;
    else runs.push({ first: number, last: number, partial });
  }
  return runs.map(({ first, last, partial }) => {
    if (partial) return says.partOf(first);
    return first === last ? String(first) : says.sheetsFromTo(first, last);
  });
}

function setbackTable(job: SheetJob): Table {
  const { site, estimate } = job;
  const print = (value: number): string => distance.print(value, site.units);
  const askedBy = ({ own, source }: (typeof estimate.setbacks)[number]): string =>
    own ? says.own : source;
  const sources = [...new Set(estimate.setbacks.map(askedBy))];
  return {
    title: says.setbacks,
    columns: [
      { head: says.from, share: 3 },
      { head: says.to, share: 2 },
      { head: says.there, figures: true },
      { head: says.asked, figures: true },
    ],
    rows: sources.flatMap((source): TableRow[] => [
      { kind: "group", cells: [says.askedBy(source)] },
      ...estimate.setbacks
        .filter((kept) => askedBy(kept) === source)
        .map(({ work, toName, distance: there, wanted }): TableRow => ({
          cells: [
            nameOfPlace(job, work),
            toName,
            there < wanted ? says.tooNear(print(there)) : print(there),
            print(wanted),
          ],
        })),
    ]),
  };
}
