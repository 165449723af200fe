import { NO_GROUND } from "./noGround.js";

/** The picture of the ground: marks, hints, and what is said where it cannot be drawn. */
export const scene = {
  probe: (id: string) => `Probe ${id}`,
  probeHereNext: "Probe here next",
  northMark: "N",
  atMidView: "at mid-view",
  moveEndSection: "Move end A of the section",
  moveEndBSection: "Move end B of the section",
  moveWholeSection: "Move the whole section",
  dragToMove: "Drag to move",
  noGroundThereChoose: `${NO_GROUND} `,
  chooseWhereSectionBegins: "Choose where the section begins. Esc to leave it.",
  nowChooseWhereEnds: "Now choose where it ends.",
  acrossTheSite: "Across the site",
  cancel: "Cancel",
  groundWorksAllShows: (name: string, which: string, which2: string) =>
    `${name}: the ground and the works in ${which}${which2}. All that it shows is also in the tables beside it.`,
  plan: "plan",
  threeDimensions: "three dimensions",
  pictureWasInterrupted: "The picture was interrupted",
  no3dPictureDevice: "No 3D picture on this device",
  graphicsChipLetGo:
    "The graphics chip let go of it. It comes back by itself as soon as it can; reloading the page brings it back too. Nothing is lost.",
  browserLacksWebgl:
    "This browser has WebGL 2 switched off or lacks it. Every figure, table and sheet still works; turn on hardware graphics in the browser's settings to see the ground.",
  pictureCouldNotDrawn: "The picture could not be drawn",
  figuresTablesNotTouched: (message: string) =>
    `The figures and tables are not touched by this. What went wrong: ${message}`,
  beingWorkedOutGround: "Being worked out: ground and figures are as they were",
  couldNotWorkedOut: (fault: string) =>
    `This could not be worked out: ${fault}. Ground and figures are as they were before.`,
  tryAgain: "Try again",
  base: (base: string) => `base ${base}`,
  floorLevel: (base: string) => `floor level ${base}`,
  loose: (surplusLoose: string, which: string) => `${surplusLoose} loose ${which}`,
  leftOver: "left over",
  atTheEnd: "at the end",
  fill: (fill: string) => `${fill} fill`,
  cut: (cut: string) => `${cut} cut`,
  fall: (fall: string) => `${fall} fall`,
  rise: (value: string) => `${value} rise`,
  long: (length: string) => `${length} long`,
  turnBearingDegrees: (name: string, bearing: number) => `Turn ${name}, bearing ${bearing} degrees`,
};
