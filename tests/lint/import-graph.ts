import { existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import ts from "typescript";

/** Which file imports what: our files as paths from the top, packages by their specifier. */
export type ImportGraph = ReadonlyMap<string, readonly string[]>;

/** The TypeScript file behind an import written with `.js`, or the path itself for other files. */
function sourceFile(root: string, written: string): string {
  const candidates = [written.replace(/\.js$/, ".ts"), written.replace(/\.js$/, ".tsx")];
  return candidates.find((candidate) => existsSync(path.join(root, candidate))) ?? written;
}

/**
 * Reads every TypeScript file below `folder` of the project at `root`. Type imports count too: two
 * files that need each other's types are one thing cut in half.
 */
export function importGraph(root: string, folder: string): ImportGraph {
  const graph = new Map<string, string[]>();
  for (const entry of readdirSync(path.join(root, folder), { recursive: true })) {
    const file = path.posix.join(folder, String(entry).split(path.sep).join("/"));
    if (!/\.tsx?$/.test(file)) continue;
    const { importedFiles } = ts.preProcessFile(readFileSync(path.join(root, file), "utf8"));
    const imports = importedFiles.map(({ fileName }) =>
      fileName.startsWith(".")
        ? sourceFile(root, path.posix.join(path.posix.dirname(file), fileName))
        : fileName,
    );
    graph.set(file, imports);
  }
  return graph;
}

/** The first cycle met, as the files on it with the first repeated at the end; else null. */
export function findCycle(graph: ImportGraph): string[] | null {
  const finished = new Set<string>();
  const trail: string[] = [];
  const visit = (file: string): string[] | null => {
    const at = trail.indexOf(file);
    if (at >= 0) return [...trail.slice(at), file];
    if (finished.has(file)) return null;
    trail.push(file);
    for (const next of graph.get(file) ?? []) {
      const cycle = visit(next);
      if (cycle !== null) return cycle;
    }
    trail.pop();
    finished.add(file);
    return null;
  };
  for (const file of graph.keys()) {
    const cycle = visit(file);
    if (cycle !== null) return cycle;
  }
  return null;
}
