/** Fields: what they ask, and why what was typed is not taken. */
export const deskFields = {
  groundThereWhichWas: (off: string, which: string, ground: string) =>
    `That is ${off} ${which} the ground there, which is at ${ground}. Was a digit dropped?`,
  below: "below",
  above: "above",
  elev: "elev.",
  sitesOwnEarth: "The site's own earth",
  nameNeeded: "A name is needed.",
  riseToRun: (value: string) => `${value} (rise to run)`,
  upFromLevel: (value: string) => `${value}° up from the level`,
  notAShare: (plain: string) => `“${plain}” was not understood: write a share such as 5%.`,
  shareOrPercent: (plain: string) =>
    `“${plain}” may be a share or percent: write it with its %, as 5%.`,
  notANumber: (text: string) => `“${text}” was not understood: write a number such as 1.5.`,
  notVolts: (text: string) => `“${text}” was not understood: write volts, such as 240, or 7.2 kV`,
  notAWholeNumber: (typed: string) =>
    `“${typed}” was not understood: write a whole number such as 4.`,
  notACount: (typed: string) => `“${typed}” was not understood: write a whole number such as 2.`,
};
