/** A finding's text as its first sentence, which says what, and the rest, which says what to do. */
export function parted(text: string): [string, string] {
  const end = /[.:;](?= [A-Z“(])/.exec(text);
  if (end === null) return [text, ""];
  return [text.slice(0, end.index + 1), text.slice(end.index + 1)];
}
