/** Pictures one after the other as an animated GIF (GIF89a). */
import * as gifenc from "gifenc";

// The package is two: what bundlers take exports names, what Node takes puts all in its default.
const whole = gifenc.default;
const { applyPalette, GIFEncoder, quantize } = typeof whole === "function" ? gifenc : whole;

/** Colours of a frame, each with a table of its own: more make the file larger than they show. */
const COLOURS = 96;

/** One frame: px from the top left, four bytes each; ms that it stands. */
export interface GifFrame {
  width: number;
  height: number;
  data: Uint8ClampedArray;
  delay: number;
}

/** Writes a GIF frame by frame; it plays for ever. All frames must be of one size. */
export class GifWriter {
  readonly #encoder = GIFEncoder();

  /** Adds a frame; gives the bytes of the file so far. */
  add({ width, height, data, delay }: GifFrame): number {
    const palette = quantize(data, COLOURS);
    this.#encoder.writeFrame(applyPalette(data, palette), width, height, { palette, delay });
    return this.#encoder.bytesView().length;
  }

  finish(): Uint8Array<ArrayBuffer> {
    this.#encoder.finish();
    return this.#encoder.bytes();
  }
}
