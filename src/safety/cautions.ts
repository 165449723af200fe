/**
 * The standing cautions: always shown, whatever the site. One or two plain sentences each, ending
 * with the source in brackets. The rules cited are United States rules; other places have their
 * own, which the last caution says. Figures as in the reference; "recalled" marks those quoted
 * from memory.
 */
export function cautions(): string[] {
  return STANDING.map(({ text, source }) => `${text} (${source})`);
}

/** What whoever brings something to the site has to know, in the same form. */
export function deliveryCautions(): string[] {
  return DELIVERY.map(({ text, source }) => `${text} (${source})`);
}

const DELIVERY: readonly { text: string; source: string }[] = [
  {
    text: "Look at the way in before the truck leaves the road: its narrowest place, its turns, its slope, and what is buried under it.",
    source: "common practice, no source",
  },
  {
    text: "Keep a raised bed, boom or load at least 10 ft (3 m) from power lines up to 50 kV, and farther from bigger ones. If anything could come within 20 ft (6 m), ask the line's owner first.",
    source: "29 CFR 1926.600(a)(6), recalled; for cranes 1926.1408, Table A, quoted second hand",
  },
  {
    text: "Soft, wet or newly filled ground and the edge of a hole give way under a loaded truck: keep well back, and drive only where someone on the site has shown the way.",
    source: "common practice, no source",
  },
  {
    text: "Keep wheels and outriggers off tanks, their lids and septic fields, old and new: they break.",
    source: "US EPA, SepticSmart, recalled, of fields; of tanks common practice, no source",
  },
];

const STANDING: readonly { text: string; source: string }[] = [
  {
    text: "Before any digging, call the utility locate service (in the US: 811) and wait the days your state sets. It does not mark private lines: find the ones on your own lot yourself.",
    source: "29 CFR 1926.651(b); the locate call and private lines recalled",
  },
  {
    text: "Dig by hand close to a marked line: within 18 to 24 in of it, by state.",
    source: "state locate laws, quoted second hand",
  },
  {
    text: "Trench and pit walls fall without warning and bury people. Nobody goes in a hole 5 ft (1.5 m) deep or more without sloped walls, shoring or a shield, and a shallower hole can fall too. Some states say 4 ft.",
    source: "29 CFR 1926 Subpart P, 1926.652(a)(1)",
  },
  {
    text: "A competent person looks at the hole every day before work and again after rain.",
    source: "29 CFR 1926.651(k)",
  },
  {
    text: "Keep spoil, stone and machines at least 2 ft (0.6 m) back from the edge.",
    source: "29 CFR 1926.651(j)(2)",
  },
  {
    text: "In a trench 4 ft (1.2 m) deep or more, keep a ladder, stairway or ramp within 25 ft (7.6 m) of everyone; the ladder stands 3 ft above the edge.",
    source: "29 CFR 1926.651(c)(2) and 1926.1053",
  },
  {
    text: "Stay out of a hole with water in it or coming in, unless someone competent has set out how and watches the pumping.",
    source: "29 CFR 1926.651(h), recalled",
  },
  {
    text: "Never enter a septic tank or pump tank, and never lean into one, new or old: gas and lack of oxygen kill in seconds, rescuers included.",
    source:
      "hazard of hydrogen sulfide and lack of oxygen; 29 CFR 1926.651(g) asks for an air test where that could be",
  },
  {
    text: "Keep lids on, and fastened, whenever nobody works at the tank. Children fall in.",
    source: "common practice, no source",
  },
  {
    text: "Keep crane, digger boom and load at least 10 ft (3 m) from power lines up to 50 kV, and farther from bigger ones: 15 ft to 200 kV, 20 ft to 350 kV, 25 ft to 500 kV. If anything could come within 20 ft (6 m), ask the line's owner first.",
    source: "29 CFR 1926.1408, Table A, quoted second hand",
  },
  {
    text: "The crane's operator decides where it stands and whether it lifts. Give the operator the weight on the maker's ticket, the distance, and the depth of the hole. Nobody stands under the load or in the hole below it, and wind stops the lift when the crane's manual or the operator says so.",
    source: "common practice, no source; hoisting rules are in 29 CFR 1926 Subpart CC",
  },
  {
    text: "Have a licensed electrician wire the pump, with a disconnect in sight of it and the alarm on a circuit of its own.",
    source: "NFPA 70 (NEC) 430.102; 25 Pa. Code 73.46",
  },
  {
    text: "An empty tank in wet ground floats. Fill it with water, or keep the hole drained, until it is covered and the water has somewhere to go.",
    source: "Archimedes' principle; common practice, no source",
  },
  {
    text: "This is an estimate from the points and depths that were entered. It is no design and no permit: local codes, the permit office and licensed practice decide.",
    source: "the limits of this tool",
  },
];
