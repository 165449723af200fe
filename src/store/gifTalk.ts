/** What the page and the worker that writes GIFs say to each other, in turns. */
import type { GifFrame } from "../handover/index.js";

export type GifAsk = GifFrame | "finish";

export type GifAnswer = { size: number } | { bytes: Uint8Array<ArrayBuffer> } | { fault: string };
