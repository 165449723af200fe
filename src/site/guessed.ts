import type { Probe, Site } from "./schema.js";

/** How a new probe's note says which of its depths nobody has measured yet. */
const NOT_MEASURED = "Not measured yet: ";
const BETWEEN = "; ";

/** The note of a probe whose depths are all guessed; undefined when it has none to guess. */
export function guessedNote(site: Site): string | undefined {
  const names = site.ground.layers.slice(0, -1).map((layer) => layer.name);
  return names.length === 0 ? undefined : NOT_MEASURED + names.join(BETWEEN);
}

/** Names of the layers whose depth in this probe is a guess, by its note. */
export function guessedLayers(probe: Probe): readonly string[] {
  const note = probe.note ?? "";
  return note.startsWith(NOT_MEASURED) ? note.slice(NOT_MEASURED.length).split(BETWEEN) : [];
}

/** The probe with one layer's depth as measured, m, and its note without that layer. */
export function withMeasured(probe: Probe, index: number, layer: string, depth: number): Probe {
  const thickness = probe.thickness.map((one, other) => (other === index ? depth : one));
  const guessed = guessedLayers(probe);
  if (guessed.length === 0) return { ...probe, thickness };
  const left = guessed.filter((name) => name !== layer);
  const note = left.length === 0 ? "" : NOT_MEASURED + left.join(BETWEEN);
  return { ...probe, thickness, note };
}
