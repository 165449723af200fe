/**
 * `npm run -s sheets -- FILE --out DIR [--scheme ID] [--paper letter|tabloid|a4|a3] [--date ISO]
 * [--only id,id]`: the printed sheets as one PDF and each as SVG, without a page. Prints what it
 * wrote. Exit 2 with one line on standard error for a file or an argument that cannot be used.
 */
import { mkdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import { parseArgs } from "node:util";
import { estimate } from "../estimate/index.js";
import { fileName } from "../handover/index.js";
import {
  PAPERS,
  pdfOf,
  sheetsOf,
  svgOf,
  usualPaper,
  type Page,
  type PaperId,
  type SheetJob,
} from "../sheets/index.js";
import { words } from "../words/index.js";
import { fontsOnDisk } from "./sheetFonts.js";
import { chosenScheme, unusableArguments, Unusable, usableSite } from "./siteFile.js";

const USAGE = `usage: npm run -s sheets -- FILE --out DIR [--scheme ID] [--paper ${Object.keys(PAPERS).join("|")}] [--date YYYY-MM-DD] [--only ID,ID]`;

interface Arguments {
  file: string;
  out: string;
  scheme?: string;
  paper?: PaperId;
  date: string;
  only?: readonly string[];
}

async function run(argv: readonly string[]): Promise<void> {
  const { file, out, scheme, paper, date, only } = argumentsOf(argv);
  const site = usableSite(file);
  const schemeId = chosenScheme(file, site, scheme);
  const job: SheetJob = {
    site,
    schemeId,
    estimate: estimate(site, schemeId),
    date,
    paper: paper ?? usualPaper(site),
  };
  const pages = wantedPages(sheetsOf(job), only);
  mkdirSync(out, { recursive: true });
  const fonts = await fontsOnDisk();
  const pdf = await pdfOf(pages, {
    fonts,
    title: site.name,
    subject: words.sheets.subject(site.schemes.find(({ id }) => id === schemeId)?.name ?? schemeId),
    date,
    ...(site.project?.preparer === undefined ? {} : { author: site.project.preparer }),
  });
  const nameOf = (what: string, ending: string): string =>
    fileName({ ...job, madeAt: date }, what, ending);
  write(out, nameOf("sheets", "pdf"), pdf);
  for (const page of pages) {
    write(out, nameOf(`sheet ${page.number} ${page.id}`, "svg"), svgOf(page, { fonts }));
  }
}

function wantedPages(pages: readonly Page[], only: readonly string[] | undefined): readonly Page[] {
  if (only === undefined) return pages;
  const unknown = only.find((id) => !pages.some((page) => page.id === id));
  if (unknown !== undefined) {
    const known = pages.map(({ id }) => id).join(", ");
    throw new Unusable(`--only: no sheet is called "${unknown}"; use some of: ${known}`);
  }
  return pages.filter(({ id }) => only.includes(id));
}

function write(folder: string, name: string, content: string | Uint8Array): void {
  const file = path.join(folder, name);
  writeFileSync(file, content);
  process.stdout.write(`${file}\n`);
}

function argumentsOf(argv: readonly string[]): Arguments {
  try {
    const { values, positionals } = parseArgs({
      args: [...argv],
      allowPositionals: true,
      options: {
        out: { type: "string" },
        scheme: { type: "string" },
        paper: { type: "string" },
        date: { type: "string" },
        only: { type: "string" },
      },
    });
    const [file, ...more] = positionals;
    const { out, scheme, paper, date, only } = values;
    if (file === undefined || more.length > 0 || out === undefined) throw new Unusable(USAGE);
    return {
      file,
      out,
      date: date === undefined ? new Date().toISOString().slice(0, 10) : dayOf(date),
      ...(scheme === undefined ? {} : { scheme }),
      ...(paper === undefined ? {} : { paper: paperOf(paper) }),
      ...(only === undefined ? {} : { only: only.split(",") }),
    };
  } catch (error) {
    throw unusableArguments(error, USAGE);
  }
}

function paperOf(text: string): PaperId {
  if (Object.hasOwn(PAPERS, text)) return text as PaperId;
  throw new Unusable(
    `--paper: got "${text}", expected one of ${Object.keys(PAPERS).join(", ")}; ${USAGE}`,
  );
}

function dayOf(text: string): string {
  const isDay = /^\d{4}-\d\d-\d\d$/.test(text) && !Number.isNaN(Date.parse(text));
  if (isDay) return text;
  throw new Unusable(`--date: got "${text}", expected a day such as 2026-11-27; ${USAGE}`);
}

// A reader that stops early (`| head`) is no fault of ours.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code !== "EPIPE") throw error;
});

try {
  await run(process.argv.slice(2));
} catch (error) {
  if (!(error instanceof Unusable)) throw error;
  process.stderr.write(`${error.message}\n`);
  process.exitCode = 2;
}
