/**
 * What the page says, in one place. A text is a string, or a function where a name or a printed
 * figure stands in it; nothing here computes. Another language is another object of the type `Words`.
 */
import { book } from "./en/book.js";
import { costLeaf } from "./en/costLeaf.js";
import { counts } from "./en/counts.js";
import { desk } from "./en/desk.js";
import { deskFields } from "./en/deskFields.js";
import { digLeaf } from "./en/digLeaf.js";
import { drawing } from "./en/drawing.js";
import { flowLeaf } from "./en/flowLeaf.js";
import { forms } from "./en/forms.js";
import { handoverFiles } from "./en/handoverFiles.js";
import { handing } from "./en/handing.js";
import { workings } from "./en/workings.js";
import { handoverLeaf } from "./en/handoverLeaf.js";
import { hazards } from "./en/hazards.js";
import { joined } from "./en/joined.js";
import { leaf } from "./en/leaf.js";
import { link } from "./en/link.js";
import { limits } from "./en/limits.js";
import { looking } from "./en/looking.js";
import { machinesLeaf } from "./en/machinesLeaf.js";
import { offline } from "./en/offline.js";
import { orders } from "./en/orders.js";
import { permit } from "./en/permit.js";
import { picked } from "./en/picked.js";
import { pictures } from "./en/pictures.js";
import { scene } from "./en/scene.js";
import { sectionPanel } from "./en/sectionPanel.js";
import { shading } from "./en/shading.js";
import { shelf } from "./en/shelf.js";
import { sheets } from "./en/sheets.js";
import { sheetsFront } from "./en/sheetsFront.js";
import { sheetsLists } from "./en/sheetsLists.js";
import { sheetsPlan } from "./en/sheetsPlan.js";
import { sheetsSections } from "./en/sheetsSections.js";
import { stakes } from "./en/stakes.js";
import { startPage } from "./en/startPage.js";
import { surveyLeaf } from "./en/surveyLeaf.js";
import { sums } from "./en/sums.js";
import { tables } from "./en/tables.js";
import { terms } from "./en/terms.js";
import { trench } from "./en/trench.js";
import { viewer } from "./en/viewer.js";
import { water } from "./en/water.js";

const english = {
  book,
  costLeaf,
  counts,
  desk,
  deskFields,
  digLeaf,
  drawing,
  flowLeaf,
  forms,
  handoverFiles,
  workings,
  handing,
  handoverLeaf,
  hazards,
  joined,
  leaf,
  limits,
  link,
  looking,
  machinesLeaf,
  offline,
  orders,
  permit,
  picked,
  pictures,
  scene,
  sectionPanel,
  shading,
  sheets,
  sheetsFront,
  sheetsLists,
  sheetsPlan,
  sheetsSections,
  shelf,
  stakes,
  startPage,
  surveyLeaf,
  sums,
  tables,
  terms,
  trench,
  viewer,
  water,
};

export type { TermWords } from "./en/terms.js";
export type Words = typeof english;

/** The language of the page. */
export const words: Words = english;
