/** An example site that comes with the app. */
export interface Example {
  /** File name without its ending, such as "alder-flat". */
  id: string;
  /** Name to show before the file is read. */
  title: string;
  /** Fetches the site file as it stands; rejects when it cannot be fetched. */
  read: () => Promise<string>;
}

const files = import.meta.glob<string>("../../shared/sites/*.site.json", {
  query: "?raw",
  import: "default",
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
  .map(([path, read]) => {
    const id = path.replace(/^.*\//, "").replace(/\.site\.json$/, "");
    return { id, title: titleOf(id), read };
  })
  .sort((a, b) => Number(b.id === FIRST) - Number(a.id === FIRST) || a.id.localeCompare(b.id));
