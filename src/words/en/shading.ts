/** What the scene shows of the ground and the job; functions where a figure or a name stands. */
export const shading = {
  depths: "Depth of cut and fill",
  depthsTitle: "Colour the changed ground by how far it lies under or over the ground as found",
  deepest: (depth: string) => `Deepest cut ${depth}`,
  highest: (height: string) => `Highest fill ${height}`,
  asFound: "Nothing is cut or filled at this stage",
  through: "See-through ground",
  throughTitle: "Show pipes, tanks and bedding through the ground",
  machines: "Show machines",
  machinesTitle: "Show the digger and the crane at their work",
  digger: (weight: string, wide: string) => `${weight} digger, ${wide} wide`,
  digging: (work: string) => `Drawn where it might stand to dig ${work}`,
  crane: (name: string, far: string) => `${name}, ${far} from its axis to the tank`,
  craneOnPads: (name: string, far: string, apart: string) =>
    `${name}, ${far} from its axis to the tank, pads ${apart} apart`,
  lifting: (tank: string, stand: string) =>
    `Drawn at ${stand} for ${tank}; the operator decides where it stands`,
  notLifting: (tank: string, stand: string) =>
    `From ${stand} something speaks against lifting ${tank}: see Machines`,
  moveStand: (stand: string) => `Drag the crane to another place: ${stand}`,
  drawing: "Contours and heights",
  drawingAside: "kept on this device",
  contours: "Contours every",
  asRelief: (step: string) => `as suits the lot (${step})`,
  heights: "Heights at the points",
  heightsLeaf: "while this step is open",
  heightsOn: "always",
  heightsOff: "never",
  noStage: "no other stage",
  earlier: (stage: string) => `Back to ${stage}`,
  later: (stage: string) => `On to ${stage}`,
};
