/** Elements as text: what a person has typed is escaped, what is made of it is not escaped again. */

/** Text that is HTML already. */
export class Html {
  constructor(readonly text: string) {}
}

export type Child = Html | string | readonly Child[];

const ESCAPES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

export function escapeHtml(text: string): string {
  return text.replace(/[&<>"']/g, (letter) => ESCAPES[letter] ?? letter);
}

function textOf(child: Child): string {
  if (child instanceof Html) return child.text;
  return typeof child === "string" ? escapeHtml(child) : child.map(textOf).join("");
}

/** An element by its name, its attributes and what is in it. */
export function element(
  name: string,
  attributes: Readonly<Record<string, string>>,
  ...children: readonly Child[]
): Html {
  const inside = Object.entries(attributes).map(([key, value]) => ` ${key}="${escapeHtml(value)}"`);
  return new Html(`<${name}${inside.join("")}>${textOf(children)}</${name}>`);
}

/** Rows of a table, its head first; the first cell of a row names it. */
export function table(head: readonly string[], rows: readonly (readonly Child[])[]): Html {
  const heading = head.map((text) => element("th", { scope: "col" }, text));
  const body = rows.map(([first = "", ...rest]) =>
    element(
      "tr",
      {},
      element("th", { scope: "row" }, first),
      rest.map((cell) => element("td", {}, cell)),
    ),
  );
  return element(
    "table",
    {},
    element("thead", {}, element("tr", {}, heading)),
    element("tbody", {}, body),
  );
}
