/** Which machine costs least, what a day is, and the range beside the cost. */
export const sums = {
  digger: {
    cheapest: (name: string) => `Cheapest that can: ${name}`,
    cheapestNone: "Cheapest that can",
    takeCheapest: "take the cheapest digger",
    compared: (whole: string, hire: string) => `${whole} the whole job, ${hire} of it hire; `,
    days: (working: string, calendar: string) => `${working} d, ${calendar} on the calendar`,
    says: "Each with its own schedule: hire as under “Hire”, and the whole job as under Cost. The job’s days, waits and all. Of equals the one that is done first.",
  },
};
