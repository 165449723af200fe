/** What stands in every file that is handed over, and the names of the kinds. */
export const handoverFiles = {
  kinds: {
    sheets: "Printed sheets (PDF)",
    report: "Report with every working",
    page: "A page that anyone can open",
    orders: "Order lists",
    stakes: "Stake-out",
    tables: "Tables",
    models: "3D models of each stage (glTF)",
    plan: "Plan for maps (GeoJSON)",
    view: "Views of stages (SVG)",
    pictures: "Pictures (PNG, GIF)",
    link: "A link that holds the site",
    surfaces: "Ground surfaces (LandXML)",
  },
  site: "Site",
  scheme: "Scheme",
  made: "Made",
  madeBy: "Made with Bankyard",
  estimateOnly: "Estimate only; local codes and licensed practice decide.",
  caution: "Caution",
  cautions: "Cautions",
};
