/** Texts of the sites that this browser keeps; functions where a figure or a name stands in them. */
export const shelf = {
  title: "Sites on this device",
  menu: "Sites on this device…",
  unnamed: "Site without a name",
  about:
    "Kept in this browser on this device only. Clearing the browser's data deletes them: save what matters as files.",
  room: (used: string, whole: string) =>
    `${used} used of about ${whole} that this browser allows, all of Bankyard counted.`,
  loading: "Looking what is kept here…",
  none: "Nothing is kept here yet",
  noneWhy:
    "A site comes on this list when you start your own, open a file, or change an example. It stays until you delete it.",
  noMatch: (wanted: string) => `No site here has “${wanted}” in its name.`,
  search: "Find a site by name",
  notAllowed: (why: string) =>
    `This browser keeps nothing for Bankyard (${why}). Save the open site as a file; look whether the browser allows this page to store data.`,
  close: "Close",

  changedWhen: (when: string) => `Changed ${when}`,
  justNow: "just now",
  figures: (cost: string, cut: string) => `${cost}, ${cut} cut`,
  points: (count: string) => `${count} points`,
  noFigures: "Open it to see its figures",
  openHere: "On the desk",
  openElsewhere: "Open in another tab",
  open: (name: string) => `Open ${name}`,
  more: (name: string) => `More for ${name}`,
  rename: "Rename…",
  copy: "Copy",
  saveFile: "Save as a file",
  delete: "Delete…",
  newName: "New name",
  keepName: "Rename",
  nameWanted: "A name is needed.",
  cancel: "Cancel",
  deleteAsk: (name: string) => `Delete ${name} from this device?`,
  deleteYes: "Delete it",
  deleteNo: "Keep it",
  deleted: (name: string) => `${name} is deleted.`,
  undoDelete: "Bring it back",
  broughtBack: (name: string) => `${name} is back on the list.`,
  copied: (name: string) => `${name} is on the list.`,
  renamed: (name: string) => `It is now called ${name}.`,
  heldElsewhere: (name: string) =>
    `${name} is open in another tab: do that there, or close it there.`,

  saveAll: "Save all as one zip",
  openZip: "Open a zip or a file…",
  packing: "Packing…",
  savedAll: (count: string, file: string) => `Saved ${count} as ${file}.`,
  leftOut: (names: string) => `Could not be read and is not in it: ${names}.`,
  sites: (count: number) => (count === 1 ? "1 site" : `${count} sites`),
  zipFile: (day: string) => `bankyard-sites-${day}.zip`,
  zipDamaged: (why: string) => `the zip is damaged: ${why}`,
  zipTooLarge: "the zip holds far more than sites would",
  zipEmpty: (file: string) => `${file} holds no site file.`,
  zipFailed: (file: string, why: string) => `${file} was not opened: ${why}`,
  added: (count: string, file: string) => `${count} from ${file} put on the list.`,
  addedSame: (count: string) => `${count} already here, just the same.`,
  addedBad: (files: string) => `Cannot be used: ${files}.`,

  opened: (name: string) => `Opened ${name}.`,
  started: (name: string) =>
    `${name} is on the desk and kept on this device. Sites that you worked on before are under “Sites on this device”.`,
  gone: "That site is no longer kept on this device.",
  yoursNow: "You work on this site here now.",
  onCopy: (name: string) => `You work on ${name}.`,
  lookOnly:
    "This site is open in another tab. Choose “Work here instead” or “Work on a copy” to change it.",

  elsewhereTitle: "Open in another tab",
  elsewhereText: "Read only here: you can look, and what is changed there shows here.",
  movedTitle: "Moved to another tab",
  movedText: "Another tab of this browser works on this site now. This one no longer keeps it.",
  unsavedTitle: "Changed in another tab",
  unsavedText:
    "Your last changes here are not kept, since another tab kept its own. Keep yours as a copy or as a file; nothing was written over.",
  setAside: (name: string) =>
    `${name} left the desk with changes that could not be kept. Save it as a file before you close this page.`,
  asideFile: "not-kept.site.json",
  letGo: "Let it go",
  workHere: "Work here instead",
  workOnCopy: "Work on a copy",

  full: "This device has no more room for Bankyard: your last changes are not kept. Save the site as a file, or delete sites that you no longer need.",
  notKept: (why: string) =>
    `This browser could not keep the site (${why}). Save it as a file; later edits are tried again.`,
  olderPage: "another tab has an older Bankyard open; close that tab and load this page again",
  asExample: "An example as it came: kept in this browser from your first change on.",
};
