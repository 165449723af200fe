/** The permit's list and the distances kept, for the office. */
import type { ChecklistItem } from "../../estimate/index.js";
import { distance } from "../../units/index.js";
import { words } from "../../words/index.js";
import { listSheets } from "../lists/listSheets.js";
import type { RoomOf, SheetContent, SheetJob } from "../paper.js";
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
  return listSheets(job, room, "permit", says.permit, [
    ...notes,
    listTable(job, listed),
    ...(setbacks.rows.length === 0 ? [] : [setbacks]),
  ]);
}

function listTable({ estimate }: SheetJob, listed: readonly Listed[]): Table {
  return {
    columns: [
      { head: says.item, share: 4 },
      { head: says.stands, share: 2 },
      { head: says.why, share: 5 },
      { head: says.onSheets, share: 1.4 },
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
  // The site alone has no scale on paper; these sheets have one.
  const isScale = item.id === "scale" && sheets !== "" && item.state !== "not-applicable";
  const isShown = item.state === "present" || isScale;
  return {
    cells: [
      item.title,
      isScale ? states.present : states[item.state],
      isScale ? says.scaleShown : item.because,
      isShown ? sheets || says.fileOnly : "",
    ],
  };
}

/** "2, 4" and the like; empty where no sheet of the set shows it. */
function sheetsShowing(item: string, listed: readonly Listed[]): string {
  const on = SHOWN_ON[item] ?? [];
  if (on === "every") return says.everySheet;
  return listed
    .filter(({ id }) => on.some((begin) => id.startsWith(begin)))
    .map(({ number, partial }) => (partial ? says.partOf(number) : String(number)))
    .join(", ");
}

function setbackTable(job: SheetJob): Table {
  const { site, estimate } = job;
  const print = (value: number): string => distance.print(value, site.units);
  return {
    title: says.setbacks,
    columns: [
      { head: says.from, share: 3 },
      { head: says.to, share: 2 },
      { head: says.there, figures: true },
      { head: says.asked, figures: true },
      { head: says.source, share: 4 },
    ],
    rows: estimate.setbacks.map((kept): TableRow => ({
      cells: [
        nameOfPlace(job, kept.work),
        kept.toName,
        kept.distance < kept.wanted ? says.tooNear(print(kept.distance)) : print(kept.distance),
        print(kept.wanted),
        kept.own ? says.own : kept.source,
      ],
    })),
  };
}
