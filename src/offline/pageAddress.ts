/**
 * Whether an address is that of the page itself: the folder that Bankyard is served from, or a name
 * in it without an ending other than .html. Pictures and site files in it are not the page, and in
 * a deeper folder the page would not find its own files.
 */
export function isPageAddress(address: string, scope: string): boolean {
  if (!address.startsWith(scope)) return false;
  const name = address.slice(scope.length).replace(/[?#].*$/s, "");
  return !name.includes("/") && (!name.includes(".") || name.endsWith(".html"));
}
