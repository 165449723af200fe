/** Everything on the desk that can be searched for, and how each is gone to. */
import { materialsOf, parted } from "../../site/index.js";
import type { Scheme, Work } from "../../site/index.js";
import { LEAVES, useDesk } from "../../store/index.js";
import { elevation } from "../../units/index.js";
import { words } from "../../words/index.js";
import { LEAF_TITLES } from "../leafTitles.js";
import type { OpenSite } from "../useSite.js";
import { actions } from "./actions.js";
import { byHeading, byRow, bySelector, firstOf, goToFinding, goToLeaf } from "./goTo.js";
import type { Find } from "./goTo.js";
import { matching } from "./matching.js";
import type { Findable } from "./matching.js";
import { openPanel } from "./panels.js";
import { placeOfFinding, worstFirst } from "./placeOfFinding.js";
import { SECTIONS } from "./sections.js";
import { shortKey } from "./keys.js";
import { isApple } from "./screen.js";

const says = words.book.search;

export type EntryKind = keyof typeof says.kinds;

export interface Entry extends Findable {
  id: string;
  kind: EntryKind;
  /** Shown faintly beside the name. */
  aside?: string;
  go: () => void;
}

const quoted = (text: string): string => `"${CSS.escape(text)}"`;
const pressedRow = bySelector(".row[aria-pressed=true]");

function bookEntries(): Entry[] {
  return [
    ...LEAVES.map((leaf): Entry => ({
      ...{ id: `leaf ${leaf}`, kind: "leaf", title: LEAF_TITLES[leaf] },
      go: () => goToLeaf(leaf, bySelector("h1"), true),
    })),
    ...actions().map(({ id, title, more, key, run }): Entry => {
      const short = key === undefined ? null : shortKey(key, isApple());
      return {
        ...{ id: `action ${id}`, kind: "action", title, go: run },
        ...(more === undefined ? {} : { more }),
        ...(short === null ? {} : { aside: short }),
      };
    }),
    ...SECTIONS.map(({ leaf, heading }): Entry => ({
      ...{ id: `section ${leaf} ${heading}`, kind: "section", title: heading },
      ...{ aside: LEAF_TITLES[leaf], more: LEAF_TITLES[leaf] },
      go: () => {
        // The whole dig is shown when no work is picked.
        if (leaf === "dig") useDesk.getState().select(null);
        goToLeaf(leaf, byHeading(heading), true);
      },
    })),
    ...Object.entries(words.terms).map(([id, term]): Entry => ({
      ...{ id: `term ${id}`, kind: "term", title: term.name, more: term.also ?? "" },
      go: () => openPanel("terms", id),
    })),
  ];
}

function workEntries(work: Work): Entry[] {
  const fly = (leaf: "dig" | "flow", find: Find): void => {
    useDesk.getState().flyTo({ kind: "work", id: work.id }, leaf);
    goToLeaf(leaf, find, true);
  };
  const pipes = work.kind === "trench" ? work.pipes : [];
  return [
    {
      ...{ id: `work ${work.id}`, kind: "work", title: work.name, more: work.kind },
      go: () => fly("dig", bySelector(".work-heading")),
    },
    ...pipes.map((pipe): Entry => ({
      ...{ id: `pipe ${pipe.id}`, kind: "pipe", title: pipe.name },
      ...{ aside: work.name, more: `${work.name} ${pipe.service}` },
      go: () => fly("flow", bySelector(`[data-pipe=${quoted(pipe.id)}]`)),
    })),
  ];
}

function groundEntries({ site }: OpenSite): Entry[] {
  return [
    ...site.ground.probes.map((probe): Entry => ({
      ...{ id: `probe ${probe.id}`, kind: "probe", title: says.probe(probe.id) },
      ...(probe.note === undefined ? {} : { more: probe.note, aside: probe.note }),
      go: () => {
        useDesk.getState().flyTo({ kind: "probe", id: probe.id }, "survey");
        goToLeaf("survey", pressedRow, true);
      },
    })),
    ...(site.limits ?? []).map((limit): Entry => {
      const title = limit.name ?? limit.kind;
      return {
        ...{ id: `limit ${limit.id}`, kind: "limit", title, more: limit.kind },
        go: () => {
          useDesk.getState().flyTo({ kind: "limit", id: limit.id }, "survey");
          goToLeaf("survey", firstOf(byRow(title), byHeading("Limits")), true);
        },
      };
    }),
    ...site.ground.layers.map((layer): Entry => ({
      ...{ id: `layer ${layer.id}`, kind: "layer", title: layer.name },
      go: () => goToLeaf("survey", firstOf(byRow(layer.name), byHeading("Layers")), true),
    })),
  ];
}

/** Materials that are dug or put in, where their volumes stand. */
function materialEntries({ site, estimate }: OpenSite): Entry[] {
  const used = new Set(
    (estimate?.works ?? []).flatMap(({ cut, fill }) => [...Object.keys(cut), ...Object.keys(fill)]),
  );
  return [...materialsOf(site).values()]
    .filter(({ id }) => used.has(id))
    .map(({ id, name, kind }): Entry => ({
      ...{ id: `material ${id}`, kind: "material", title: name, more: kind },
      go: () => {
        useDesk.getState().select(null);
        const find = bySelector(`[data-material=${quoted(id)}]`);
        goToLeaf("dig", firstOf(find, byHeading("The whole dig")), true);
      },
    }));
}

function moneyEntries({ site, estimate }: OpenSite): Entry[] {
  const lines = estimate?.cost.lines ?? [];
  const diggers = estimate?.machines.candidates ?? [];
  return [
    ...lines.map((line): Entry => ({
      ...{ id: `price ${line.id}`, kind: "price", title: line.name, more: "cost price" },
      go: () =>
        goToLeaf(
          "cost",
          bySelector(`[data-cost-line=${quoted(line.id)}] > details > summary`),
          true,
        ),
    })),
    ...diggers.map((digger): Entry => ({
      ...{ id: `machine ${digger.id}`, kind: "machine", title: digger.name, more: "digger rent" },
      go: () => goToLeaf("machines", bySelector(`[data-digger=${quoted(digger.id)}] button`), true),
    })),
    ...site.schemes.map((scheme): Entry => ({
      ...{ id: `scheme ${scheme.id}`, kind: "scheme", title: scheme.name },
      go: () => useDesk.getState().chooseScheme(scheme.id),
    })),
  ];
}

function findingEntries({ site, schemeId, estimate }: OpenSite): Entry[] {
  return worstFirst(estimate?.findings ?? []).map((finding, index): Entry => {
    const place = placeOfFinding(site, schemeId, finding);
    const [what] = parted(finding.text);
    return {
      ...{ id: `finding ${index}`, kind: "finding", title: what },
      ...{ aside: words.book.findings.levels[finding.level] },
      more: `${place.name ?? ""} ${finding.level} ${finding.text}`,
      go: () => goToFinding(place, finding, true),
    };
  });
}

const MOST_POINTS = 6;

/** Points by id or note; there may be a million, so they are not made entries beforehand. */
function pointEntries({ site }: OpenSite, query: string): Entry[] {
  const typed = query
    .trim()
    .toLowerCase()
    .replace(/^points?\s+/, "");
  if (typed === "") return [];
  const exact: Entry[] = [];
  const rest: Entry[] = [];
  for (const point of site.survey.points) {
    const id = point.id.toLowerCase();
    const isExact = id === typed;
    if (!isExact && (rest.length >= MOST_POINTS || !id.startsWith(typed))) {
      const isNoted = rest.length < MOST_POINTS && point.note?.toLowerCase().includes(typed);
      if (isNoted !== true) continue;
    }
    (isExact ? exact : rest).push({
      ...{ id: `point ${point.id}`, kind: "point", title: says.point(point.id) },
      aside: [elevation.print(point.z, site.units), point.note ?? ""].join(" ").trim(),
      go: () => {
        useDesk.getState().flyTo({ kind: "point", id: point.id }, "survey");
        const heading: Find = (leaf) =>
          [...leaf.querySelectorAll("h3")].find((one) =>
            one.textContent.trim().endsWith(point.id),
          ) ?? null;
        goToLeaf("survey", firstOf(heading, pressedRow, byHeading("Points")), true);
      },
    });
  }
  return [...exact, ...rest];
}

/** All that can be found but the points, in the order in which equals are shown. */
export function searchEntries(open: OpenSite | null): Entry[] {
  if (open === null) return bookEntries();
  const scheme: Scheme | undefined = open.site.schemes.find(({ id }) => id === open.schemeId);
  return [
    ...(scheme?.works ?? []).flatMap(workEntries),
    ...groundEntries(open),
    ...bookEntries(),
    ...moneyEntries(open),
    ...materialEntries(open),
    ...findingEntries(open),
  ];
}

const MOST_FOUND = 40;

/** What answers a query, best first; with nothing typed, what there is to do. */
export function found(open: OpenSite | null, entries: readonly Entry[], query: string): Entry[] {
  if (query.trim() === "") {
    return entries.filter(({ kind }) => kind === "leaf" || kind === "action");
  }
  const points = open === null ? [] : pointEntries(open, query);
  const [first, ...others] = points;
  const isExact = first?.title.toLowerCase().endsWith(` ${query.trim().toLowerCase()}`) === true;
  const rest = matching(query, entries, MOST_FOUND);
  return first !== undefined && isExact ? [first, ...rest, ...others] : [...rest, ...points];
}
