/**
 * What the page says, in one place. A text is a string, or a function where a name or a printed
 * figure stands in it; nothing here computes. Another language is another object of the type `Words`.
 */
import { book } from "./en/book.js";
import { drawing } from "./en/drawing.js";
import { forms } from "./en/forms.js";
import { hazards } from "./en/hazards.js";
import { leaf } from "./en/leaf.js";
import { limits } from "./en/limits.js";
import { looking } from "./en/looking.js";
import { offline } from "./en/offline.js";
import { permit } from "./en/permit.js";
import { picked } from "./en/picked.js";
import { shading } from "./en/shading.js";
import { shelf } from "./en/shelf.js";
import { terms } from "./en/terms.js";
import { trench } from "./en/trench.js";
import { water } from "./en/water.js";

const english = {
  book,
  drawing,
  forms,
  hazards,
  leaf,
  limits,
  looking,
  offline,
  permit,
  picked,
  shading,
  shelf,
  terms,
  trench,
  water,
};

export type { TermWords } from "./en/terms.js";
export type Words = typeof english;

/** The language of the page. */
export const words: Words = english;
