/**
 * `npm run -s handover -- FILE --out DIR [--only KIND,KIND…] [--scheme ID] [--date ISO]`: writes what
 * is handed over as files, and prints the path of each. The kinds are those of
 * src/handover/makers.ts. Without `--date` the files say when they were made.
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { estimate } from "../estimate/index.js";
import { HANDOVER_KINDS, type HandoverKind } from "../handover/index.js";
import { ROOT } from "./prepare.mjs";
import { fontsOnDisk } from "./sheetFonts.js";
import { chosenScheme, unusableArguments, Unusable, usableSite } from "./siteFile.js";

const KNOWN = HANDOVER_KINDS.map(({ id }) => id).join(", ");
const USAGE = `usage: npm run -s handover -- FILE --out DIR [--only KIND,KIND…] [--scheme ID] [--date ISO]; kinds: ${KNOWN}`;

interface Arguments {
  file: string;
  out: string;
  kinds: readonly HandoverKind[];
  schemeId: string | undefined;
  madeAt: string;
}

async function run(argv: readonly string[]): Promise<void> {
  const { file, out, kinds, schemeId, madeAt } = argumentsOf(argv);
  const site = usableSite(file);
  const scheme = chosenScheme(file, site, schemeId);
  const job = { site, schemeId: scheme, estimate: estimate(site, scheme), madeAt };
  makeFolder(out);
  for (const kind of kinds) {
    const make = await kind.load();
    for (const { name, data } of await make(job, { pageTemplate, fonts: fontsOnDisk })) {
      const place = join(out, name);
      writeFileSync(place, data);
      process.stdout.write(`${place}\n`);
    }
  }
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
      },
    });
    const [file, ...more] = positionals;
    if (file === undefined || more.length > 0) throw new Unusable(USAGE);
    if (values.out === undefined) throw new Unusable(`--out: no folder to write to; ${USAGE}`);
    return {
      file,
      out: values.out,
      kinds: kindsOf(values.only),
      schemeId: values.scheme,
      madeAt: madeAt(values.date),
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
