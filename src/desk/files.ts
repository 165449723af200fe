import { useDesk } from "../store/index.js";
import type { Example } from "../store/index.js";
import { words } from "../words/index.js";
import { MOST_SITE_BYTES, sizeFault } from "./tooLarge.js";

/** Hands a text to the browser as a download. */
export function download(name: string, text: string, type: string): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // Some browsers read the address only after the click has returned.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** Saves the open site as a site file. */
export function saveSite(): void {
  const desk = useDesk.getState();
  const file = desk.siteFile();
  if (file === null) return;
  download(file.name, file.text, "application/json");
  desk.tell(`Saved as ${file.name}.`);
}

/** Opens one site file; what is wrong with it is shown and the open site stays. */
export async function openSiteFile(file: File): Promise<void> {
  const desk = useDesk.getState();
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
      `${file.name} could not be read: ${fault instanceof Error ? fault.message : String(fault)}`,
    );
  }
}

/** Fetches an example and opens it; the open site stays when it cannot be fetched. */
export async function openExample({ title, read }: Example): Promise<void> {
  const desk = useDesk.getState();
  try {
    desk.openText(await read(), title);
  } catch {
    desk.tell(words.offline.exampleMissing(title));
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

/** Asks for a site file and opens it. */
export function askForSite(): void {
  askForFile(".json,application/json", (file) => void openSiteFile(file));
}
