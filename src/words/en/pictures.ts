/** Pictures of the ground that are taken away. */
export const pictures = {
  /** Layers of a drawn view, and what stands below it. */
  view: {
    found: "Ground as found",
    solids: {
      concrete: "Tanks",
      timber: "Raised beds",
      building: "Buildings",
      gravity: "Drains",
      pressure: "Pressure pipes",
      conduit: "Conduits",
    },
    contours: "Contours",
    buried: "Below ground",
    outlines: "Outlines",
    edges: "Edges of works",
    names: "Names",
    north: "North",
    title: "Title",
    subtitle: (scheme: string, stage: string, date: string) => `${scheme} · ${stage} · ${date}`,
    notToScale: "Not to scale: slanted view.",
  },
  /** The section of the Handover leaf. */
  page: {
    title: "Pictures",
    says: "The ground as you see it now: turn it first, and choose the stage.",
    noScene: "The ground is not drawn here, so there is nothing to take a picture of.",
    png: "Picture (PNG)",
    svg: "Drawing (SVG)",
    turning: "Turning (GIF)",
    stages: "Stages (GIF)",
    filming: "Taking pictures",
    caption: (site: string, scheme: string, stage: string, date: string) =>
      `${site} · ${scheme} · ${stage} · ${date}`,
    pngName: (stage: string) => `picture ${stage}`,
    turningName: (stage: string) => `turning ${stage}`,
    stagesName: "stages",
    saved: (name: string, size: number) => `Saved ${name}, ${size} kB.`,
    failed: (why: string) => `No picture was made: ${why}.`,
    noCamera: "the ground is not drawn yet",
    noFile: "this browser could not write it",
    stageLate: (stage: string) => `the stage “${stage}” was not drawn in time`,
  },
};
