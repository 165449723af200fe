/** Text that stands in HTML, between tags or in an attribute's double quotes. */
export function inHtml(text: string): string {
  return text
    .replace(/&/g, "&amp;")
    .replace(/</g, "&lt;")
    .replace(/>/g, "&gt;")
    .replace(/"/g, "&quot;");
}

/**
 * JSON that stands in a script element of HTML: no "<", so that neither "</script" nor "<!--" ends or
 * changes it, and no line separators that old readers take for line ends. It reads as the same JSON:
 * in JSON these letters stand in strings alone, where they may be written by their number.
 */
export function inScript(json: string): string {
  return json
    .replace(/</g, "\\u003c")
    .replace(/\u2028/g, "\\u2028")
    .replace(/\u2029/g, "\\u2029");
}
