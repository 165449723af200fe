/** The report with every working, as one file that any browser opens and prints. */
import { schemeOf } from "../../estimate/index.js";
import type { Finding, Quantity, Site } from "../../site/index.js";
import { area, bearing, elevation, plainNumber } from "../../units/index.js";
import { words } from "../../words/index.js";
import { amountText } from "../amountText.js";
import type { AmountKind } from "../amountText.js";
import { fileName } from "../job.js";
import type { HandoverJob, HandoverMaker } from "../job.js";
import { headLines } from "../standing.js";
import { figureGroups } from "./figures.js";
import type { FigureGroup } from "./figures.js";
import type { Html } from "./html.js";
import { element, table } from "./html.js";
import { REPORT_SCRIPT, REPORT_STYLE } from "./look.js";
import { slicesOf } from "./slices.js";
import type { Sliced } from "./slices.js";

const says = words.workings;

/** Opens down to what is inside it. */
function opens(name: string, amount: string, ...inside: readonly Html[]): Html {
  return element(
    "details",
    {},
    element("summary", {}, element("span", {}, name), element("b", {}, amount)),
    element("div", {}, inside),
  );
}

function working(site: Site, name: string, quantity: Quantity, kind: AmountKind): Html {
  const amount = (value: number, unit: string): string => amountText(value, unit, site, kind);
  const value = quantity.unit === "lump" ? "" : amount(quantity.value, quantity.unit);
  const rows = quantity.inputs.map((input) => [input.name, amount(input.value, input.unit)]);
  return opens(
    name,
    value,
    element("p", {}, `${quantity.formula}${value === "" ? "" : ` = ${value}`}`),
    ...(rows.length === 0 ? [] : [table([says.input, says.amount], rows)]),
    element("p", { class: "source" }, quantity.source),
  );
}

function group(site: Site, { title, figures }: FigureGroup): Html {
  const shown = figures.map(({ name, quantity, ...kind }) => working(site, name, quantity, kind));
  return element("section", {}, element("h2", {}, title), shown);
}

/** Enough that the sum can be done again. */
const AREA_DIGITS = { digits: 2 };

/** Stations and areas in two halves beside each other, so that they stay in sight. */
function sliceTable({ units }: Site, { slices }: Sliced): Html {
  const half = Math.ceil(slices.length / 2);
  const cells = (slice: Sliced["slices"][number] | undefined): string[] =>
    slice === undefined
      ? ["", ""]
      : [elevation.print(slice.station, units), area.print(slice.area, units, AREA_DIGITS)];
  const { station, area: areaHead } = says.slices;
  return table(
    [station, areaHead, station, areaHead],
    slices.slice(0, half).map((slice, i) => [...cells(slice), ...cells(slices[half + i])]),
  );
}

function sliced(site: Site, made: Sliced): Html {
  const { slices: told } = says;
  const { units } = site;
  const amount = (value: number, unit: string): string => amountText(value, unit, site);
  const [east, north] = made.from;
  const total = made.slices.reduce((sum, slice) => sum + slice.area, 0);
  const from = told.place(elevation.print(east, units), elevation.print(north, units));
  const towards =
    made.bearing === null ? told.alongPath : told.bearing(bearing.print(made.bearing, units));
  const count = plainNumber(made.slices.length, 0);
  const differs = `${plainNumber((100 * (made.volume - made.exact)) / made.exact, 1)}%`;
  return opens(
    told.title(made.name),
    amount(made.volume, "m³"),
    element("p", {}, told.says(count, elevation.print(made.interval, units), from, towards)),
    sliceTable(site, made),
    table(
      [says.input, says.amount],
      [
        [told.sumOfAreas, area.print(total, units, AREA_DIGITS)],
        [told.thickness, elevation.print(made.interval, units)],
        [told.bySlices, amount(made.volume, "m³")],
        [told.exact, amount(made.exact, "m³")],
      ],
    ),
    element("p", {}, `${told.formula} = ${amount(made.volume, "m³")}. ${told.differs(differs)}.`),
    element("p", { class: "source" }, `${told.source} ${told.alone}`),
  );
}

/** The reason, and what the finding said when that was given, where its figures have changed since. */
function acceptedText({ reason, then }: NonNullable<Finding["accepted"]>): string {
  const taken = says.accepted(reason);
  return then === undefined ? taken : `${taken} ${words.permit.takeOn.saidThen(then)}`;
}

function findings({ estimate }: HandoverJob): Html {
  const items = estimate.findings.map((found) =>
    element(
      "li",
      {},
      element("b", {}, says.levels[found.level]),
      ` ${found.text} `,
      element("span", { class: "source" }, found.source),
      found.accepted === undefined ? "" : element("em", {}, ` ${acceptedText(found.accepted)}`),
    ),
  );
  return element("section", {}, element("h2", {}, says.findings), element("ul", {}, items));
}

function cautions({ estimate }: HandoverJob): Html {
  const items = estimate.cautions.map((caution) => element("li", {}, caution));
  return element("section", {}, element("h2", {}, says.cautions), element("ul", {}, items));
}

function head(job: HandoverJob): Html {
  const lines = headLines(job).map(([label, text]) =>
    element("p", {}, label === "" ? text : `${label}: ${text}`),
  );
  return element(
    "header",
    {},
    element("h1", {}, says.heading(job.site.name)),
    lines,
    element("p", {}, says.about),
    element("button", { type: "button", id: "all", "data-close": says.closeAll }, says.openAll),
  );
}

/** One file; the sections of each work are told as progress. */
export const makeReport: HandoverMaker = async (job, { progress, signal } = {}) => {
  const { site, schemeId } = job;
  const { works } = schemeOf(site, schemeId);
  const slices: Html[] = [];
  for (const [i, { id }] of works.entries()) {
    signal?.throwIfAborted();
    const made = slicesOf(site, schemeId, id);
    if (made !== null) slices.push(sliced(site, made));
    progress?.(i + 1, works.length);
    await Promise.resolve();
  }
  const volumes = element("section", {}, element("h2", {}, says.groups.volumes), slices);
  const groups = figureGroups(site, job.estimate).map((each) => group(site, each));
  const body = [head(job), cautions(job), findings(job), volumes, ...groups];
  const page = [
    "<!doctype html>",
    '<html lang="en"><head><meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    element("title", {}, `${site.name} · ${says.title}`).text,
    `<style>${REPORT_STYLE}</style></head><body>`,
    ...body.map(({ text }) => text),
    `<script>${REPORT_SCRIPT}</script></body></html>`,
  ].join("\n");
  return [{ name: fileName(job, says.file, "html"), type: "text/html;charset=utf-8", data: page }];
};
