/**
 * Sheets to a workbook (Office Open XML, ECMA-376). The library writes a formula without what it comes
 * to; a program that shows a file without reckoning, such as a phone's preview, would show nothing
 * there. So the values are put in through its own way of changing a sheet's XML, and the workbook asks
 * to be reckoned anew wherever it is opened by a program that can.
 */
import writeXlsxFile from "write-excel-file/universal";
import type { CellObject, Feature, Sheet as XlsxSheet } from "write-excel-file/universal";
import { cellAt } from "./sheet.js";
import type { Cell, Sheet } from "./sheet.js";

/** The media type of a workbook. */
export const XLSX_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

/** A face that every office program has: without one, bold cells get another than plain ones. */
const FONT = { fontFamily: "Arial", fontSize: 10 };

/** Pale paper of a cell that may be changed. */
const INPUT_TONE = "#FBF3DC";

/** Writes sheets as one workbook. */
export async function bookOf(sheets: readonly Sheet[]): Promise<Uint8Array<ArrayBuffer>> {
  const data = sheets.map((sheet): XlsxSheet<Blob> => ({
    sheet: sheet.name,
    data: [...sheet.rows, ...notesOf(sheet)].map((row) => row.map(cellOf)),
    columns: sheet.widths.map((width) => ({ width })),
    orientation: "landscape",
    ...(sheet.head !== undefined && { stickyRowsCount: sheet.head }),
  }));
  const blob = await writeXlsxFile(data, { ...FONT, features: [withValues(sheets)] }).toBlob();
  return new Uint8Array(await blob.arrayBuffer());
}

/** An empty row, then each note in a row of its own. */
function notesOf({ notes = [] }: Sheet): (readonly Cell[])[] {
  return notes.length === 0 ? [] : [[], ...notes.map((note) => [note])];
}

function cellOf(cell: Cell): CellObject | null {
  if (cell === null) return null;
  if (typeof cell === "string") return { value: cell, type: String };
  if ("text" in cell) {
    return {
      value: cell.text,
      type: String,
      ...(cell.strong === true && { fontWeight: "bold" }),
      ...(cell.wrap === true && { wrap: true, alignVertical: "top" }),
    };
  }
  const format = cell.format === undefined ? {} : { format: cell.format };
  if ("formula" in cell) return { value: cell.formula, type: "Formula", ...format };
  const tone = cell.input === true ? { backgroundColor: INPUT_TONE } : {};
  return { value: cell.number, type: Number, ...format, ...tone };
}

/** Puts what each formula comes to behind it. */
function withValues(sheets: readonly Sheet[]): Feature<Blob> {
  return {
    files: {
      transform: {
        "xl/worksheets/sheet{id}.xml": {
          transform: (xml, _options, { sheetIndex }) => valuesIn(xml, sheets[sheetIndex]!),
        },
        "xl/workbook.xml": {
          transformElementAttributes: (tag, attributes) =>
            tag === "calcPr" ? { ...attributes, fullCalcOnLoad: 1 } : attributes,
        },
      },
    },
  };
}

function valuesIn(xml: string, sheet: Sheet): string {
  const values = new Map<string, number>();
  sheet.rows.forEach((row, y) =>
    row.forEach((cell, x) => {
      if (cell !== null && typeof cell === "object" && "formula" in cell) {
        values.set(cellAt(y, x), cell.value);
      }
    }),
  );
  const filled = xml.replace(
    /<c r="([A-Z]+\d+)"([^>]*)><f>(.*?)<\/f><\/c>/gs,
    (_all, place: string, rest: string, formula: string) => {
      const value = values.get(place);
      if (value === undefined)
        throw new Error(`workbook: ${sheet.name} has no formula at ${place}`);
      values.delete(place);
      return `<c r="${place}"${rest}><f>${formula}</f><v>${value}</v></c>`;
    },
  );
  if (values.size > 0) {
    throw new Error(
      `workbook: ${sheet.name} lost the formulas at ${[...values.keys()].join(", ")}`,
    );
  }
  return filled;
}
