/** What a section calls the works in it. */
import type { Section } from "../estimate/index.js";
import type { Site } from "../site/index.js";

/** Name of a work of the section's scheme; its id when there is no such work any more. */
export function nameOfWork(site: Site, section: Section, id: string): string {
  const works = site.schemes.find((scheme) => scheme.id === section.scheme)?.works ?? [];
  return works.find((work) => work.id === id)?.name ?? id;
}
