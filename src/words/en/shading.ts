/** What the scene shows of the ground and the job; functions where a figure or a name stands. */
export const shading = {
  depths: "Depth of cut and fill",
  depthsTitle: "Colour the changed ground by how far it lies under or over the ground as found",
  deepest: (depth: string) => `Deepest cut ${depth}`,
  highest: (height: string) => `Highest fill ${height}`,
  asFound: "Nothing is cut or filled at this stage",
  through: "See-through ground",
  throughTitle: "Show pipes, tanks and bedding through the ground",
};
