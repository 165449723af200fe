import { NO_GROUND } from "./noGround.js";

/** Water on the ground: its way from a place, what drains to a work, ditches and hollows. */
export const water = {
  tool: "Water from here",
  toolTitle: "Tap the ground to see where its water runs",
  first: "Tap where rain falls; the way of its water is drawn. Esc to leave it.",
  next: "Tap another place, or Done.",
  noGround: NO_GROUND,
  asFound: "On the ground as found: what is dug, filled or drained does not change it.",
  ditchesLeftOut: "Ditches that are drawn are not in it.",
  ways: "Ways of the water",
  columns: { way: "Way", length: "Long", fall: "Falls", hollows: "Hollows", keep: "Keep" },
  noHollow: "none",
  hollowDeep: (depth: string) => `${depth} deep`,
  keep: "Keep as flood path",
  keepThis: (way: string) => `Keep way ${way} as a flood path`,
  kept: "Kept",
  takeBack: "Take back",
  clear: "Clear",
  done: "Done",
  steps: {
    keep: "keep a way of water as a flood path",
    ditch: (work: string) => `add the ditch above ${work}`,
  },
  ditchAdded: "The ditch is drawn; it stands among the limits on the Survey leaf.",
  work: {
    title: "Water",
    drains: (area: string) => `About ${area} of slope drains to it.`,
    together: (area: string, within: string) =>
      `${area} of it comes in within ${within} of one place.`,
    none: "No slope drains to it.",
    turned: (area: string) => `A drawn ditch leads the water of about ${area} past it.`,
    brought: (area: string) => `A drawn ditch brings it the water of about ${area} more.`,
    show: "Show the slope that drains to it",
    longest: (length: string, fall: string) => `Longest way: ${length}, falling ${fall}.`,
    standing: (depth: string) => `Water can stand ${depth} deep in the hollow there.`,
    ditch: (length: string, fall: string, high: string, low: string) =>
      `A ditch above it: ${length} long, falling ${fall}, from ${high} to ${low}.`,
    through: (works: string) => `It would go through ${works}: lead it round, or move one of them.`,
    into: (works: string) =>
      `It would let its water go into ${works}: add it only with a way past, or a ditch above that too.`,
    offLot: (lot: string) => `It would leave the lot over ${lot}: keep it on your own ground.`,
    crosses: (limits: string) =>
      `It would cross ${limits}: lead it round, or ask whose that is first.`,
    ends: (limits: string) => `It would end at ${limits}: let its water go elsewhere.`,
    near: (limits: string) => `It would come near ${limits}: keep off, or ask first.`,
    letsGo: (limits: string) => `The water that it lets go would run to ${limits}.`,
    asked: (limit: string, is: string, wanted: string) => `${limit} (${is} off, asked ${wanted})`,
    clear:
      "It meets no other work and none of the limits that are drawn. What is not drawn, such as a line in the ground, may still be in its way.",
    add: "Add this ditch",
    drawnOnly:
      "It is drawn as a limit: it takes no earth from the figures and leaves the surveyed ground as it is.",
  },
  site: {
    title: "Water",
    aside: "on the ground as found",
    works: "What drains to each work",
    columns: { work: "Work", drains: "Slope", stands: "Stands", ditch: "Ditch above" },
    noWorks: "No work has a place on the slope yet.",
    showOne: (work: string) => `Show the slope that drains to ${work}`,
    ditches: "Drawn ditches",
    ditchColumns: { ditch: "Ditch", length: "Long", high: "Higher end", low: "Lower end" },
    offSurvey: "leaves the survey",
    level: "level: leads nowhere",
    ditchSays:
      "A drawn ditch changes nothing in the survey. It is taken to carry what runs into it to its lower end, if it is dug to fall all the way, large enough, and kept clear.",
    hollows: "Hollows",
    hollowColumns: { hollow: "Lowest place", deep: "Deep", area: "Area", spills: "Spills at" },
    noHollows: (depth: string) => `No hollow of the survey holds ${depth} of water or more.`,
    more: (count: string) => `${count} smaller ones are not listed.`,
    none: "–",
    meets: (length: string, works: string) => `${length}, meets ${works}`,
    how: "Steepest way down the surveyed triangles, hollows filled. Rain, soaking in and what the survey missed are not in it.",
  },
};
