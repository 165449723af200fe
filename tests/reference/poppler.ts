/** Reading PDFs back with poppler's tools, which know nothing of us. */
import { execFileSync } from "node:child_process";
import { XMLParser } from "fast-xml-parser";

/** [x, y] in mm from the page's upper left corner. */
type Spot = readonly [number, number];

export const MM_PER_POINT = 25.4 / 72;

/** Runs a tool of poppler-utils; one that is not there fails the test with what to install. */
function poppler(tool: string, args: readonly string[]): Buffer {
  try {
    return execFileSync(tool, [...args], { maxBuffer: 1 << 29, stdio: ["ignore", "pipe", "pipe"] });
  } catch (error) {
    if ((error as { code?: string }).code !== "ENOENT") throw error;
    throw new Error(
      `${tool} is not installed: these tests read PDFs with it. Install poppler-utils (Debian: apt-get install poppler-utils) or run npm test, which does.`,
      { cause: error },
    );
  }
}

function text(tool: string, args: readonly string[]): string {
  return poppler(tool, args).toString("utf8");
}

/** Width and height of each page in points. */
export function pageSizes(file: string): { width: number; height: number }[] {
  const says = text("pdfinfo", ["-f", "1", "-l", "-1", file]);
  return [...says.matchAll(/^Page\s+\d+ size:\s+([\d.]+) x ([\d.]+) pts/gm)].map((match) => ({
    width: Number(match[1]),
    height: Number(match[2]),
  }));
}

/** The document's particulars, such as Title. */
export function particulars(file: string): Map<string, string> {
  const lines = text("pdfinfo", [file]).split("\n");
  return new Map(
    lines.map((line) => [line.split(":")[0] ?? "", line.slice(line.indexOf(":") + 1).trim()]),
  );
}

/** Every font of a file: its name, whether it is embedded, whether only the letters used are. */
export function fontsOf(file: string): { name: string; embedded: boolean; subset: boolean }[] {
  const rows = text("pdffonts", [file]).trimEnd().split("\n").slice(2);
  return rows.map((row) => {
    const said = /\s(yes|no)\s+(yes|no)\s+(yes|no)\s+\d+\s+\d+$/.exec(row);
    if (said === null) throw new Error(`pdffonts said "${row}"`);
    return {
      name: row.split(/\s/)[0] ?? "",
      embedded: said[1] === "yes",
      subset: said[2] === "yes",
    };
  });
}

/** What a page says, in reading order, every blank one space. */
export function pageText(file: string, page: number): string {
  const pages = ["-f", String(page), "-l", String(page)];
  return text("pdftotext", [...pages, "-raw", file, "-"]).replace(/\s+/g, " ");
}

interface BoxedWord {
  text: string;
  left: number;
  top: number;
  right: number;
  bottom: number;
}

/** Words of a page with their boxes, mm. */
export function wordsOn(file: string, page: number): BoxedWord[] {
  const xml = text("pdftotext", ["-f", String(page), "-l", String(page), "-bbox", file, "-"]);
  const words = xml.matchAll(
    /<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">([^<]*)<\/word>/g,
  );
  return [...words].map((match) => {
    const sides = match.slice(1, 5).map((each) => Number(each) * MM_PER_POINT);
    const [left, top, right, bottom] = sides as [number, number, number, number];
    return { left, top, right, bottom, text: match[5] ?? "" };
  });
}

/** Bookmarks: what each says and which page it goes to. */
export function bookmarks(file: string): { text: string; page: number }[] {
  const xml = text("pdftohtml", ["-xml", "-i", "-stdout", file]);
  const outline = /<outline>([\s\S]*?)<\/outline>/.exec(xml)?.[1] ?? "";
  const parser = new XMLParser({ ignoreAttributes: false, isArray: (name) => name === "item" });
  const read = parser.parse(outline) as { item?: { "#text": unknown; "@_page": string }[] };
  return (read.item ?? []).map((item) => ({
    text: String(item["#text"]),
    page: Number(item["@_page"]),
  }));
}

/** A page as it would be inked: grey values of a part of it, at so many dots an inch. */
export function raster(
  file: string,
  page: number,
  dpi: number,
  part: { left: number; top: number; width: number; height: number },
): { width: number; height: number; grey: Uint8Array } {
  const dots = (mm: number): string => String(Math.round((mm / 25.4) * dpi));
  const pgm = poppler("pdftoppm", [
    ...["-f", String(page), "-l", String(page), "-r", String(dpi), "-gray"],
    ...["-x", dots(part.left), "-y", dots(part.top), "-W", dots(part.width)],
    ...["-H", dots(part.height), file],
  ]);
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(pgm.subarray(0, 60).toString("latin1"));
  if (head === null) throw new Error("pdftoppm wrote no grey picture");
  return { width: Number(head[1]), height: Number(head[2]), grey: pgm.subarray(head[0].length) };
}

/** Straight strokes of a page as poppler's own SVG has them, mm. */
export function strokesOn(file: string, page: number): (readonly [Spot, Spot])[] {
  const svg = text("pdftocairo", ["-svg", "-f", String(page), "-l", String(page), file, "-"]);
  const strokes: (readonly [Spot, Spot])[] = [];
  for (const [tag] of svg.matchAll(/<path [^>]*stroke-width[^>]*>/g)) {
    const data = / d="([^"]*)"/.exec(tag)?.[1] ?? "";
    const matrix = /transform="matrix\(([^)]*)\)"/.exec(tag)?.[1] ?? "1, 0, 0, 1, 0, 0";
    strokes.push(...legsOf(data, matrix.split(/[ ,]+/).map(Number)));
  }
  return strokes;
}

function legsOf(data: string, matrix: readonly number[]): (readonly [Spot, Spot])[] {
  const [a, b, c, d, e, f] = matrix as [number, number, number, number, number, number];
  const legs: (readonly [Spot, Spot])[] = [];
  let start: Spot | null = null;
  let at: Spot | null = null;
  for (const [, letter, numbers] of data.matchAll(/([MLCZ])([^MLCZ]*)/g)) {
    const values = (numbers ?? "").trim().split(/[ ,]+/).map(Number);
    const [x, y] = values.slice(-2) as [number, number];
    const to: Spot | null =
      letter === "Z"
        ? start
        : [(a * x + c * y + e) * MM_PER_POINT, (b * x + d * y + f) * MM_PER_POINT];
    if ((letter === "L" || letter === "Z") && at !== null && to !== null) legs.push([at, to]);
    if (letter === "M") start = to;
    at = to;
  }
  return legs;
}
