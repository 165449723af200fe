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
    heights: "Contour heights",
    planned: "Works to come",
    thinned: (drawn: string, all: string, triangles: string) =>
      `The ground is drawn from ${drawn} of ${all} spot heights, in ${triangles} triangles.`,
    trees: "Trees",
    trunks: "Tree trunks",
    barrier: "Erosion barrier",
    barrierEdge: "Erosion barrier, its edge",
    wires: (line: string) => `${line}, its wires`,
    ring: (place: string) => `${place}, ring about it`,
    buried: "Below ground",
    outlines: "Outlines",
    edges: "Edges of works",
    names: "Names",
    north: "North",
    title: "Title",
    heading: (site: string, stage: string) => `${site}: ${stage}`,
    subtitle: (scheme: string, date: string) => `${scheme} · ${date}`,
    notToScale: "Not to scale: slanted view.",
  },
  /** The section of the Handover leaf. */
  page: {
    title: "Pictures",
    says: "The ground as you see it now: turn it first, and choose the stage.",
    noScene:
      "The ground is not drawn on this screen. The pictures are drawn without it, from where the slope shows best, of the stage that is chosen.",
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
    lateByDay: "the scene was not drawn by day in time",
    stageLate: (stage: string) => `the stage “${stage}” was not drawn in time`,
  },
};
