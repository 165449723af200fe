import { csvOf, CSV_TYPE } from "../csv.js";
import { fileName } from "../job.js";
import type { HandoverMaker } from "../job.js";
import { standingLines } from "../standing.js";
import { words } from "../../words/index.js";
import { orderItems } from "./orderItems.js";
import { orderSheet } from "./orderSheet.js";
import { allOrderTexts } from "./orderText.js";

/** The order lists as a CSV, and as a text to copy messages from. The workbook holds them as well. */
export const makeOrders: HandoverMaker = (job, { choices, signal } = {}) => {
  signal?.throwIfAborted();
  const items = orderItems(job, choices?.orders);
  const standing = standingLines(job)
    .map(([label, text]) => (label === "" ? text : `${label}: ${text}`))
    .join("\n");
  const message = [allOrderTexts(job, items), standing].filter((part) => part !== "").join("\n\n");
  return Promise.resolve([
    {
      name: fileName(job, words.orders.file, "csv"),
      type: CSV_TYPE,
      data: csvOf(job, orderSheet(job, items).rows),
    },
    {
      name: fileName(job, words.orders.textFile, "txt"),
      type: "text/plain;charset=utf-8",
      data: `${message}\n`,
    },
  ]);
};
