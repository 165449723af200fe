import { download, downloadBlob } from "../drawn/index.js";
import { isZip, openZip, useDesk } from "../store/index.js";
import { words } from "../words/index.js";
import { MOST_SITE_BYTES, sizeFault } from "./tooLarge.js";

export { download, downloadBlob };

/** Saves the open site as a site file. */
export function saveSite(): void {
  const desk = useDesk.getState();
  const file = desk.siteFile();
  if (file === null) return;
  download(file.name, file.text, "application/json");
  desk.tell(words.desk.savedAs(file.name));
}

/** Puts every site of a zip on the list of sites; false when the file is no zip. */
async function openedAsZip(file: File): Promise<boolean> {
  try {
    if (!isZip(new Uint8Array(await file.slice(0, 2).arrayBuffer()))) return false;
    await openZip(new Uint8Array(await file.arrayBuffer()), file.name);
  } catch (fault) {
    const why = fault instanceof Error ? fault.message : String(fault);
    useDesk.getState().tell(words.shelf.zipFailed(file.name, why));
  }
  return true;
}

/** Opens a site file, or every site of a zip; what is wrong with it is shown and the open site stays. */
export async function openSiteFile(file: File): Promise<void> {
  const desk = useDesk.getState();
  if (await openedAsZip(file)) return;
  const fault = sizeFault(file.size, MOST_SITE_BYTES);
  if (fault !== null) {
    const { text, mend } = words.book.tooLarge;
    const problem = {
      code: "too-large",
      path: "",
      text: text(fault.size, fault.most),
      mend,
    } as const;
    useDesk.setState({ unopened: { file: file.name, problems: [problem] } });
    return;
  }
  try {
    desk.openText(await file.text(), file.name);
  } catch (fault) {
    desk.tell(
      words.desk.couldNotRead(file.name, fault instanceof Error ? fault.message : String(fault)),
    );
  }
}

/** Asks for a file and hands it on; nothing happens when the person changes their mind. */
export function askForFile(accept: string, use: (file: File) => void): void {
  const input = document.createElement("input");
  input.type = "file";
  input.accept = accept;
  input.addEventListener("change", () => {
    const file = input.files?.[0];
    if (file !== undefined) use(file);
  });
  input.click();
}

/** Asks for a site file, or a zip of them, and opens it. */
export function askForSite(): void {
  askForFile(".json,.zip,application/json,application/zip", (file) => void openSiteFile(file));
}
