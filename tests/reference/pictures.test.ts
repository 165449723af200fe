// Pictures and the link of both examples, as the command line makes them, read again by programs that
// are not ours: pngjs and omggif.
import { readFile } from "node:fs/promises";
import { GifReader } from "omggif";
import { PNG } from "pngjs";
import { describe, expect, it } from "vitest";
import { STAGES } from "../../src/estimate/index.js";
import { HANDOVER_KINDS, loadRasterLoader, siteOfLink } from "../../src/handover/index.js";
import type { HandoverFile, MakeOptions } from "../../src/handover/index.js";
import { present } from "../fixtures/present.js";
import { exampleJob } from "../../src/handover/job.fixture.js";

const raster = async () => (await loadRasterLoader())((file) => readFile(file));

async function made(kind: string, name: string, options: MakeOptions) {
  const make = await present(HANDOVER_KINDS.find(({ id }) => id === kind)).load();
  const job = exampleJob(name);
  return { site: job.site, files: await make(job, options) };
}

/** How many colours cover more than one px in ten thousand. */
function coloursOf(rgba: Uint8Array): number {
  const counts = new Map<number, number>();
  for (let i = 0; i < rgba.length; i += 4) {
    const colour = rgba[i]! * 65_536 + rgba[i + 1]! * 256 + rgba[i + 2]!;
    counts.set(colour, (counts.get(colour) ?? 0) + 1);
  }
  return [...counts.values()].filter((count) => count > rgba.length / 40_000).length;
}

const bytesOf = ({ data }: HandoverFile): Buffer => Buffer.from(data as Uint8Array);

function framesOf(gif: GifReader): Uint8Array[] {
  return Array.from({ length: gif.numFrames() }, (_, i) => {
    const pixels = new Uint8Array(4 * gif.width * gif.height);
    gif.decodeAndBlitFrameRGBA(i, pixels);
    return pixels;
  });
}

const shareOfChanged = (a: Uint8Array, b: Uint8Array): number =>
  a.reduce((sum, part, i) => sum + (part === b[i] ? 0 : 1), 0) / a.length;

describe.each(["alder-flat", "quarry-lane"])("pictures of %s", (name) => {
  it("are stills of two stages that differ, a whole turn, and every stage", async () => {
    const told: number[] = [];
    const progress = (done: number, of: number): void => void told.push(done / of);
    const { files } = await made("pictures", name, { raster, progress });
    expect(files.map((file) => file.name.replace(/^.*?-(?=picture|turning|stages)/, ""))).toEqual([
      "picture-dug.png",
      "picture-backfilled.png",
      "turning-dug.gif",
      "stages.gif",
    ]);
    const stills = files.slice(0, 2).map((file) => PNG.sync.read(bytesOf(file)));
    const [dug, done] = stills.map(({ data }) => data);
    for (const { width, height, data } of stills) {
      expect(width).toBe(1800);
      expect(height).toBeGreaterThan(1000);
      expect(coloursOf(data)).toBeGreaterThan(12);
    }
    expect(shareOfChanged(present(dug), present(done))).toBeGreaterThan(0.01);

    const gifs = files.slice(2).map((file) => new GifReader(bytesOf(file)));
    const [turning, stages] = [present(gifs[0]), present(gifs[1])];
    expect([turning.numFrames(), turning.loopCount()]).toEqual([30, 0]);
    expect(turning.width).toBe(800);
    const delays = (gif: GifReader): number[] =>
      Array.from({ length: gif.numFrames() }, (_, i) => gif.frameInfo(i).delay);
    expect(new Set(delays(turning))).toEqual(new Set([11]));
    expect(delays(stages)).toEqual([...STAGES.slice(1).map(() => 120), 240]);
    for (const gif of gifs) {
      const frames = framesOf(gif);
      for (const frame of frames) expect(coloursOf(frame)).toBeGreaterThan(8);
      frames.slice(1).forEach((frame, i) => {
        expect(shareOfChanged(frames[i]!, frame)).toBeGreaterThan(0.0005);
      });
    }
    expect(told).toEqual([...told].sort((a, b) => a - b));
    expect([told[0], told.at(-1)]).toEqual([0, 1]);
  }, 180_000);

  it("and the link, opened again, gives the same site", async () => {
    const { site, files } = await made("link", name, { address: "https://plans.example/app/" });
    expect(files.map((file) => file.name.endsWith("-link.txt"))).toEqual([true]);
    const text = files[0]!.data as string;
    const address = present(text.split("\n")[0]);
    expect(address).toMatch(/^https:\/\/plans\.example\/app\/#site=/);
    expect(text).toContain(`${address.length.toLocaleString("en-US")} letters long`);
    const read = await siteOfLink(address);
    expect(read.ok && read.value).toEqual(site);
  });
});

it("of nothing but the stage that is asked for", async () => {
  const choices = { pictures: { what: ["still"], stages: ["found"] } } as const;
  const { files } = await made("pictures", "quarry-lane", { raster, choices });
  expect(files.map((file) => file.name)).toEqual(["quarry-lane-gravity-picture-as-found.png"]);
});

it("are not made without what draws them", async () => {
  await expect(made("pictures", "quarry-lane", {})).rejects.toThrow("rasteriser");
});
