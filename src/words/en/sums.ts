/** Which machine costs least, what a day is, and the range beside the cost. */
export const sums = {
  digger: {
    cheapest: (name: string) => `Cheapest that can: ${name}`,
    cheapestNone: "Cheapest that can",
    takeCheapest: "take the cheapest digger",
    compared: (whole: string, hire: string, calendar: string) =>
      `${whole} the whole job, ${hire} of it hire; ${calendar} on the calendar; `,
    days: (working: string) => `${working} d`,
    says: "Each with its own schedule: hire as under “Hire”, and the whole job as under Cost. The job’s days, waits and all. Of equals the one that is done first.",
  },
  strip: {
    opens: ": where it stands and how it was reached",
    days: (calendar: string) => `working, ${calendar} on the calendar`,
    daysShort: (calendar: string) => `of ${calendar}`,
    range: "8 in 10 runs",
    isSum: "sum of the likely",
    rangeHint: (middle: string) =>
      `One run in ten comes out below, one in ten above. Half of the runs are above ${middle}: that is not the sum of the likely figures shown here, since what goes wrong adds more than what goes well saves.`,
    waiting: "…",
    rangeShort:
      "The range in the strip is of the runs: one in ten comes out below it, one in ten above. This sum takes every figure at its likely value, and may lie outside it.",
    notYet:
      "The range is worked out once nothing has been changed for two seconds; open Cost to have it sooner, or on a large survey.",
  },
  workings: {
    cut: "How the cut is reached",
    cutSays:
      "What each work takes out, as it lies in the ground (in the bank), in the order of building. Earth that a later work digs out again counts again.",
    rock: "How the rock is reached",
    rockSays:
      "What of the cut is rippable or hard rock. Between the probes and beyond them its depth is reckoned, not known.",
    noRock:
      "None of the cut is rippable or hard rock, as the probes have it. Between them and beyond them its depth is reckoned, not known.",
    spoil: "How the spoil is reached",
    spoilSays: (factors: string) =>
      `What is cut, less what goes back, is left over; heaped, each material takes more room than in the bank (${factors}).`,
    cutBank: "Cut, bank",
    backBank: "less what goes back, bank",
    leftBank: "left over, bank",
    leftLoose: "left over, loose",
  },
  start: {
    span: (east: string, north: string, height: string) =>
      `They span ${east} × ${north}, and ${height} of height: if that is not your lot, the numbers are in another unit.`,
  },
};
