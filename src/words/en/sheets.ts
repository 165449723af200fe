/** Texts that stand on every printed sheet: frame, title block, legend, scale. */
export const sheets = {
  /** Of the whole set, in the file's particulars. */
  subject: (scheme: string) => `Drawings to scale: ${scheme}`,
  /** Over the part of a table that stands in another column or on another sheet. */
  goesOn: (title: string) => `${title}, continued`,
  legend: "Legend",
  parcel: (text: string) => `Parcel ${text}`,
  drawnBy: "Drawn by",
  measured: "Measured",
  printed: "Printed",
  scale: "Scale",
  notToScale: "Not to scale",
  /** Of a site in feet: so many feet to an inch on paper. */
  inchTo: (feet: string) => `1 in = ${feet} ft`,
  centimetreTo: (metres: string) => `1 cm = ${metres} m`,
  ratio: (n: string) => `1 : ${n}`,
  north: "N",
  /** The layer of a bar beside one of several drawings. */
  scaleBar: "Scale bar",
  sheetOf: "Sheet",
  numberOf: (n: number, of: number) => `${n} of ${of}`,
  reserve:
    "Worked out from what was measured and entered. Not a permit: local codes and licensed practice decide. Have buried lines located before any digging.",
};
