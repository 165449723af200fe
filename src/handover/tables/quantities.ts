import { looseOf } from "../../estimate/index.js";
import { materialsOf, NATIVE } from "../../site/index.js";
import { words } from "../../words/index.js";
import { cellAt } from "../sheet.js";
import type { Sheet } from "../sheet.js";
import { figure, formula, FORMAT, head, input, Rows, strong } from "./frame.js";
import type { Making } from "./frame.js";

/** The sheet of quantities, and where other sheets find its figures. */
export interface Quantities {
  sheet: Sheet;
  /** Address of the volume of one work, what is done and material. */
  volumeAt: (work: string, action: "dig" | "place", material: string) => string | undefined;
  /** Addresses of everything that is put in of a material. */
  placedAt: (material: string) => readonly string[];
  /** Addresses of everything that is cut of the materials that hold. */
  cutWhere: (holds: (material: string) => boolean) => readonly string[];
  /** Address of all that is cut. */
  cutAt: string;
}

const VOLUME = 3;

/** Every work's cut and fill by material, to be changed; below, what they come to by material. */
export function quantitiesSheet(making: Making): Quantities {
  const said = words.tables;
  const rows = new Rows(said.sheets.quantities);
  const { volume, volumeUnit, estimate } = making;
  rows.add(...[said.work, said.material, said.what, said.volume(volumeUnit)].map(head));
  const places = new Map<string, string>();
  const placed = new Map<string, string[]>();
  const cuts: { material: string; at: string }[] = [];
  for (const work of estimate.works) {
    for (const [material, value] of Object.entries(work.cut)) {
      if (!(value > 0)) continue;
      const cells = [making.cutName(material), said.cut] as const;
      const row = rows.add(work.name, ...cells, input(volume(value), FORMAT.volume));
      places.set(`${work.id} dig ${material}`, rows.from(row, VOLUME));
      cuts.push({ material, at: rows.from(row, VOLUME) });
    }
    for (const [material, value] of Object.entries(work.fill)) {
      if (!(value > 0)) continue;
      const cells = [making.fillName(material), said.fill] as const;
      const row = rows.add(work.name, ...cells, input(volume(value), FORMAT.volume));
      places.set(`${work.id} place ${material}`, rows.from(row, VOLUME));
      placed.set(material, [...(placed.get(material) ?? []), rows.from(row, VOLUME)]);
    }
  }
  const last = rows.next;
  rows.add();
  const cutAt = sumsByMaterial(making, rows, last);
  return {
    sheet: rows.done([26, 30, 18, 14, 16, 16], 1, [said.volumesMove, said.volumesLeave]),
    volumeAt: (work, action, material) => places.get(`${work} ${action} ${material}`),
    placedAt: (material) => placed.get(material) ?? [],
    cutWhere: (holds) => cuts.filter(({ material }) => holds(material)).map(({ at }) => at),
    cutAt,
  };
}

/**
 * Sums over the rows above, `last` the one after them. An exact comparison for each row and no
 * condition in words, since a name may hold signs that such a condition would read as its own.
 */
function sumsByMaterial(making: Making, rows: Rows, last: number): string {
  const said = words.tables;
  const { volume, volumeUnit, estimate } = making;
  rows.add(
    ...[
      said.byMaterial,
      said.cutColumn(volumeUnit),
      said.looseFromBank,
      said.looseColumn(volumeUnit),
      said.fillColumn(volumeUnit),
    ].map(head),
  );
  const range = (column: number): string =>
    `$${cellAt(1, column).slice(0, 1)}$2:$${cellAt(1, column).slice(0, 1)}$${Math.max(2, last)}`;
  const sum = (row: number, what: string): string =>
    `SUMPRODUCT((${range(1)}=$A${row + 1})*(${range(2)}="${what}")*${range(VOLUME)})`;
  const first = rows.next;
  for (const line of materialLines(making)) {
    const row = rows.next;
    const cut = formula(sum(row, said.cut), volume(line.cut), FORMAT.volume);
    const loose =
      line.loose === null
        ? [null, null]
        : [
            input(line.loose, FORMAT.factor),
            formula(`B${row + 1}*C${row + 1}`, volume(line.cut * line.loose), FORMAT.volume),
          ];
    const fill = formula(sum(row, said.fill), volume(line.fill), FORMAT.volume);
    rows.add(line.name, cut, ...loose, fill);
  }
  const end = rows.next;
  const all = (column: string, value: number) =>
    formula(`SUM(${column}${first + 1}:${column}${end})`, volume(value), FORMAT.volume);
  const total = (of: Estimated): number =>
    estimate.works.reduce((sumOf, work) => sumOf + added(work[of]), 0);
  const looseAll = materialLines(making).reduce((s, l) => s + l.cut * (l.loose ?? 0), 0);
  const row =
    end === first
      ? rows.add(strong(said.all), figure(0, FORMAT.volume))
      : rows.add(
          strong(said.all),
          all("B", total("cut")),
          null,
          all("D", looseAll),
          all("E", total("fill")),
        );
  const short = estimate.earth.importCompacted;
  if (short > 0) {
    const name = said.ofItBought(making.fillName(NATIVE));
    rows.add(name, null, null, null, figure(volume(short), FORMAT.volume));
  }
  return rows.from(row, 1);
}

type Estimated = "cut" | "fill";
const added = (amounts: Readonly<Record<string, number>>): number =>
  Object.values(amounts).reduce((sum, value) => sum + Math.max(0, value), 0);

/** What each name comes to; own earth that is cut again and own earth put in are two names. */
function materialLines(
  making: Making,
): { name: string; cut: number; fill: number; loose: number | null }[] {
  const materials = materialsOf(making.site);
  const lines = new Map<string, { cut: number; fill: number; loose: number | null }>();
  const lineOf = (name: string, loose: number | null) => {
    const line = lines.get(name) ?? { cut: 0, fill: 0, loose };
    lines.set(name, line);
    return line;
  };
  for (const work of making.estimate.works) {
    for (const [id, value] of Object.entries(work.cut)) {
      if (!(value > 0)) continue;
      lineOf(making.cutName(id), looseOf(making.site, making.estimate, id, 1)).cut += value;
    }
    for (const [id, value] of Object.entries(work.fill)) {
      if (value > 0) lineOf(making.fillName(id), materials.get(id)?.loose ?? null).fill += value;
    }
  }
  return [...lines].map(([name, line]) => ({ name, ...line }));
}
