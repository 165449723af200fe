/** Writes an animated GIF away from the page: each frame is answered with the file's size so far. */
import { loadGifWriter } from "../handover/index.js";
import type { GifAnswer, GifAsk } from "./gifTalk.js";

const writer = loadGifWriter().then((Writer) => new Writer());

function post(answer: GifAnswer, hand: Transferable[] = []): void {
  self.postMessage(answer, { transfer: hand });
}

async function answer(ask: GifAsk): Promise<void> {
  const gif = await writer;
  if (ask !== "finish") {
    post({ size: gif.add(ask) });
    return;
  }
  const bytes = gif.finish();
  post({ bytes }, [bytes.buffer]);
}

self.addEventListener("message", ({ data }: MessageEvent<GifAsk>) => {
  answer(data).catch((fault: unknown) => {
    post({ fault: fault instanceof Error ? fault.message : String(fault) });
  });
});
