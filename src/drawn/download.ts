/** Hands a text to the browser as a download. */
export function download(name: string, text: string, type: string): void {
  downloadBlob(name, new Blob([text], { type }));
}

/** Hands a file to the browser as a download. */
export function downloadBlob(name: string, file: Blob): void {
  const address = URL.createObjectURL(file);
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // Some browsers read the address only after the click has returned.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
