/** Work in the way of floods. */
import { areasOf, besideLine, overlapOf, sizeOfAreas, type WorkQuantities } from "../dig/index.js";
import { areaOutline } from "../site/index.js";
import type { Finding, Limit, Scheme, Work } from "../site/index.js";

/** m either side of a flood path whose width is not entered: its line alone. */
const LINE = 0.05;

/** One finding for each work whose hole, fill or body lies in a flood path's width or area. */
export function floodFindings(
  limits: readonly Limit[],
  { works }: Pick<Scheme, "works">,
  dug: readonly WorkQuantities[],
): Finding[] {
  const paths = limits.filter(({ kind, path }) => kind === "flood-path" && path !== undefined);
  return paths.flatMap((limit) => {
    const { path = [], closed, width = 0 } = limit;
    const flood = closed === true ? areasOf([path]) : besideLine(path, Math.max(LINE, width / 2));
    const inIt = works.filter((work) => sizeOfAreas(overlapOf(groundOf(work, dug), flood)) > 0);
    const [first] = inIt;
    if (first === undefined) return [];
    return [
      {
        level: "caution" as const,
        code: "land.flood",
        where: first.id,
        text: `${inIt.map(({ name }) => name).join(", ")} ${inIt.length === 1 ? "lies" : "lie"} in ${limit.name ?? "a flood path"}. Work in an area that floods needs a permit first: ask the local floodplain office.`,
        source: "44 CFR 60.3; geometry",
      },
    ];
  });
}

function groundOf(work: Work, dug: readonly WorkQuantities[]): ReturnType<typeof areasOf> {
  const { outlines, heap } = dug.find(({ id }) => id === work.id) ?? {};
  const rings = outlines?.daylight ?? heap?.toe ?? [];
  return areasOf(rings.length > 0 ? rings : [areaOutline(work) ?? []]);
}
