/** Edits of a plan's particulars and of what a person answers on the permit's list. */
import type { ChecklistAnswer, Project, Site } from "./schema.js";

/** Changes particulars of the plan; an empty or undefined one goes away. */
export function setProject(
  site: Site,
  change: { [K in keyof Project]?: Project[K] | undefined },
): Site {
  const entries = Object.entries({ ...site.project, ...change });
  const project = Object.fromEntries(
    entries.filter(([, value]) => value !== undefined && value !== ""),
  ) as Project;
  return { ...site, project };
}

/** Answers one item of the list in place of an earlier answer; `null` takes the answer back. */
export function answerChecklist(
  site: Site,
  item: string,
  answer: Omit<ChecklistAnswer, "item"> | null,
): Site {
  const others = (site.checklist ?? []).filter((one) => one.item !== item);
  return { ...site, checklist: answer === null ? others : [...others, { ...answer, item }] };
}
