/** What stands on sheets of profiles, sections and details. */
export const sheetsSections = {
  bothScales: (inWords: string, ratio: string) => `${inWords} (${ratio})`,
  notKnown: "–",
  part: (title: string, n: number, of: number) => `${title} (${n} of ${of})`,
  layers: {
    earth: "Ground and fill",
    found: "Ground as found",
    finished: "Finished ground",
    dug: "Edge of what is dug",
    rock: "Top of rock",
    pipes: "Pipes",
    names: "Names",
    heights: "Elevations",
    table: "Table",
    dimensions: "Dimensions",
    water: "Water",
  },
  lines: {
    found: "Ground as found",
    finished: "Finished ground",
    dug: "Edge of what is dug",
    rock: "Top of rock, from the probes",
    pipe: "Pipe, inside and walls",
    stage: "Water level",
  },
  profile: {
    sheet: "Pipe profiles",
    heading: (n: number, names: string) => `Profile ${n}: ${names}`,
    /** A long chain by its two ends. */
    fromTo: (first: string, last: string) => `${first} … ${last}`,
    scales: (along: string, up: string, times: string) =>
      `Along ${along}, up ${up}: heights are drawn ${times} times as large`,
    scalesEven: (along: string) => `Along and up ${along}`,
    scaleNote: (up: string, times: string) => `along; up ${up}, heights × ${times}`,
    scaleNoteAlike: "along and up alike",
    scaleNoteEach: "along; heights as said at each",
    cleanout: "Cleanout",
    bend: (degrees: string) => `Bend ${degrees}°`,
    over: (name: string) => `Over ${name}`,
    under: (name: string) => `Under ${name}`,
    into: (name: string) => `Into ${name}`,
    outOf: (name: string) => `Out of ${name}`,
    from: (name: string) => `From ${name}`,
    onTo: (name: string) => `On to ${name}`,
    start: "Start",
    end: "End",
    falls: (length: string, fall: string) => `${length} in plan, falls ${fall}`,
    rises: (length: string, fall: string) => `${length} in plan, rises ${fall}`,
    level: (length: string) => `${length} in plan, level`,
    leastCover: (cover: string) => `least cover ${cover}`,
    depthUnknown: (name: string) => `${name}: depth not known, find it by hand`,
    /** Before the bars that measure a profile whose heights are drawn larger. */
    barAlong: "along",
    barUp: "up",
    notListed: (count: number) =>
      `${count} more ${count === 1 ? "break" : "breaks"} of grade or ground ${count === 1 ? "is" : "are"} drawn and not listed`,
    rows: {
      station: (unit: string) => `Along, ${unit}`,
      found: (unit: string) => `Ground as found, ${unit}`,
      finished: (unit: string) => `Finished ground, ${unit}`,
      invert: (unit: string) => `Invert, ${unit}`,
      depth: (unit: string) => `Found ground to invert, ${unit}`,
      floor: (unit: string) => `Trench floor, ${unit}`,
      cover: (unit: string) => `Cover on the pipe, ${unit}`,
    },
  },
  detail: {
    sheet: "Details",
    scaleNote: "As said at each",
    heading: (n: number, name: string) => `Detail ${n}: ${name}`,
    toScale: (scale: string, said: string) => `${scale}. ${said}`,
    atStation: (along: string) => `Across, ${along} along`,
    acrossBed: (long: string, wide: string) => `Across; ${long} long and ${wide} wide outside`,
    bedding: "bedding",
    pipes: "pipes",
    zoneAbove: "zone over",
    backfill: "backfill",
    floor: "floor",
    inside: "inside",
    ground: (height: string) => `Finished ground ${height}`,
    floorAt: (height: string) => `Trench floor ${height}`,
    backfillOf: (material: string) => `Backfill: ${material}`,
    crowned: ", heaped for settling",
    zoneOf: (material: string) => `Pipe zone: ${material}`,
    beddingOf: (material: string) => `Bedding: ${material}`,
    pipe: (name: string, material: string, outside: string, invert: string) =>
      `${name}, ${material === "" ? "" : `${material}, `}${outside} outside, invert here ${invert}`,
    cover: (least: string) => `least cover on its way ${least}`,
    wanted: (cover: string) => `wanted ${cover}`,
    bedTop: (height: string) => `Top of walls ${height}`,
    bedBase: (height: string) => `Base ${height}`,
    overflow: (height: string) => `Overflow, invert ${height}`,
    laterals: (each: {
      name: string;
      count: number;
      inside: string;
      long: string;
      hole: string;
      apart: string;
    }) =>
      `${each.name}: ${each.count} ${each.count === 1 ? "lateral" : "laterals"} ${each.long} long, ${each.inside} inside; holes ${each.hole}, ${each.apart} apart`,
    tankBed: (tank: string) => `Bedding of ${tank}`,
    tankBedSaid: (long: string, wide: string) =>
      `One side of its foot; floor of the hole ${long} by ${wide}`,
    tankUnderside: (height: string) => `Underside of tank ${height}`,
    tankBedding: (deep: string, material: string) =>
      `Bedding: ${deep} of ${material}, level, over all of the floor`,
    holeFloor: (height: string) => `Floor of the hole ${height}`,
    floats: (tank: string) => `${tank}, float levels`,
    floatsSaid: "Inside as the estimate takes it; walls as its floor",
    off: "Pump off",
    on: "Pump on",
    alarm: "Alarm",
    full: "Reserve full",
    chamberCover: "Underside of cover",
    chamberFloor: "Inside floor",
    kept: (volume: string) => `${volume} stay below`,
    drawn: (volume: string) => `${volume} a start, what runs back included`,
    aboveAlarm: {
      inlet: (volume: string) => `${volume} free to the inlet`,
      cover: (volume: string) => `${volume} free above`,
    },
  },
  notes: {
    title: "Notes to the details",
    wiring: (names: string) =>
      `A licensed electrician wires what runs in ${names}, with a disconnect in sight of the pump (NFPA 70 (NEC) 430.102).`,
    cover: (wanted: string, names: string, source: string) =>
      `Ground wanted over ${names}: ${wanted} (${source}).`,
    risers: (from: string, source: string) =>
      `Where ${from} or more lies over a tank, its lids come up to the ground in risers, closed and fastened (${source}).`,
    bedding:
      "Bedding of a tank is compacted and levelled before the tank is set; no stone or ridge stands up in it (common practice, no source; the tank's maker decides).",
    sameLine: (names: string) =>
      `In ${names} the model lays all pipes on one line, each at its own height: details and volumes show them so. Lay them side by side, as far apart as local codes ask.`,
    uplift: (name: string, met: boolean, factor: string, wanted: string) =>
      `${name}, empty in groundwater as ${met ? "the probes met it" : "high as given"}: weight ÷ uplift ${factor}, wanted ${wanted}.`,
    barrier: (long: string, off: string, bare: string, source: string) =>
      `Erosion barrier ${long} long, ${off} below the lower edge of the ${bare} of bare ground (${source}).`,
    decide:
      "Figures are the site file's and the estimate's. Local codes, the maker's sheets and licensed practice decide.",
  },
  winds: ["north", "northeast", "east", "southeast", "south", "southwest", "west", "northwest"],
  cut: {
    sheet: "Sections",
    heading: (letter: string, name: string, way: string) =>
      `Section ${letter}–${letter}′: ${name}, ${way}`,
    along: "along",
    across: "across",
    looking: (wind: string) => `Looking ${wind}`,
    makersTank: "The tank's outside; its walls, lids and fittings are its maker's",
    both: (one: string, other: string) =>
      `${one}; ${other.charAt(0).toLowerCase()}${other.slice(1)}`,
    levelAt: (height: string, name: string) => `${height}  ${name}`,
    deep: (depth: string) => `${depth} deep`,
    sized: (size: string, name: string) => `${size} ${name}`,
    level: {
      ground: "Finished ground",
      tankTop: "Top of tank",
      inlet: "Inlet, invert",
      outlet: "Outlet, invert",
      outletWater: "Outlet, invert, and water",
      pumpStarts: "Water, pump starts",
      lowWater: "Low water, pump stops",
      underside: "Underside of tank",
      floor: "Floor of the hole",
      waterMet: "Groundwater, as met",
      waterGiven: "Groundwater, as given",
      padTop: "Finished pad",
      padMiddle: "Finished pad, in its middle",
      subgrade: "Under the course",
      bedTop: "Top of bed",
      bedBase: "Base of bed",
      overflow: "Overflow, invert",
    },
    size: {
      bedding: "bedding",
      tank: "tank",
      overTank: "over the tank",
      course: "course",
      bed: "bed",
      pad: "pad",
      tankLong: "long",
      tankWide: "wide",
      floor: "floor",
      opening: "opening at the ground",
      changed: "ground changed",
    },
  },
};
