/** The part of the Handover leaf where sheets and files are made. */
export const handing = {
  sheets: {
    title: "Printed sheets",
    says: "Drawings to scale with the cautions, the permit's list and the cost, for the inspector, the crane's driver and the neighbor.",
    paper: "Paper",
    paperStep: "paper of the sheets",
    look: "Look at the sheets…",
    makePdf: "Make the PDF",
    makingPdf: "Making the PDF…",
    always:
      "The first sheets carry the cautions, the permit's list and what was found: they are always printed.",
    makeDrawings: "PDF and each sheet as SVG",
    dialog: "Sheets",
    close: "Close the sheets",
    drawing: "Drawing the sheets…",
    failed: (why: string) => `The sheets could not be drawn: ${why}`,
    again: "Try again",
    list: "Sheets of the set",
    numbered: (number: number, of: number, title: string) => `${number} of ${of} · ${title}`,
    leftOut: (title: string) => `${title} (not printed)`,
    print: "Print this sheet",
    printStep: (title: string, printed: boolean) =>
      printed ? `print “${title}”` : `leave out “${title}”`,
    notPrinted: "This sheet is left out of the set. Tick it to see it and have it printed.",
    before: "Sheet before",
    after: "Next sheet",
    larger: "Larger",
    whole: "Whole sheet",
    scale: "Scale",
    asScale: (ratio: string, inWords: string) => `${inWords} (${ratio})`,
    windowStep: (title: string) => `what “${title}” shows`,
    showAll: "Show all of it",
    dragHint: "Drag the drawing to move it on the paper; arrow keys do the same.",
    wholeToMove: "A drawing can be moved on its paper while the whole sheet is in sight.",
    picture: (title: string) => `Sheet: ${title}`,
  },
  files: {
    title: "Files to take away",
    says: "Each says when it was made, and holds the cautions. They are made on this device; nothing is sent anywhere.",
    make: "Make",
    making: (kind: string) => `Making: ${kind}`,
    cancel: "Cancel",
    everything: "All of them in one zip",
    zipName: "all files",
    failed: (why: string) => `Not made: ${why}`,
    made: (names: string) => `Made: ${names}`,
    cancelled: "Cancelled; nothing was saved.",
    about: {
      report:
        "Every figure opens to its formula, what went in and its source; volumes by sections, to be done again by hand. For any browser.",
      orders:
        "What to order by supplier, in tons, loads and lengths, with waste and prices: CSV and text.",
      stakes:
        "Points to mark the digging on the ground: coordinates, tapes from two marks, GPS. CSV and GPX.",
      tables:
        "Quantities, machines, cost and schemes as a workbook that reckons (XLSX) and as CSV.",
      models: "The ground and the works at every stage, for any 3D viewer: .glb.",
      plan: "Survey, limits, works and pipes for a map program.",
      view: "A slanted drawing of the open holes and of the finished ground, in layers: SVG.",
      pictures:
        "The dug and the finished ground with names and legend (PNG), turning once, and stage by stage (GIF). Drawn from where the slope shows best; no scene is needed.",
      surfaces: "The ground as found, dug and backfilled for machine guidance and survey programs.",
    } as Readonly<Record<string, string>>,
  },
  stakes: {
    title: "How to set out",
    offset: "Offset stakes each side",
    interval: "Between pipe stations",
    first: "First mark",
    second: "Second mark",
    best: "chosen for you",
    marksSay:
      "Two things that stay in the ground, from which you tape. A survey point that is picked in the picture is in both lists.",
    used: (a: string, b: string, worst: string, longest: string) =>
      `${a} and ${b}: the arcs of the worst stake cross at ${worst}°, the longest tape is ${longest}.`,
    flat: (flat: number, of: number, flattest: number) =>
      `At ${flat} of ${of} stakes the arcs cross at less than ${flattest}°, nearly in line: a slip of the tape moves such a stake by three times as much or more (common practice, no source).`,
    better: (a: string, b: string, worst: string, longest: string) =>
      `Better: ${a} and ${b}, at worst ${worst}°, longest tape ${longest}.`,
    takeBetter: "Take the better pair",
    swapped: "That was the other mark already: the two have changed places.",
    notKept:
      "This browser keeps nothing between visits: how to set out holds until this page is left.",
    noMarks: "There are no two marks to tape from.",
  },
  message: {
    title: "A message to a supplier",
    says: "One supplier's part of the order as plain text, to paste into a message or a mail.",
    who: "Who orders",
    telephone: "Telephone",
    whoHint: "name, kept in the site file",
    whoStep: (what: string) => `${what.toLowerCase()}, of orders`,
    to: "Which supplier",
    label: "The order as text",
    copy: "Copy",
    copied: "Copied.",
    notCopied: "This browser did not let it be copied; mark the text and copy it by hand.",
  },
};
