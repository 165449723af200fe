/** Texts of the leaf's frame and of the strip. */
export const leaf = {
  beforeYouDig: "Before you dig",
  example: "An example; try anything.",
  startOwn: "Start my own…",
  lower: "Less of the leaf, more of the ground",
  raise: "More of the leaf",
};
