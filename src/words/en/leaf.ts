/** Texts of the leaf's frame and of the strip. */
export const leaf = {
  beforeYouDig: "Before you dig",
  example: "An example; try anything.",
  startOwn: "Start my own…",
  lower: "Less of the leaf, more of the ground",
  raise: "More of the leaf",
  rangeOfRuns: "One run in ten comes out below, one in ten above",
  middle: (middle: string) => `middle ${middle},`,
  rangeOfLines: "All lines at their low, and all at their high: wider than it will turn out",
  widest: "at the widest",
};
