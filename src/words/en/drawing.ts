/** Texts of drawing in the scene; functions where a figure or a name stands in them. */
export const drawing = {
  /** What can be placed, as it stands in a sentence. */
  kinds: {
    tank: "tank",
    bed: "raised bed",
    probe: "probe",
    pad: "pad",
    trench: "trench",
    field: "field trench",
    building: "building",
    strip: "topsoil strip",
    outlet: "drain outlet",
    limit: "limit",
  },
  hint: {
    bend: "bend",
    corner: "corner",
    /** What a hand does to set a place. */
    click: "Click",
    tap: "Tap",
    point: (act: string, name: string): string => `${act} the ground where the ${name} goes.`,
    first: (act: string, mark: string, name: string): string =>
      `${act} the first ${mark} of the ${name}, or type its place.`,
    next: (act: string, mark: string): string => `${act} the next ${mark}.`,
    finish: (act: string, mark: string, done: string): string =>
      `${act} the next ${mark}, or finish with ${done}.`,
    byKeys: "Enter or a double click",
    missed:
      "No ground there: choose a place within the survey, type one in the form, or add points there on the Survey leaf.",
    back: "Take back",
    done: "Done",
    cancel: "Cancel",
  },
  noWay: "Which way? Type a bearing too, or point the way that the leg goes.",
  outlineFault: (problem: string): string =>
    `That outline ${problem}. Take a corner back and set it elsewhere.`,
  outletName: "Drain outlet",
  /** Names of steps of the history. */
  placed: (name: string): string => `place ${name}`,
  placedOutlet: "place a drain outlet",
  steps: {
    corner: (name: string): string => `move a corner of ${name}`,
    side: (name: string): string => `add a corner to ${name}`,
    turn: (name: string): string => `turn ${name}`,
    remove: (name: string): string => `remove a corner of ${name}`,
  },
  corner: {
    title: (number: string, name: string): string => `Corner ${number} of ${name}`,
    remove: "Remove corner",
    letGo: "Close",
    move: (mark: string, number: string, name: string): string =>
      `Move ${mark} ${number} of ${name}`,
    add: (mark: string, number: string, name: string): string =>
      `Add a ${mark} after ${mark} ${number} of ${name}`,
    tooFew: (name: string, least: string): string =>
      `${name} needs ${least} corners at least: this one stays.`,
    crosses: (name: string, problem: string): string =>
      `Without that corner the outline of ${name} ${problem}. It stays.`,
  },
  limit: {
    title: "Limits",
    aside: "setbacks are your local rules'",
    none: "None yet. Wells, lot lines, watercourses, buried and overhead lines belong here.",
    placeA: "+ Place a",
    place: "on the ground",
    name: "Name",
    kind: "Kind",
    setback: "Setback",
    setbackNote:
      "Kept from it in plan by every tank, field, pipe and pad. Your local rule; ask the office that gives the permit.",
    setbackTable: (rows: string): string => `The table asks ${rows}.`,
    setbackRow: (distance: string, part: string): string => `${distance} of a ${part}`,
    setbackGreater: "Of each, the greater is asked: this setback or the table's.",
    setbackReplaced: (own: string): string => `This limit goes by its own ${own} instead.`,
    setbackReplaces: "Use this setback in place of the table's rows",
    shape: "Its line",
    open: "is open",
    closed: "closes on itself",
    corners: "corners",
    remove: "Remove this limit",
    step: (what: string, name: string): string => `${what} of ${name}`,
    steps: {
      name: "name",
      kind: "kind",
      setback: "setback",
      replaces: "setback in place of the table's",
      place: "place",
      shape: "shape",
      corners: "corners",
    },
  },
  keys: {
    add: "Make a corner at a + handle that has the focus",
    remove: "Remove the corner whose handle is chosen",
  },
  outletPlace: "+ Outlet on the ground",
  noBuilding: "That building is no longer there.",
  offSurvey: "off the survey",
  east: "East",
  north: "North",
  /** Where the pointer is, printed. */
  at: (east: string, north: string): string => `E ${east}, N ${north}`,
  length: "Length",
  bearing: "Bearing",
  setCorner: "Set",
  lengthAboveZero: "A length above zero is needed.",
  /** Figures while drawing; each is given printed. */
  leg: (length: string): string => `${length} from the last`,
  angle: (degrees: string): string => `${degrees} to the last leg`,
  rightAngle: "90° to the last leg",
  heading: (bearing: string): string => `bearing ${bearing}`,
  running: (length: string): string => `${length} in all`,
  area: (area: string): string => `area ${area}`,
  snap: "Snap",
  snapTitle: "Holds corners, edges, right angles and round lengths. Alt lets go for the moment.",
  /** What holds a place. */
  hold: {
    cornerOf: (name: string): string => `corner of ${name}`,
    bendOf: (name: string): string => `bend or end of ${name}`,
    middleOf: (name: string): string => `middle of ${name}`,
    edgeOf: (name: string): string => `edge of ${name}`,
    alongOf: (name: string): string => `on ${name}`,
    close: "first corner: closes it",
    square: "right angle",
    straight: "straight on",
    first: "in line with the first corner",
    contour: (elevation: string): string => `contour ${elevation}`,
    length: (length: string): string => `round length ${length}`,
    probe: (id: string): string => `probe ${id}`,
    point: (id: string): string => `point ${id}`,
  },
};
