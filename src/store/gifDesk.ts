import type { GifFrame } from "../handover/index.js";
import type { GifAnswer, GifAsk } from "./gifTalk.js";

/** A GIF that is being written in a worker. Every promise of it is rejected when the worker fails. */
export class GifDesk {
  readonly #worker = new Worker(new URL("./gif.worker.ts", import.meta.url), { type: "module" });

  /** Adds a frame, whose px are handed over; gives the bytes so far. */
  async add(frame: GifFrame): Promise<number> {
    const answer = await this.#ask(frame, [frame.data.buffer]);
    if (!("size" in answer)) throw new Error("a GIF's frame: expected its size");
    return answer.size;
  }

  async finish(): Promise<Uint8Array<ArrayBuffer>> {
    const answer = await this.#ask("finish");
    if (!("bytes" in answer)) throw new Error("a GIF's end: expected its bytes");
    return answer.bytes;
  }

  close(): void {
    this.#worker.terminate();
  }

  #ask(ask: GifAsk, hand: Transferable[] = []): Promise<Exclude<GifAnswer, { fault: string }>> {
    return new Promise((resolve, reject) => {
      this.#worker.onmessage = ({ data }: MessageEvent<GifAnswer>) => {
        if ("fault" in data) reject(new Error(data.fault));
        else resolve(data);
      };
      this.#worker.onerror = ({ message }) => reject(new Error(message));
      this.#worker.postMessage(ask, hand);
    });
  }
}
