/** Every kind of hand-over by its id, in the order in which they are offered. */
import { words } from "../words/index.js";
import type { HandoverMaker } from "./job.js";

export interface HandoverKind {
  id: string;
  /** As a person reads it. */
  label: string;
  /** Loads the maker: each brings a library that the first load need not have. */
  load: () => Promise<HandoverMaker>;
}

export const HANDOVER_KINDS: readonly HandoverKind[] = [
  {
    id: "sheets",
    label: words.handoverFiles.kinds.sheets,
    load: async () => (await import("./sheetFiles.js")).makeSheetFiles,
  },
  {
    id: "page",
    label: words.handoverFiles.kinds.page,
    load: async () => (await import("./page/pageOf.js")).makePage,
  },
  {
    id: "orders",
    label: words.handoverFiles.kinds.orders,
    load: async () => (await import("./orders/makeOrders.js")).makeOrders,
  },
  {
    id: "stakes",
    label: words.handoverFiles.kinds.stakes,
    load: async () => (await import("./stakes/makeStakes.js")).makeStakes,
  },
  {
    id: "report",
    label: words.handoverFiles.kinds.report,
    load: async () => (await import("./report/makeReport.js")).makeReport,
  },
  {
    id: "tables",
    label: words.handoverFiles.kinds.tables,
    load: async () => (await import("./tables/makeTables.js")).makeTables,
  },
  {
    id: "models",
    label: words.handoverFiles.kinds.models,
    load: async () => (await import("./models/gltf.js")).stageModels,
  },
  {
    id: "plan",
    label: words.handoverFiles.kinds.plan,
    load: async () => (await import("./models/geoJson.js")).makeGeoJson,
  },
  {
    id: "surfaces",
    label: words.handoverFiles.kinds.surfaces,
    load: async () => (await import("./models/landXml.js")).makeLandXml,
  },
  {
    id: "view",
    label: words.handoverFiles.kinds.view,
    load: async () => (await import("./pictures/viewSvg.js")).makeViews,
  },
  {
    id: "pictures",
    label: words.handoverFiles.kinds.pictures,
    load: async () => (await import("./pictures/makePictures.js")).makePictures,
  },
  {
    id: "link",
    label: words.handoverFiles.kinds.link,
    load: async () => (await import("./link/makeLink.js")).makeLink,
  },
  {
    id: "site",
    label: words.handoverFiles.kinds.site,
    load: async () => (await import("./makeSiteFile.js")).makeSiteFile,
  },
];
