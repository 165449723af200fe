/** A page as SVG: layers as named groups, texts as texts, mm as user units. */
import { haloQuad } from "./box.js";
import type { FontBytes } from "./faces.js";
import { FAMILIES } from "./families.js";
import { hatchArea, ringOfCircle } from "./hatch.js";
import type { Face, Fill, Mark, Page, PathMark, Pen, Spot, TextMark } from "./paper.js";
import { drawnText } from "./textWidth.js";

export interface SvgOptions {
  /** Puts the letters' fonts into the file, so that it looks the same everywhere. */
  fonts?: FontBytes;
  /** What is said of the page without being seen on it. */
  about?: string;
}

/** The page as the text of an SVG file, sized in mm, that stands alone. */
export function svgOf(page: Page, options: SvgOptions = {}): string {
  const { width, height, title } = page;
  const writer = new SvgWriter();
  const body = writer.marks(page.marks);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" role="img" aria-label="${escape(title)}">`,
    `<title>${escape(title)}</title>`,
    ...(options.about === undefined ? [] : [`<desc>${escape(options.about)}</desc>`]),
    `<style>${writer.faceRules(options.fonts)}</style>`,
    `<rect width="${width}" height="${height}" fill="#ffffff"/>`,
    body,
    "</svg>\n",
  ].join("\n");
}

/** Collects what the whole file must know: ids that are used once, faces that are used at all. */
class SvgWriter {
  #clips = 0;
  readonly #ids = new Map<string, number>();
  readonly #faces = new Set<Face>();

  marks(marks: readonly Mark[]): string {
    return marks.map((mark) => this.#mark(mark)).join("\n");
  }

  /** Style rules of the faces used, with their fonts where the bytes are given. */
  faceRules(fonts?: FontBytes): string {
    return [...this.#faces]
      .map((face) => {
        const { family, weight } = FAMILIES[face];
        const fallback = face === "heading" ? "serif" : "sans-serif";
        const rule = `.${face}{font-family:"${family}",${fallback};font-weight:${weight}}`;
        return `${fonts === undefined ? "" : embedded(face, fonts)}${rule}`;
      })
      .join("");
  }

  #mark(mark: Mark): string {
    switch (mark.kind) {
      case "path":
        return areaOf(mark.lines, mark.closed, pathData(mark), mark);
      case "circle": {
        const { at, radius } = mark;
        const shape = `<circle cx="${mm(at[0])}" cy="${mm(at[1])}" r="${mm(radius)}"`;
        return filled(shape, [ringOfCircle(at, radius)], mark.fill, mark.pen);
      }
      case "text":
        return this.#text(mark);
      case "group": {
        const id = this.#freshId(mark.layer);
        const open = `<g id="${id}" data-layer="${escape(mark.layer)}" aria-label="${escape(mark.layer)}"`;
        const inside = this.marks(mark.marks);
        if (mark.clip === undefined) return `${open}>\n${inside}\n</g>`;
        const clip = `clip-${++this.#clips}`;
        const [x, y, width, height] = mark.clip.map(mm);
        const box = `<clipPath id="${clip}"><rect x="${x}" y="${y}" width="${width}" height="${height}"/></clipPath>`;
        return `${box}\n${open} clip-path="url(#${clip})">\n${inside}\n</g>`;
      }
    }
  }

  #text(mark: TextMark): string {
    this.#faces.add(mark.face);
    const { at, anchor, face, size, turn, color } = mark;
    const turned = turn ? ` transform="rotate(${mm(turn)} ${mm(at[0])} ${mm(at[1])})"` : "";
    const anchored = anchor === "start" ? "" : ` text-anchor="${anchor}"`;
    const tabular = mark.tabular === true ? ' style="font-variant-numeric:tabular-nums"' : "";
    const text =
      `<text x="${mm(at[0])}" y="${mm(at[1])}" class="${face}" font-size="${mm(size)}" fill="${color ?? INK}"` +
      `${anchored}${turned}${tabular}>${escape(drawnText(mark.text, face))}</text>`;
    if (mark.halo !== true) return text;
    return `<path d="${lineData(haloQuad(mark), true)}" fill="#ffffff"/>${text}`;
  }

  #freshId(layer: string): string {
    const word = layer.toLowerCase().replace(/[^a-z0-9]+/g, "-") || "layer";
    const used = this.#ids.get(word) ?? 0;
    this.#ids.set(word, used + 1);
    return used === 0 ? word : `${word}-${used + 1}`;
  }
}

/** What ink is where no color is asked for. */
const INK = "#000000";

function areaOf(
  lines: readonly (readonly Spot[])[],
  closed: boolean,
  data: string,
  { fill, pen }: PathMark,
): string {
  return filled(
    `<path d="${data}" fill-rule="evenodd" stroke-linejoin="round"`,
    lines,
    closed ? fill : undefined,
    pen,
  );
}

/** A shape's tone, then its hatches, then its outline on top. */
function filled(
  shape: string,
  rings: readonly (readonly Spot[])[],
  fill: Fill | undefined,
  pen: Pen | undefined,
): string {
  const tone = fill?.color ?? "none";
  const hatches = fill?.hatches ?? [];
  if (hatches.length === 0) return `${shape} fill="${tone}"${penOf(pen)}/>`;
  const parts = hatches.map((hatch) => {
    const { strokes, dots } = hatchArea(rings, hatch);
    if (hatch.kind === "lines") {
      const data = strokes.map((stroke) => lineData(stroke, false)).join("");
      return data === "" ? "" : `<path d="${data}" fill="none"${penOf(hatch.pen)}/>`;
    }
    const data = dots.map(([x, y]) => `M${mm(x)} ${mm(y)}h0`).join("");
    return data === ""
      ? ""
      : `<path d="${data}" fill="none" stroke="${hatch.color}" stroke-width="${mm(hatch.size)}" stroke-linecap="round"/>`;
  });
  const under = tone === "none" ? "" : `${shape} fill="${tone}"/>`;
  const outline = pen === undefined ? "" : `${shape} fill="none"${penOf(pen)}/>`;
  return [under, ...parts, outline].filter((part) => part !== "").join("\n");
}

function penOf(pen: Pen | undefined): string {
  if (pen === undefined) return "";
  const dash = pen.dash === undefined ? "" : ` stroke-dasharray="${pen.dash.map(mm).join(" ")}"`;
  return ` stroke="${pen.color}" stroke-width="${mm(pen.width)}"${dash}`;
}

function pathData({ lines, closed }: PathMark): string {
  return lines.map((line) => lineData(line, closed)).join("");
}

function lineData(line: readonly Spot[], closed: boolean): string {
  const steps = line.map(([x, y], i) => `${i === 0 ? "M" : "L"}${mm(x)} ${mm(y)}`).join("");
  return closed && line.length > 0 ? `${steps}Z` : steps;
}

/** To a thousandth of a millimetre, without needless noughts; throws on what is no number. */
function mm(value: number): string {
  if (!Number.isFinite(value)) throw new Error(`a mark at ${value} mm: expected a number`);
  const rounded = Math.round(value * 1000) / 1000;
  return String(rounded === 0 ? 0 : rounded);
}

function escape(text: string): string {
  return text
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
}

function embedded(face: Face, fonts: FontBytes): string {
  const { family, weight } = FAMILIES[face];
  return fonts[face]
    .map((bytes, i) => {
      // The first file holds what nearly every text is written in; the browser looks on by itself.
      const range = i === 0 ? "" : "unicode-range:U+0100-024F,U+0300-0330,U+1E00-1EFF,U+20A0-20BF;";
      return `@font-face{font-family:"${family}";font-weight:${weight};${range}src:url(data:font/woff;base64,${base64(bytes)}) format("woff")}`;
    })
    .join("");
}

/** `btoa` is in pages, workers and Node alike; it takes a text of one byte a letter. */
function base64(bytes: Uint8Array): string {
  let text = "";
  for (let i = 0; i < bytes.length; i += 0x8000) {
    text += String.fromCharCode(...bytes.subarray(i, i + 0x8000));
  }
  return btoa(text);
}
