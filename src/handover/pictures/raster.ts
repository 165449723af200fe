/** SVG to px, alike in Node, a worker and the page: resvg as WebAssembly, with the sheets' faces. */
import { initWasm, Resvg } from "@resvg/resvg-wasm";
import { FACES } from "../../sheets/index.js";

/** What the rasteriser needs: its own code, and the faces' letters as woff2, which it reads. */
const CODE = new URL("../../../node_modules/@resvg/resvg-wasm/index_bg.wasm", import.meta.url);
const FONTS: readonly URL[] = [
  new URL(
    "../../../node_modules/@fontsource/public-sans/files/public-sans-latin-400-normal.woff2",
    import.meta.url,
  ),
  new URL(
    "../../../node_modules/@fontsource/public-sans/files/public-sans-latin-ext-400-normal.woff2",
    import.meta.url,
  ),
  new URL(
    "../../../node_modules/@fontsource/public-sans/files/public-sans-latin-700-normal.woff2",
    import.meta.url,
  ),
  new URL(
    "../../../node_modules/@fontsource/public-sans/files/public-sans-latin-ext-700-normal.woff2",
    import.meta.url,
  ),
  new URL(
    "../../../node_modules/@fontsource/zilla-slab/files/zilla-slab-latin-600-normal.woff2",
    import.meta.url,
  ),
  new URL(
    "../../../node_modules/@fontsource/zilla-slab/files/zilla-slab-latin-ext-600-normal.woff2",
    import.meta.url,
  ),
];

/** How the heading's family begins in a style: by itself it is called by its weight as well. */
const HEADING = `font-family:"${FACES.heading.family}`;

/** A drawn picture: px from the top left, red, green, blue and opacity of each. */
export interface RasterPicture {
  width: number;
  height: number;
  data: Uint8ClampedArray<ArrayBuffer>;
}

/** Draws the text of an SVG file so many px wide: as px, or as a PNG file. */
export interface Raster {
  data: (svg: string, width: number) => RasterPicture;
  png: (svg: string, width: number) => Uint8Array<ArrayBuffer>;
}

/** The library's code may be taken in once only. */
let started: Promise<void> | null = null;

/** The rasteriser, with its files read through `read`, such as a fetch or a file read. */
export async function loadRaster(read: (file: URL) => Promise<Uint8Array>): Promise<Raster> {
  started ??= read(CODE).then((code) => initWasm(new Uint8Array(code)));
  const [, ...fontBuffers] = await Promise.all([started, ...FONTS.map(read)]);
  const drawn = <T>(svg: string, width: number, take: (image: RenderedImage) => T): T => {
    const resvg = new Resvg(svg.replaceAll(HEADING, `${HEADING} SemiBold`), {
      fitTo: { mode: "width", value: width },
      font: { fontBuffers, sansSerifFamily: FACES.text.family },
    });
    const image = resvg.render();
    const taken = take(image);
    image.free();
    resvg.free();
    return taken;
  };
  return {
    data: (svg, width) =>
      drawn(svg, width, (image) => ({
        ...{ width: image.width, height: image.height },
        data: new Uint8ClampedArray(image.pixels),
      })),
    png: (svg, width) => drawn(svg, width, (image) => new Uint8Array(image.asPng())),
  };
}

type RenderedImage = ReturnType<InstanceType<typeof Resvg>["render"]>;
