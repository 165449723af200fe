/**
 * Text read to a value, or a plain sentence that says what was expected. A `doubt` asks about a
 * value that can be read but is hardly meant: it is kept only when the person says so. `offer` is
 * another text for what was refused, where it can be told what was meant.
 */
export type Reading<T> =
  { ok: true; value: T; doubt?: string } | { ok: false; text: string; offer?: string };

/** What stands beneath a field: why it was refused, or what is asked before it is taken. */
export interface Objection<T> {
  text: string;
  /** The value as typed, when it may be kept all the same. */
  typed?: { value: T };
  /** A text to put in place of what was typed. */
  offer?: string;
}

/** How far the typing in one field is. */
export interface Typing<T> {
  /** What was typed and not taken yet; null when nothing was. */
  typed: string | null;
  /** What stood in the field when it got the focus: it stays under the cursor until it is left. */
  held: string | null;
  wrong: Objection<T> | null;
}

/** Nothing typed: the field shows the document. */
export const atRest: Typing<never> = { typed: null, held: null, wrong: null };

/** What the field shows while the document would have `shown`. */
export function textIn<T>({ typed, held }: Typing<T>, shown: string): string {
  return typed ?? held ?? shown;
}

/** The field gets the focus: what it shows no longer follows the document. */
export function entered<T>(now: Typing<T>, shown: string): Typing<T> {
  return now.typed === null ? { ...now, held: shown } : now;
}

/** A keystroke; an objection goes as soon as the text can be read. */
export function typedIn<T>(
  now: Typing<T>,
  text: string,
  read: (text: string) => Reading<T>,
): Typing<T> {
  const still = now.wrong !== null && !read(text).ok ? now.wrong : null;
  return { ...now, typed: text, wrong: still };
}

/** Enter, or leaving the field: what is taken of it, if anything, and how it stands then. */
export function settled<T>(
  now: Typing<T>,
  shown: string,
  read: (text: string) => Reading<T>,
): { next: Typing<T>; take?: { value: T } } {
  const { typed } = now;
  if (typed === null || typed === shown) return { next: atRest };
  const reading = read(typed);
  if (!reading.ok) {
    const { text, offer } = reading;
    return { next: { ...now, wrong: offer === undefined ? { text } : { text, offer } } };
  }
  const { value, doubt } = reading;
  if (doubt === undefined) return { next: atRest, take: { value } };
  return { next: { ...now, wrong: { text: doubt, typed: { value } } } };
}

/** What the field held has changed from elsewhere: what was refused speaks of a value that is gone. */
export function overtaken<T>(now: Typing<T>): Typing<T> {
  return now.wrong === null ? now : atRest;
}
