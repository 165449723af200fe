/** What stands in every file that is handed over, and the names of the kinds. */
export const handoverFiles = {
  kinds: {
    orders: "Order lists",
    stakes: "Stake-out",
    tables: "Tables",
  },
  site: "Site",
  scheme: "Scheme",
  made: "Made",
  madeBy: "Made with Bankyard",
  estimateOnly: "Estimate only; local codes and licensed practice decide.",
  caution: "Caution",
  cautions: "Cautions",
};
