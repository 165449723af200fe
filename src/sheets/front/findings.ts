/** Findings: what stands open, and what was taken on with its reason. */
import type { Finding } from "../../site/index.js";
import { words } from "../../words/index.js";
import { listSheets } from "../lists/listSheets.js";
import type { RoomOf, SheetContent, SheetJob } from "../paper.js";
import type { Table, TableRow } from "../table.js";
import { nameOfPlace } from "./placeNames.js";

const says = words.sheetsFront;
const RANKS = ["stop", "caution", "note"] as const;

/** Every finding, those that stop the job first; never left out, whatever was taken on. */
export function findingSheets(job: SheetJob, room: RoomOf): SheetContent[] {
  const ranked = RANKS.flatMap((rank) =>
    job.estimate.findings.filter(({ level }) => level === rank),
  );
  const open = ranked.filter(({ accepted }) => accepted === undefined);
  const taken = ranked.filter(({ accepted }) => accepted !== undefined);
  return listSheets(job, room, "findings", says.findings, [
    ...(open.length === 0 ? [says.noneOpen] : [findingTable(job, says.open, open)]),
    ...(taken.length === 0 ? [] : [findingTable(job, says.taken, taken)]),
  ]);
}

function findingTable(job: SheetJob, title: string, findings: readonly Finding[]): Table {
  return {
    title,
    columns: [
      { head: says.where, share: 1 },
      { head: says.text, share: 6 },
    ],
    rows: RANKS.flatMap((rank): TableRow[] => {
      const ranked = findings.filter(({ level }) => level === rank);
      if (ranked.length === 0) return [];
      return [
        { kind: "group", cells: [words.book.findings.levels[rank]] },
        ...ranked.map((finding) => findingRow(job, finding)),
      ];
    }),
  };
}

function findingRow(job: SheetJob, { where, text, source, accepted }: Finding): TableRow {
  const who = [accepted?.by, accepted?.on].filter((part) => part !== undefined).join(", ");
  const then = accepted?.then === undefined ? "" : ` ${says.saidThen(accepted.then)}`;
  const reason = accepted === undefined ? "" : ` ${says.reason(who, accepted.reason)}${then}`;
  return { cells: [nameOfPlace(job, where), `${says.textAndSource(text, source)}${reason}`] };
}
