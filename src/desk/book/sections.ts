import type { Leaf } from "../../store/index.js";

/** A part of a leaf, by the words that its heading begins with. */
export interface Section {
  leaf: Leaf;
  heading: string;
}

const of = (leaf: Leaf, ...headings: string[]): Section[] =>
  headings.map((heading) => ({ leaf, heading }));

/** The parts of the leaves that can be searched for; a test holds them against the headings. */
export const SECTIONS: readonly Section[] = [
  ...of("survey", "Probes", "Layers", "Points", "Limits"),
  ...of("dig", "The whole dig"),
  ...of("flow", "Joints at tanks", "Design flow and sizes", "Groundwater and empty tanks"),
  ...of("machines", "Time", "The job by day", "Hire", "Machines held against this job"),
  ...of("machines", "The way in", "Setting the tank"),
  ...of("cost", "How sure it is", "Lines", "Your own lines, waste and tax", "Truckloads"),
  ...of("cost", "Side by side"),
  ...of("handover", "The file", "On paper", "Findings", "Cautions"),
  ...of("handover", "The plan's particulars", "What an office asks for", "Rules of this site"),
];
