/**
 * `npm run -s handover -- FILE --out DIR [--only KIND,KIND…] [--scheme ID] [--date ISO]
 * [--at ADDRESS] [--without costs,names]`: writes what is handed over as files, and prints the path of each. The kinds are
 * those of src/handover/makers.ts. Without `--date` the files say when they were made. `--at` is where
 * Bankyard is served: the link begins with it. How far a long kind is stands on standard error.
 * `--without costs,names` makes page and link for somebody else; every other kind holds all there is,
 * so it is refused with any of them.
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { estimate } from "../estimate/index.js";
import { HANDOVER_KINDS, LEFT_OUT, TooLongForLink } from "../handover/index.js";
import type {
  HandoverFile,
  HandoverJob,
  HandoverKind,
  LeftOut,
  MakeOptions,
  Progress,
} from "../handover/index.js";
import { ROOT } from "./prepare.mjs";
import { fontsOnDisk, rasterOnDisk } from "./sheetFonts.js";
import { chosenScheme, unusableArguments, Unusable, usableSite } from "./siteFile.js";

const KNOWN = HANDOVER_KINDS.map(({ id }) => id).join(", ");
const USAGE = `usage: npm run -s handover -- FILE --out DIR [--only KIND,KIND…] [--scheme ID] [--date ISO] [--at ADDRESS] [--without costs,names]; kinds: ${KNOWN}`;

interface Arguments {
  file: string;
  out: string;
  kinds: readonly HandoverKind[];
  schemeId: string | undefined;
  madeAt: string;
  /** Where Bankyard is served. */
  address: string | undefined;
  /** Whether the kinds were named, not all taken. */
  named: boolean;
  without: readonly LeftOut[];
}

async function run(argv: readonly string[]): Promise<void> {
  const { file, out, kinds, schemeId, madeAt, address, named, without } = argumentsOf(argv);
  const site = usableSite(file);
  const scheme = chosenScheme(file, site, schemeId);
  const job = { site, schemeId: scheme, estimate: estimate(site, scheme), madeAt };
  makeFolder(out);
  for (const kind of kinds) {
    const tools = { pageTemplate, fonts: fontsOnDisk, raster: rasterOnDisk };
    const options = {
      ...tools,
      choices: { page: { without } },
      progress: teller(kind.id),
      ...(address !== undefined && { address }),
    };
    for (const { name, data } of await madeOf(kind, job, options, named)) {
      const place = join(out, name);
      writeFileSync(place, data);
      process.stdout.write(`${place}\n`);
    }
  }
}

/** The files of a kind. A link that would be too long is told, and asked for by name it ends the run. */
async function madeOf(
  kind: HandoverKind,
  job: HandoverJob,
  options: MakeOptions,
  named: boolean,
): Promise<readonly HandoverFile[]> {
  try {
    return await (
      await kind.load()
    )(job, options);
  } catch (error) {
    if (!(error instanceof TooLongForLink)) throw error;
    const why = `${kind.id}: ${error.message}`;
    if (named) throw new Unusable(why);
    process.stderr.write(`${why}\n`);
    return [];
  }
}

/** ms between two lines that say how far a kind is: short ones say nothing. */
const TELL_EVERY = 2000;

function teller(id: string): Progress {
  let told = performance.now();
  return (done, of) => {
    if (performance.now() - told < TELL_EVERY || done === 0) return;
    told = performance.now();
    process.stderr.write(`${id}: ${done} of ${of}\n`);
  };
}

/** The page's template is built from the sources, with a tool that nothing else here needs. */
async function pageTemplate(): Promise<string> {
  const { viewerTemplate } = await import("./viewerTemplate.js");
  return viewerTemplate(ROOT);
}

function makeFolder(out: string): void {
  try {
    mkdirSync(out, { recursive: true });
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new Unusable(`--out: cannot write to "${out}" (${why}); give a folder`);
  }
}

function argumentsOf(argv: readonly string[]): Arguments {
  try {
    const { values, positionals } = parseArgs({
      args: [...argv],
      allowPositionals: true,
      options: {
        out: { type: "string" },
        only: { type: "string" },
        scheme: { type: "string" },
        date: { type: "string" },
        without: { type: "string" },
        at: { type: "string" },
      },
    });
    const [file, ...more] = positionals;
    if (file === undefined || more.length > 0) throw new Unusable(USAGE);
    if (values.out === undefined) throw new Unusable(`--out: no folder to write to; ${USAGE}`);
    const kinds = kindsOf(values.only);
    return {
      file,
      out: values.out,
      kinds,
      without: leftOutOf(values.without, kinds),
      schemeId: values.scheme,
      madeAt: madeAt(values.date),
      address: addressOf(values.at),
      named: values.only !== undefined,
    };
  } catch (error) {
    throw unusableArguments(error, USAGE);
  }
}

function kindsOf(only: string | undefined): readonly HandoverKind[] {
  if (only === undefined) return HANDOVER_KINDS;
  const asked = only.split(",").map((id) => id.trim());
  const unknown = asked.find((id) => HANDOVER_KINDS.every((kind) => kind.id !== id));
  if (unknown !== undefined) {
    throw new Unusable(`--only: there is no kind "${unknown}"; use of: ${KNOWN}`);
  }
  return HANDOVER_KINDS.filter(({ id }) => asked.includes(id));
}

function leftOutOf(asked: string | undefined, kinds: readonly HandoverKind[]): readonly LeftOut[] {
  if (asked === undefined) return [];
  const words = asked.split(",").map((word) => word.trim());
  const unknown = words.find((word) => LEFT_OUT.every((what) => what !== word));
  if (unknown !== undefined) {
    throw new Unusable(`--without: cannot leave out "${unknown}"; use of: ${LEFT_OUT.join(", ")}`);
  }
  const whole = kinds.find(({ id }) => id !== "page" && id !== "link");
  if (whole !== undefined) {
    throw new Unusable(
      `--without: only page and link are made without, and "${whole.id}" would hold all; add --only page,link`,
    );
  }
  return LEFT_OUT.filter((what) => words.includes(what));
}

function addressOf(at: string | undefined): string | undefined {
  if (at === undefined || (/^(https?|file):/.test(at) && URL.canParse(at))) return at;
  throw new Unusable(
    `--at: "${at}" is no address of a page; write it as https://plans.example/bankyard/`,
  );
}

function madeAt(date: string | undefined): string {
  const at = date === undefined ? new Date() : new Date(date);
  if (Number.isNaN(at.getTime())) {
    throw new Unusable(`--date: "${date ?? ""}" is no date; write it as 2026-11-27T14:05:00Z`);
  }
  return at.toISOString().replace(/\.\d+Z$/, "Z");
}

try {
  await run(process.argv.slice(2));
} catch (error) {
  if (!(error instanceof Unusable)) throw error;
  process.stderr.write(`${error.message}\n`);
  process.exitCode = 2;
}
