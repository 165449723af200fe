/** The text of a large survey's points, made a little at a time and kept for as long as they stand. */
import type { SurveyPoint } from "../site/index.js";

const texts = new WeakMap<readonly SurveyPoint[], Blob>();

/** Points turned into text between two pauses. */
const SLICE = 4000;

/** Says what the text of these points is, when it was made elsewhere. */
export function surveyTextMade(points: readonly SurveyPoint[], text: Blob): void {
  texts.set(points, text);
}

/** The points as JSON. Lets the page have its turn while it is made. */
export async function surveyText(points: readonly SurveyPoint[]): Promise<Blob> {
  const known = texts.get(points);
  if (known) return known;
  const parts: string[] = ["["];
  for (let from = 0; from < points.length; from += SLICE) {
    const slice = JSON.stringify(points.slice(from, from + SLICE));
    parts.push(from === 0 ? "" : ",", slice.slice(1, -1));
    await nextTurn();
  }
  const text = new Blob([...parts, "]"]);
  texts.set(points, text);
  return text;
}

function nextTurn(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve));
}
