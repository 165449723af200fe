/** The part of gifenc that is used; the package brings no types. */
declare module "gifenc" {
  export type Palette = number[][];
  export function quantize(rgba: Uint8Array | Uint8ClampedArray, most: number): Palette;
  export function applyPalette(rgba: Uint8Array | Uint8ClampedArray, palette: Palette): Uint8Array;
  export function GIFEncoder(): {
    writeFrame: (
      index: Uint8Array,
      width: number,
      height: number,
      options: { palette: Palette; delay: number; repeat?: number },
    ) => void;
    finish: () => void;
    bytes: () => Uint8Array<ArrayBuffer>;
    bytesView: () => Uint8Array<ArrayBuffer>;
  };
  const all:
    | typeof GIFEncoder
    | {
        quantize: typeof quantize;
        applyPalette: typeof applyPalette;
        GIFEncoder: typeof GIFEncoder;
      };
  export default all;
}
