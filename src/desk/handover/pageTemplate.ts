import { isTemplate } from "../../handover/index.js";
import { words } from "../../words/index.js";

/**
 * Brings the page of one file from the app's own files; without a network it is on the device, kept
 * with the rest. Rejects with a reason to show when it cannot be had.
 */
export async function pageTemplate(): Promise<string> {
  const answer = await fetch(new URL("viewer.html", document.baseURI)).catch(() => null);
  const text = answer?.ok === true ? await answer.text() : "";
  // A server that knows no such file may answer with the app itself.
  if (!isTemplate(text)) throw new Error(words.viewer.noTemplate);
  return text;
}
