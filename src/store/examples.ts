/** An example site that comes with the app. */
export interface Example {
  /** File name without its ending, such as "alder-flat". */
  id: string;
  /** Name to show before the file is read. */
  title: string;
  /** The site file as it stands. */
  text: string;
}

const files = import.meta.glob<string>("../../shared/sites/*.site.json", {
  query: "?raw",
  import: "default",
  eager: true,
});

const FIRST = "alder-flat";

function titleOf(id: string): string {
  return id
    .split("-")
    .map((word) => word.charAt(0).toUpperCase() + word.slice(1))
    .join(" ");
}

/** The examples, the one shown on first opening first; empty if none were built in. */
export const examples: readonly Example[] = Object.entries(files)
  .map(([path, text]) => {
    const id = path.replace(/^.*\//, "").replace(/\.site\.json$/, "");
    return { id, title: titleOf(id), text };
  })
  .sort((a, b) => Number(b.id === FIRST) - Number(a.id === FIRST) || a.id.localeCompare(b.id));
