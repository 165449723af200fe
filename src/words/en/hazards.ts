/** Lines over and under the ground, the locate call, the cable's trench, and bare ground. */
export const hazards = {
  lines: {
    title: "Lines in and over the ground",
    intro:
      "Draw buried and overhead lines among the limits of the survey, with depth, height and voltage where you know them.",
    ticket: "Locate ticket, number",
    date: "Day of the call",
    days: "Working days to wait",
    notMade: "call not made",
    notKnown: "your state’s days",
    daysNote:
      "Each state sets its own; until you type them the schedule takes the usual ones and says so.",
    badDate: (text: string): string =>
      `“${text}” was not understood: write a date such as 2027-04-12.`,
    writeTicket: "locate ticket",
    writeDate: "day of the locate call",
    writeDays: "days after the locate call",
  },
  wiring: {
    label: "Wired as",
    change: "wiring",
    pvc: "Cable in plastic conduit",
    direct: "Cable without conduit",
    gfci: "120 V, 20 A at most, with GFCI",
  },
  land: {
    bare: "Ground laid bare",
    barrier: "Erosion barrier",
    goesTo: (area: string, name: string): string => `Water from ${area} of it runs to ${name}.`,
  },
};
