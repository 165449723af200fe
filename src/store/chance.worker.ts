/** Simulates one scheme away from the page: so many runs in a row, told piece by piece. */
import { chanceModel, runChance, shapeOf } from "../chance/index.js";
import { pointsOf } from "./groundTalk.js";
import type { ChanceAnswer, ChanceAsk } from "./chanceTalk.js";

/** Runs told at once: about a twentieth of a second. */
const PIECE = 100;

function post(answer: ChanceAnswer): void {
  self.postMessage(answer);
}

self.addEventListener("message", ({ data }: MessageEvent<ChanceAsk>) => {
  try {
    simulate(data);
  } catch (fault) {
    post({ fault: fault instanceof Error ? fault.message : String(fault) });
  }
});

function simulate({ site, columns, schemeId, first, count }: ChanceAsk): void {
  const survey = { ...site.survey, points: pointsOf(columns) };
  const model = chanceModel({ ...site, survey }, schemeId);
  post({ shape: shapeOf(model) });
  for (let at = 0; at < count; at += PIECE) {
    post({ runs: runChance(model, first + at, Math.min(PIECE, count - at)) });
  }
  post({ done: true });
}
