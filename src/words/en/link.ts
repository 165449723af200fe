/** A site in an address: making the link, and opening one. */
export const link = {
  name: "the link",
  fileName: "link",
  putBefore:
    "Put before it the address at which Bankyard is served, such as https://plans.example/bankyard/",
  copy: "Copy the link",
  copied: "Copied. Whoever opens it gets a copy of the site as it is now.",
  notCopied: "This browser let nothing be copied: choose the link and copy it by hand.",
  address: "The link",
  says: "All of the site lies in the link itself, behind its #: no server is told. It opens a copy; what is changed there does not come back.",
  saysLess:
    "The site lies in the link itself, behind its #, without what is left out above: no server is told. It opens a copy; what is changed there does not come back.",
  fileSaysLess:
    "The site lies in the link itself, behind its #, without what was left out of it: no server is told. It opens a copy; what is changed there does not come back.",
  fits: {
    sure: (letters: string) =>
      `${letters} letters long: short enough for nearly every way to send it.`,
    long: (letters: string) =>
      `${letters} letters long: browsers take it, but some message apps cut a link over 8,000 letters. By mail or in a document it goes; else send the page or the file.`,
    over: (letters: string) =>
      `${letters} letters would be too long for a link: send the page or the file instead.`,
  },
  broken: "its end is missing or it was changed on its way",
  mend: "ask for the link again, sent whole, or for the site file or the page",
  opened: (name: string) => `${name} was opened from a link, as a copy of your own.`,
  /** Said after that, of what its maker left out. */
  without: {
    costs:
      "Its maker left out costs: prices that are not your own are demo prices, and “…” in a note stands for an amount.",
    names: "Its maker left out names, address and parcel: “…” in a note stands for one of these.",
  },
};
