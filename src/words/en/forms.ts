/** Texts of the fields and forms; functions where a figure or a name stands in them. */
export const forms = {
  moreThan: (least: string, got: string) => `More than ${least} is needed; got ${got}.`,
  atLeast: (least: string, got: string) => `At least ${least} is needed; got ${got}.`,
  atMost: (most: string, got: string) => `At most ${most} can be used here; got ${got}.`,
  between: (least: string, most: string, got: string) =>
    `Between ${least} and ${most} can be used here; got ${got}.`,
  didYouMean: "Did you mean",
  keepTyped: "Keep it as typed",
  or: "or",
  goBackTo: (text: string) => `go back to ${text}`,
  emptyField: "an empty field",
  otherUnits: "Other units:",
  sameValue: "The same, written otherwise",
  typeAny: "Type any of these with its unit: it is read as written.",
  siteInMetres: "Show the whole site in metres",
  siteInFeet: "Show the whole site in feet",
  siteInMetresEdit: "show metres",
  siteInFeetEdit: "show feet",
  isTypical: (source: string) => `Typical; ${source}.`,
  typicalChip: (amount: string) => `typical ${amount}`,
  setBack: "set it back",
  noSource: "no source",
};
