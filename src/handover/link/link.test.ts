import { readFileSync } from "node:fs";
import { inflateSync } from "node:zlib";
import fc from "fast-check";
import { expect, it } from "vitest";
import { readSite, writeSite } from "../../site/index.js";
import { plainSite, plainTank } from "../../site/site.fixture.js";
import type { Site } from "../../site/index.js";
import { isSiteLink } from "./linkMark.js";
import { exampleJob } from "../job.fixture.js";
import { linkOf } from "./linkOf.js";
import { makeLink, TooLongForLink } from "./makeLink.js";
import { siteOfLink } from "./siteOfLink.js";

const BASE = "https://plans.example/app/";

const site = plainSite({ works: [plainTank()], layers: [0.3, 1] });

const example = (name: string): Site => {
  const address = new URL(`../../../shared/sites/${name}.site.json`, import.meta.url);
  const read = readSite(readFileSync(address, "utf8"));
  if (!read.ok) throw new Error(`expected ${name} to be read`);
  return read.value;
};

it("brings any site back as it was, also what this app does not know", async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.string({ unit: "grapheme" }),
      fc.array(fc.double({ noNaN: true, noDefaultInfinity: true })),
      fc.jsonValue(),
      async (name, heights, more) => {
        const points = site.survey.points.map((point, i) => ({ ...point, z: heights[i] ?? i }));
        const sent = { ...site, name, survey: { ...site.survey, points }, later: more };
        const { address } = linkOf(sent, BASE);
        expect(address).toMatch(/^https:\/\/plans\.example\/app\/#site=[\w-]+$/);
        const read = await siteOfLink(address);
        expect(read.ok && writeSite(read.value)).toBe(writeSite(sent));
      },
    ),
    { numRuns: 60 },
  );
});

it("is packed as any reader of zlib and base64url unpacks it", () => {
  const letters = linkOf(site, BASE).address.split("#site=")[1]!;
  const text = inflateSync(Buffer.from(letters, "base64url")).toString("utf8");
  expect(JSON.parse(text)).toEqual(site);
});

it("refuses a link that was cut short, wherever it was cut", async () => {
  const { address } = linkOf(site, BASE);
  await fc.assert(
    fc.asyncProperty(fc.integer({ min: 1, max: address.length - BASE.length }), async (less) => {
      const read = await siteOfLink(address.slice(0, -less));
      expect(read.ok || read.problems.map(({ code }) => code)).toEqual(["bad-link"]);
    }),
    { numRuns: 60 },
  );
});

it("refuses a link with a letter changed", async () => {
  const { address } = linkOf(site, BASE);
  const first = address.indexOf("=") + 1;
  await fc.assert(
    fc.asyncProperty(
      fc.integer({ min: first, max: address.length - 2 }),
      fc.constantFrom("A", "a", "0", "-", "_", " "),
      async (at, letter) => {
        fc.pre(address[at] !== letter);
        const changed = address.slice(0, at) + letter + address.slice(at + 1);
        const read = await siteOfLink(changed);
        expect(read.ok).toBe(false);
      },
    ),
    { numRuns: 60 },
  );
});

it("refuses what would unpack to more than any site of a link", async () => {
  const huge = { ...site, notes: " ".repeat(5_000_000) };
  const read = await siteOfLink(linkOf(huge, BASE).address);
  expect(read.ok).toBe(false);
});

it("says of a site that it is too long, and how long the examples are", () => {
  const noise = Array.from({ length: 4000 }, (_, i) => Math.sin(i * 12.9898) * 43758.5453);
  const long = linkOf({ ...site, notes: noise.join(" ") }, BASE);
  expect([long.fit, long.length > 32_000]).toEqual(["over", true]);
  expect(long.says).toContain("too long");
  expect(linkOf(example("quarry-lane"), BASE).fit).toBe("sure");
  const alder = linkOf(example("alder-flat"), BASE);
  expect(alder.length).toBe(alder.address.length);
  expect([alder.fit, alder.length < 12_000]).toEqual(["long", true]);
});

it("is written as a text by its maker: all of it, or the part from the # on and what goes before", async () => {
  const job = exampleJob("quarry-lane");
  const textOf = async (address?: string): Promise<string> => {
    const files = await makeLink(job, address === undefined ? {} : { address });
    return files[0]!.data as string;
  };
  expect((await textOf(BASE)).split("\n")[0]).toBe(linkOf(job.site, BASE).address);
  const bare = await textOf();
  expect(bare.startsWith("#site=")).toBe(true);
  expect(bare).toContain("Put before it the address");
  for (const caution of job.estimate.cautions) expect(bare).toContain(caution);
});

it("is written without what is left out, as the page is", async () => {
  const job = exampleJob("alder-flat");
  const choices = { page: { without: ["names"] } } as const;
  const files = await makeLink(job, { address: BASE, choices });
  const text = files[0]!.data as string;
  const read = await siteOfLink(text.split("\n")[0]!);
  expect(read.ok && [read.value.leftOut, read.value.project?.preparer]).toEqual([
    ["names"],
    undefined,
  ]);
  expect(job.site.project?.preparer).toBeDefined();
  expect(text).not.toContain(String(job.site.project?.preparer));
});

it("is not written of a site that is too long for any link", async () => {
  const noise = Array.from({ length: 4000 }, (_, i) => Math.sin(i * 12.9898) * 43758.5453);
  const job = exampleJob("quarry-lane", (read) => ({ ...read, notes: noise.join(" ") }));
  await expect(makeLink(job, { address: BASE })).rejects.toThrow(TooLongForLink);
});

it("knows a link by its mark, and puts a new one in place of an old", async () => {
  const first = linkOf(site, BASE).address;
  expect([isSiteLink(first), isSiteLink(`${BASE}#findings`)]).toEqual([true, false]);
  expect(linkOf(site, first).address).toBe(first);
  expect((await siteOfLink(`${BASE}#findings`)).ok).toBe(false);
});
