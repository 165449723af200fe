/** A word of the trade and what it means, in one or two sentences. */
export interface TermWords {
  /** As it stands in a list of terms. */
  name: string;
  /** One or two plain sentences. */
  says: string;
  /** Other words that people look for it by. */
  also?: string;
}

const term = (name: string, says: string, also?: string): TermWords =>
  also === undefined ? { name, says } : { name, says, also };

/** Terms of earthwork. */
const earth = {
  cut: term("Cut", "Earth that is dug out, counted as it lies in the ground before digging."),
  fillEarth: term(
    "Fill",
    "Earth or gravel that is put in, counted in the shape that it is left in.",
  ),
  overdig: term(
    "Overdig",
    "The extra width dug around a thing on each side, so that people and bedding have room beside it.",
    "working room",
  ),
  spoil: term(
    "Spoil",
    "Dug earth that does not go back into the hole. It has to be spread, piled or hauled away, and it takes more room loose than it did in the ground.",
    "surplus",
  ),
  daylight: term(
    "Daylight",
    "Where a sloped wall comes out at the ground: the edge of the opening that a hole leaves.",
    "opening at the ground",
  ),
  bench: term(
    "Bench",
    "A level step dug into the wall of a hole, so that no single face is as high as the whole hole is deep.",
    "step",
  ),
  runPerRise: term(
    "Run per rise",
    "How flat a wall is: a wall of 1½ : 1 goes back one and a half for every one that it goes up. 0 is upright.",
    "slope batter",
  ),
  bankVolume: term(
    "Bank volume",
    "The volume of earth as it lies in the ground, before it is dug.",
    "in place",
  ),
  looseVolume: term(
    "Loose volume",
    "The volume of the same earth once it is dug and lies in a heap or a truck. It is always more than bank.",
  ),
  compactedVolume: term(
    "Compacted volume",
    "The volume of earth or gravel after it is put in and packed. It is less than it was loose.",
    "in place",
  ),
  swell: term(
    "Swell",
    "How much more room earth takes loose than in the ground: a swell of 25% makes 10 into 12½.",
    "bulking",
  ),
  crown: term(
    "Crown",
    "Backfill heaped a little over the ground, so that it lies level after it has settled.",
  ),
  rippable: term(
    "Rippable",
    "Weathered rock that a digger with the right bucket or tooth can pull apart; harder rock needs a hammer.",
  ),
} as const;

/** Terms of pipes, pumps and tanks. */
const water = {
  invert: term(
    "Invert",
    "The lowest point inside a pipe, where the water runs. Levels of pipes are given at it.",
  ),
  fall: term(
    "Fall",
    "How far a pipe goes down for its length. A fall of 2% is a drop of 2 in every 100.",
    "slope gradient",
  ),
  cover: term(
    "Cover",
    "The depth of earth over the top of a pipe. It guards the pipe against frost and wheels.",
  ),
  bedding: term(
    "Bedding",
    "The layer of gravel or sand that a pipe or tank is laid on, so that it rests evenly.",
  ),
  pipeZone: term(
    "Pipe zone",
    "The fill beside a pipe and just over it, of fine material that is packed by hand.",
    "haunching",
  ),
  head: term(
    "Head",
    "Pressure told as a height of water. A pump that makes 10 of head lifts water that far when none flows through it.",
    "pressure",
  ),
  dose: term(
    "Dose",
    "What a pump sends to the field in one run, from its float starting it to its float stopping it.",
  ),
  drainBack: term(
    "Drain-back",
    "Water that runs back out of a rising pipe into the tank when the pump stops. It is pumped again with every dose.",
  ),
  residualHead: term(
    "Residual head",
    "The head left at the far end of a lateral while it runs, which pushes the water out of its holes.",
    "squirt height",
  ),
  lateral: term(
    "Lateral",
    "A pipe with small holes along the bed, which shares the water over it.",
  ),
  uplift: term(
    "Uplift",
    "The push of groundwater on a buried tank, which can float it out of the ground when it is empty.",
    "buoyancy floating",
  ),
  sizing: term(
    "Sizing",
    "Working out how big a tank and a field must be from the flow in a day and from the soil.",
  ),
  designFlow: term(
    "Design flow",
    "The flow in a day that the system is laid out for. Local rules set it, mostly by bedrooms.",
  ),
} as const;

/** Terms of money and doubt. */
const money = {
  contingency: term(
    "Contingency",
    "Money set aside for what is not known yet, as a share of the rest.",
    "reserve",
  ),
  simulationMiddle: term(
    "Middle of the runs",
    "The job is worked out many times with prices, ground and speed drawn anew. Half of the runs come out dearer than the middle and half cheaper.",
    "simulation median likely",
  ),
  lowHigh: term(
    "Low and high",
    "One run in ten comes out below the low, and one in ten above the high.",
    "range simulation",
  ),
  setback: term(
    "Setback",
    "The distance that local rules ask to be kept from a well, a boundary, water or a building.",
  ),
  probe: term(
    "Probe",
    "A place where somebody pushed a rod, bored or dug, to find out how thick each layer of the ground is.",
    "auger test pit",
  ),
  spotHeight: term("Spot height", "The measured height of the ground at one place.", "point"),
} as const;

/** The words of the trade that the book explains. */
export const terms = { ...earth, ...water, ...money };
