/** The page without a network: parts that are fetched late, the app on this device, newer versions. */
export const offline = {
  groundComing: "Drawing the ground…",
  leafComing: "Turning to this leaf…",
  startComing: "Laying out a clean page…",
  sectionComing: "Cutting the ground open…",
  reportComing: "The report was still being fetched. Close this and print once more.",
  theGround: "The ground",
  thisLeaf: "This leaf",
  theSection: "The section",
  theReport: "The report",
  theStart: "The page for a site of your own",
  needsNetwork: (name: string) => `${name} needs the network once more`,
  needsNetworkWhy:
    "A part of Bankyard is not on this device yet. Your site is not touched by this; trying again may load the page anew.",
  whatWentWrong: "What went wrong",
  tryAgain: "Try again",
  close: "Close",
  ready: "Bankyard is on this device now: it opens and works without a network.",
  noNetwork: "No network",
  noNetworkReady: "No network here. Everything works as usual; your site is kept in this browser.",
  noNetworkNotReady:
    "No network here. What is open works, but Bankyard may not open again before the network is back.",
  newer: "A newer Bankyard is ready.",
  newerKeeps:
    "Your site is kept. The steps to undo are not, nor what is typed of a new site that is not on the desk yet.",
  useNow: "Use it now",
  later: "Later",
  notKept:
    "This browser could not keep the site, so the page was not loaded anew. Save the site as a file first.",
  exampleMissing: (name: string) =>
    `The example ${name} could not be fetched: it needs the network once. Try again later.`,
};
