import { schemeOf } from "../../estimate/index.js";
import type { HandoverJob } from "../job.js";
import { words } from "../../words/index.js";
import type { OrderItem, SupplierKind } from "./item.js";
import { shortNumber } from "./item.js";
import { SUPPLIERS } from "./orderItems.js";

/**
 * The lists as a message: one supplier's, or all. Short lines in letters that any phone's message
 * holds, without prices. Empty where nothing is ordered there.
 */
export function orderText(
  job: HandoverJob,
  items: readonly OrderItem[],
  kind?: SupplierKind,
): string {
  const said = words.orders;
  const wanted = SUPPLIERS.filter((each) => kind === undefined || each === kind);
  const parts = wanted.flatMap((each) => {
    const lines = items.filter((item) => item.kind === each).map(itemText);
    return lines.length === 0 ? [] : [[said.kinds[each].toUpperCase(), ...lines].join("\n")];
  });
  if (parts.length === 0) return "";
  const scheme = schemeOf(job.site, job.schemeId).name;
  return plainLetters(
    [
      said.messageHead(job.site.name, scheme),
      ...parts,
      said.messageEnd(job.madeAt.slice(0, 10)),
    ].join("\n\n"),
  );
}

function itemText(item: OrderItem): string {
  const said = words.orders;
  const exact = item.exact === "" ? [] : [said.exactIs(item.exact)];
  const where = item.where.length === 0 ? [] : [said.forWorks(item.where.join(", "))];
  const rest = [...exact, ...where].join("; ");
  const count = shortNumber(item.count);
  const single = item.unit === said.each || item.unit === said.lump;
  const first = `- ${single ? `${count} x` : `${count} ${item.unit}:`} ${item.name}`;
  return rest === "" ? first : `${first} (${rest})`;
}

/** Letters of the plain keyboard for the signs that messages often lose: "½" is "1/2", "³" is "3". */
export function plainLetters(text: string): string {
  return text
    .replace(/(\d)(?=[¼½¾⅓⅔⅛⅜⅝⅞])/g, "$1 ")
    .replace(/[′’]/g, "'")
    .replace(/[″“”]/g, '"')
    .replace(/×/g, "x")
    .replace(/[·•]/g, ",")
    .replace(/[–—]/g, "-")
    .normalize("NFKC")
    .replace(/\u2044/g, "/");
}
