/** What the details are to be read with: figures of the estimate that no drawing shows. */
import type { Estimate } from "../../estimate/index.js";
import { ruleOf } from "../../site/index.js";
import type { Scheme, Site } from "../../site/index.js";
import { area, length, distance, plainNumber } from "../../units/index.js";
import { words } from "../../words/index.js";

/** Notes in order, each with its source where it has one. */
export function detailNotes(site: Site, scheme: Scheme, estimate: Estimate): string[] {
  return [
    ...coverNotes(site, estimate),
    ...wiringNotes(estimate),
    ...sameLineNotes(scheme),
    ...tankNotes(site, scheme, estimate),
    ...barrierNotes(site, estimate),
    words.sheetsSections.notes.decide,
  ];
}

/** What is wanted over the pipes, those with one rule together. */
function coverNotes({ units }: Site, { flow }: Estimate): string[] {
  const byRule = new Map<string, string[]>();
  for (const { name, leastCover } of flow.pipes) {
    const rule = `${length.print(leastCover.value, units)}|${leastCover.source}`;
    byRule.set(rule, [...(byRule.get(rule) ?? []), name]);
  }
  return [...byRule].map(([rule, names]) => {
    const [wanted, source] = rule.split("|");
    return words.sheetsSections.notes.cover(wanted ?? "", names.join("; "), source ?? "");
  });
}

function wiringNotes({ flow }: Estimate): string[] {
  const names = flow.pipes.filter(({ service }) => service === "conduit").map(({ name }) => name);
  return names.length === 0 ? [] : [words.sheetsSections.notes.wiring(names.join("; "))];
}

/** Pipes of one trench have no places across it. */
function sameLineNotes({ works }: Scheme): string[] {
  const shared = works.filter((work) => work.kind === "trench" && work.pipes.length > 1);
  const names = shared.map(({ name }) => name).join("; ");
  return names === "" ? [] : [words.sheetsSections.notes.sameLine(names)];
}

function tankNotes(site: Site, { works }: Scheme, estimate: Estimate): string[] {
  const { notes } = words.sheetsSections;
  const risers = ruleOf(site, "riser-from");
  const tanks = works.filter((work) => work.kind === "tank");
  const named =
    tanks.length === 0 ? [] : [notes.risers(length.print(risers.value, site.units), risers.source)];
  const bedded = tanks.some(({ bedding }) => bedding.depth > 0) ? [notes.bedding] : [];
  const floats = estimate.flow.flotation.flatMap(({ name, factor, wanted, met = false }) =>
    factor === null
      ? []
      : [notes.uplift(name, met, plainNumber(factor, 2), plainNumber(wanted, 2))],
  );
  return [...bedded, ...named, ...floats];
}

function barrierNotes(site: Site, { land }: Estimate): string[] {
  if (!(land.barrier.value > 0)) return [];
  const off = ruleOf(site, "barrier-off");
  return [
    words.sheetsSections.notes.barrier(
      distance.print(land.barrier.value, site.units, { digits: 1 }),
      length.print(off.value, site.units),
      area.print(land.disturbed.value, site.units),
      off.source,
    ),
  ];
}
