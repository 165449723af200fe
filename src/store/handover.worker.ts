/** Makes files to hand over away from the page; a page that has changed its mind ends the worker. */
import { estimate } from "../estimate/index.js";
import {
  fileName,
  HANDOVER_KINDS,
  isTemplate,
  loadRasterLoader,
  type HandoverFile,
  type HandoverJob,
} from "../handover/index.js";
import { PAPERS, readFaces, sheetDrawer, svgOf, usualPaper } from "../sheets/index.js";
import type { PaperId, SheetSet } from "../sheets/index.js";
import type { Site } from "../site/index.js";
import { words } from "../words/index.js";
import { strToU8, zipSync, type ZippableFile } from "fflate";
import { pointsOf } from "./groundTalk.js";
import type {
  HandoverAnswer,
  HandoverAsk,
  HandoverWant,
  SheetsAsk,
  SheetSeen,
} from "./handoverTalk.js";

function post(answer: HandoverAnswer, hand: Transferable[] = []): void {
  self.postMessage(answer, { transfer: hand });
}

self.addEventListener("message", ({ data }: MessageEvent<HandoverAsk | SheetsAsk>) => {
  const answered = "chosen" in data ? drawAgain(data) : answer(data);
  answered.catch((fault: unknown) => {
    post({ fault: fault instanceof Error ? fault.message : String(fault) });
  });
});

async function answer(ask: HandoverAsk): Promise<void> {
  const { site: bare, columns, schemeId, madeAt, base, want } = ask;
  const site = { ...bare, survey: { ...bare.survey, points: pointsOf(columns) } };
  const job = { site, schemeId, estimate: estimate(site, schemeId), madeAt };
  if (want === "sheets") drawFirst(job);
  else await make(job, want, base);
}

/** Draws the sheets of the job that came, as often as a person chooses anew among them. */
let draw: ((chosen: Site["sheets"]) => SheetSeen[]) | null = null;

function drawFirst({ site, schemeId, estimate, madeAt }: HandoverJob): void {
  const paper = usualPaper(site);
  const drawer = sheetDrawer({ site, schemeId, estimate, date: madeAt.slice(0, 10), paper });
  draw = (chosen) => seen(drawer(chosen), paper);
  post({ sheets: draw(site.sheets) });
}

function drawAgain({ chosen }: SheetsAsk): Promise<void> {
  if (draw === null) return Promise.reject(new Error("expected a site before a choice of sheets"));
  post({ sheets: draw(chosen ?? undefined) });
  return Promise.resolve();
}

/** Reads a font, or the code that draws pictures. */
async function readAsset(file: URL): Promise<Uint8Array> {
  const answered = await fetch(file);
  if (!answered.ok) throw new Error(`${file.pathname} could not be read (${answered.status})`);
  return new Uint8Array(await answered.arrayBuffer());
}

/** Files that are packed already are only put together. */
const PACKED = /\.(pdf|xlsx|glb|png|gif)$/;

function zipped(job: HandoverJob, what: string, files: readonly HandoverFile[]): HandoverFile {
  const entries = files.map(({ name, data }): [string, ZippableFile] => {
    const bytes = typeof data === "string" ? strToU8(data) : data;
    return [name, [bytes, { level: PACKED.test(name) ? 0 : 6 }]];
  });
  const data = zipSync(Object.fromEntries(entries));
  return {
    name: fileName(job, what, "zip"),
    type: "application/zip",
    data: new Uint8Array(data),
  };
}

async function readTemplate(base: string): Promise<string> {
  const answered = await fetch(new URL("viewer.html", base));
  const text = answered.ok ? await answered.text() : "";
  // A server that knows no such file may answer with the app itself.
  if (!isTemplate(text)) throw new Error(words.viewer.noTemplate);
  return text;
}

async function make(job: HandoverJob, want: HandoverWant, base: string): Promise<void> {
  const { files: ids, choices, mostApart } = want;
  const files: HandoverFile[] = [];
  for (const kind of HANDOVER_KINDS.filter(({ id }) => ids.includes(id))) {
    const told = (share: number): void => post({ kind: kind.id, share });
    told(0);
    const maker = await kind.load();
    const made = await maker(job, {
      choices,
      fonts: () => readFaces(readAsset),
      raster: async () => (await loadRasterLoader())(readAsset),
      address: base,
      pageTemplate: () => readTemplate(base),
      progress: (done, of) => told(done / of),
    });
    files.push(...made);
  }
  const [only] = ids;
  const what = ids.length === 1 && only !== undefined ? only : words.handing.files.zipName;
  const handed = files.length > mostApart ? [zipped(job, what, files)] : files;
  const bytes = handed.flatMap(({ data }) => (typeof data === "string" ? [] : [data.buffer]));
  post({ files: handed }, [...new Set(bytes)]);
}

function seen({ always, all }: SheetSet, paper: PaperId): SheetSeen[] {
  const { width, height } = PAPERS[paper];
  return all.map(({ id, of, title, page }): SheetSeen => ({
    ...{ id, of, title, width, height },
    always: always.has(id),
    number: page?.number ?? null,
    scale: page?.scale ?? null,
    window: page?.window ?? null,
    svg: page === null ? "" : svgOf(page),
  }));
}
