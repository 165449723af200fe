/** Pages as one PDF: vectors, real text, only the letters used of each font. */
import { haloQuad } from "./box.js";
import type { FontBytes } from "./faces.js";
import { hatchArea, ringOfCircle } from "./hatch.js";
import type { Face, Fill, Mark, Page, Pen, Spot, TextMark } from "./paper.js";
import { INK } from "./strokes.js";
import { fontRuns } from "./textWidth.js";

type Drawing = PDFKit.PDFDocument;

export interface PdfOptions {
  fonts: FontBytes;
  title: string;
  subject: string;
  author?: string;
  /** Stands in the file as the day it was made, ISO 8601. */
  date: string;
  /** Told after each page. */
  progress?: (done: number, of: number) => void;
  signal?: AbortSignal;
}

/** Points of PDF in a millimetre. */
const POINTS = 72 / 25.4;

/**
 * The pages as the bytes of a PDF, each of its paper's exact size, with a bookmark for each. The
 * library comes only when a PDF is made: it is larger than many a page's whole code.
 */
export async function pdfOf(
  pages: readonly Page[],
  options: PdfOptions,
): Promise<Uint8Array<ArrayBuffer>> {
  const { default: PdfDocument } = await import("pdfkit");
  const { title, subject, author, date, fonts, progress, signal } = options;
  const document = new PdfDocument({
    autoFirstPage: false,
    // None of the fonts that readers are said to have: all letters come along.
    font: "",
    pdfVersion: "1.7",
    lang: "en",
    displayTitle: true,
    info: {
      Title: title,
      Subject: subject,
      CreationDate: new Date(date),
      ...(author === undefined ? {} : { Author: author }),
    },
  });
  const chunks: Uint8Array[] = [];
  const ended = new Promise<void>((resolve, reject) => {
    document.on("data", (chunk: Uint8Array) => chunks.push(chunk));
    document.on("end", resolve);
    document.on("error", reject);
  });
  registerFaces(document, fonts);
  for (const [i, page] of pages.entries()) {
    signal?.throwIfAborted();
    drawPage(document, page);
    progress?.(i + 1, pages.length);
    // Lets a message that cancels come in between.
    await Promise.resolve();
  }
  document.end();
  await ended;
  return joined(chunks);
}

function joined(chunks: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}

function fontName(face: Face, file: number): string {
  return `${face}-${file}`;
}

function registerFaces(document: Drawing, fonts: FontBytes): void {
  for (const face of ["text", "strong", "heading"] as const) {
    for (const [file, bytes] of fonts[face].entries()) {
      document.registerFont(fontName(face, file), bytes);
    }
  }
}

function drawPage(document: Drawing, page: Page): void {
  document.addPage({ size: [page.width * POINTS, page.height * POINTS], margin: 0 });
  document.outline.addItem(page.title);
  document.scale(POINTS);
  document.lineJoin("round");
  drawMarks(document, page.marks);
}

function drawMarks(document: Drawing, marks: readonly Mark[]): void {
  for (const mark of marks) drawMark(document, mark);
}

function drawMark(document: Drawing, mark: Mark): void {
  switch (mark.kind) {
    case "path": {
      const { lines, closed, fill, pen } = mark;
      drawShape(
        document,
        () => tracePath(document, lines, closed),
        lines,
        closed ? fill : undefined,
        pen,
      );
      return;
    }
    case "circle": {
      const { at, radius, fill, pen } = mark;
      const trace = (): void => void document.circle(at[0], at[1], radius);
      drawShape(document, trace, [ringOfCircle(at, radius)], fill, pen);
      return;
    }
    case "text":
      drawText(document, mark);
      return;
    case "group": {
      document.save();
      if (mark.clip !== undefined) document.rect(...mark.clip).clip();
      drawMarks(document, mark.marks);
      document.restore();
    }
  }
}

/** A shape's tone, then its hatches, then its outline on top. */
function drawShape(
  document: Drawing,
  trace: () => void,
  rings: readonly (readonly Spot[])[],
  fill: Fill | undefined,
  pen: Pen | undefined,
): void {
  if (fill?.color !== undefined) {
    trace();
    document.fill(fill.color, "even-odd");
  }
  for (const hatch of fill?.hatches ?? []) {
    const { strokes, dots } = hatchArea(rings, hatch);
    if (strokes.length > 0 && hatch.kind === "lines") {
      tracePath(document, strokes, false);
      strokeWith(document, hatch.pen);
    }
    if (dots.length > 0 && hatch.kind === "dots") {
      // A line of no length with round ends is a dot (ISO 32000-1, 8.5.3.2).
      tracePath(
        document,
        dots.map((dot) => [dot, dot]),
        false,
      );
      document.save().lineCap("round").lineWidth(hatch.size).stroke(hatch.color).restore();
    }
  }
  if (pen !== undefined) {
    trace();
    strokeWith(document, pen);
  }
}

function tracePath(document: Drawing, lines: readonly (readonly Spot[])[], closed: boolean): void {
  for (const line of lines) {
    for (const [i, [x, y]] of line.entries()) {
      if (i === 0) document.moveTo(x, y);
      else document.lineTo(x, y);
    }
    if (closed && line.length > 0) document.closePath();
  }
}

function strokeWith(document: Drawing, { width, color, dash }: Pen): void {
  document.lineWidth(width);
  // The types know one length only; the library takes the whole pattern.
  if (dash !== undefined) document.dash(dash as unknown as number, {});
  document.stroke(color);
  if (dash !== undefined) document.undash();
}

function drawText(document: Drawing, mark: TextMark): void {
  if (mark.halo === true) {
    tracePath(document, [haloQuad(mark)], true);
    document.fill("#ffffff");
  }
  const { at, anchor, face, size, turn, color, tabular } = mark;
  const options = {
    lineBreak: false,
    baseline: "alphabetic" as const,
    ...(tabular === true ? { features: ["tnum" as const] } : {}),
  };
  document.fontSize(size).fillColor(color ?? INK);
  const runs = fontRuns(mark.text, face).map(({ text, file }) => {
    document.font(fontName(face, file));
    return { text, file, width: document.widthOfString(text, options) };
  });
  const width = runs.reduce((sum, run) => sum + run.width, 0);
  let x = at[0] - (anchor === "start" ? 0 : anchor === "middle" ? width / 2 : width);
  document.save();
  if (turn !== undefined) document.rotate(turn, { origin: [at[0], at[1]] });
  for (const run of runs) {
    document.font(fontName(face, run.file)).text(run.text, x, at[1], options);
    x += run.width;
  }
  document.restore();
}
