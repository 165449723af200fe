/** How the ground is looked at: the bar over the scene, walking, framing, measuring. */
export const looking = {
  views: "View",
  orbit: "Orbit",
  plan: "Plan",
  bar: "Tools over the ground",
  more: "More",
  moreOf: "More tools over the ground",
  section: "Section",
  sectionTitle: "Cut the ground open along a line",
};
