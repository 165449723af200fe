import type { HandoverChoices, HandoverFile } from "../../handover/index.js";
import type { Site } from "../../site/index.js";
import { makeFiles, useDesk, useHandover } from "../../store/index.js";
import { words } from "../../words/index.js";
import { downloadBlob } from "../files.js";

const says = words.handing.files;

/** Browsers ask before they take more downloads than one at a time; from here on they come as a zip. */
const MOST_APART = 1;

function handOut(files: readonly HandoverFile[]): void {
  for (const { name, type, data } of files) downloadBlob(name, new Blob([data], { type }));
}

/**
 * Makes files and hands them to the browser: one as it is, several in a zip. What comes of it is
 * said in the notice line.
 */
export async function saveFiles(
  site: Site,
  schemeId: string,
  ids: readonly string[],
  choices: HandoverChoices,
): Promise<void> {
  const files = await makeFiles(site, schemeId, ids, choices, MOST_APART);
  const { tell } = useDesk.getState();
  if (files !== null) {
    handOut(files);
    tell(says.made(files.map(({ name }) => name).join(", ")));
    return;
  }
  const { fault } = useHandover.getState();
  tell(fault === null ? says.cancelled : says.failed(fault));
}
