/** What we use of fontkit, which brings no types of its own. */
declare module "fontkit" {
  export interface Glyph {
    /** In units of the font. */
    advanceWidth: number;
  }
  export interface Font {
    unitsPerEm: number;
    /** Code points of every letter that the font has. */
    characterSet: readonly number[];
    glyphForCodePoint: (code: number) => Glyph;
    layout: (
      text: string,
      features?: readonly string[],
    ) => { glyphs: readonly Glyph[]; positions: readonly { xAdvance: number }[] };
  }
  export function create(bytes: Uint8Array): Font;
}
