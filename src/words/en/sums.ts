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
    days: (calendar: string) => `working, ${calendar} on the calendar`,
    daysShort: (calendar: string) => `of ${calendar}`,
    range: "every likely figure; 8 in 10 runs",
    rangeHint: (middle: string) =>
      `One run in ten comes out below, one in ten above. Half of the runs are above ${middle}: that is not the sum of the likely figures shown here, since what goes wrong adds more than what goes well saves.`,
    waiting: "…",
    notYet:
      "The range is worked out once nothing has been changed for two seconds; open Cost to have it sooner, or on a large survey.",
  },
  start: {
    span: (east: string, north: string, height: string) =>
      `They span ${east} × ${north}, and ${height} of height: if that is not your lot, the numbers are in another unit.`,
  },
};
