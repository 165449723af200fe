/** The page of one file that anyone can open: it shows one site and changes nothing. */
export const viewer = {
  made: (when: string) => `Made with Bankyard on ${when}; this page cannot change the plan.`,
  noScript:
    "Scripts are off here, so there is no picture, section or table: only what is written below. Open this file in a web browser to see all of it.",
  noTemplate:
    "The page could not be fetched: open Bankyard once with a network, then it works without.",
  scheme: "Scheme",
  save: "Save the site file",
  saved: (name: string) => `Saved as ${name}.`,
  toDark: "Night shift",
  toLight: "Day",
  range: (low: string, high: string) => `${low} to ${high}`,
  spoil: "loose",
  withDigger: (digger: string) => `with ${digger}`,
  calendarDays: (days: string) => `${days} by the calendar`,
  estimateOnly:
    "An estimate only: the ground, the rates and the prices are never quite known. Local codes, the permit and licensed practice decide.",
  badSite: "The plan in this page cannot be read",
  badSiteSays:
    "The file may have been cut short on its way: ask for it again. What is wrong with it:",
  badFigures: (fault: string) => `The figures of this scheme could not be worked out: ${fault}`,
  look: "The site",
  parts: "What is written of it",
  section: {
    show: "Section",
    title: "Show the ground cut open along a line",
    where: "Cut",
    own: "Along a line of your own",
    along: (name: string) => `${name}, lengthwise`,
    across: (name: string) => `${name}, across`,
    leg: (name: string, number: number) => `${name}, leg ${number}`,
    lot: "The lot, west to east",
    drag: "or drag A and B in the picture",
  },
  looks: { depths: "Depths", through: "See through" },
  /** Where the browser makes no picture in three dimensions. */
  drawn: {
    why: "This browser makes no 3D picture (WebGL 2), so the site is drawn in lines. Everything else is the same.",
    coming: "Being drawn…",
    left: "Turn left",
    right: "Turn right",
    larger: "Larger",
    whole: "Whole",
    alt: (site: string, stage: string, fromAbove: boolean) =>
      `${site}, ${stage}: ${fromAbove ? "seen from above, north up" : "seen at a slant"}`,
    fault: (fault: string) => `It could not be drawn: ${fault}`,
  },
  quantities: "Quantities",
  works: "Works, in building order",
  cost: "Cost",
  costSays:
    "Low and high add up every line's own end; chance seldom goes so far either way. Prices are demo prices until the maker of the plan put in their own.",
  findings: "Findings",
  goTo: (name: string) => `Show ${name} in the picture`,
  about: "About this page",
  aboutSays:
    "It asks nothing of the network and tells nobody that it was opened: all that it shows lies in this one file and is worked out on this device. The site file inside it can be saved, and opened and changed in Bankyard.",
  /** What a copy for somebody else was made without. */
  leftOut: {
    costs:
      "Made without costs: nothing of what the job costs is in this page, nor in the site file that can be saved out of it. Opened in Bankyard, that file shows demo prices.",
    names:
      "Made without names: owner, preparer, parcel, address, place on the earth and locate ticket are left out, and a name in a note is put as “…”.",
  },
  /** In the app, of a site that came as such a copy. */
  cameWithout:
    "This site came as a copy from which its maker left out costs, names or both: prices that are not your own are demo prices, and “…” in a note stands for a name or an amount.",
  /** Where the page is made. */
  making: {
    /** What the file is called after the site and scheme. */
    file: (leftOut: readonly string[]) =>
      ["page", ...leftOut.map((what) => `no ${what}`)].join(" "),
    for: "In the page and the link",
    with: {
      costs: "Costs and prices",
      names: "Names, address and parcel",
    },
    notKept:
      "This browser would not keep these ticks: look at them again after the page was loaded anew.",
    whom: "For an office that issues the permit, leave both in. For a neighbor, take both out; for someone who is to name a price, take out the costs.",
    stays:
      "What you wrote yourself in names and notes stays in, less these names and amounts of money: read it through. The demo prices of the catalogue are in every page, as part of the program.",
    title: "A page and a link",
    says: "One file that shows this site in any browser, from the disk and without a network: the picture, stages, sections, figures and findings. It cannot change the plan; the site file can be saved out of it.",
    make: "Make the page",
    made: (name: string, megabytes: string) => `Saved as ${name}, ${megabytes} MB.`,
  },
  /** The static part, for where no script runs. */
  plain: {
    what: (scheme: string) => `Earthwork plan and estimate. Scheme: ${scheme}.`,
    figures: "Figures",
  },
};
