import { XMLParser } from "fast-xml-parser";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { estimate } from "../../estimate/index.js";
import { readSite, writeSite } from "../../site/index.js";
import { plainSite, plainTank } from "../../site/site.fixture.js";
import type { HandoverJob } from "../job.js";
import { inHtml, inScript } from "./escaped.js";
import { makePage, pageOf } from "./pageOf.js";
import { templateOf } from "./template.js";

const template = templateOf({ script: "run();", styles: "p{}", hash: () => "abc=" });

function jobOf(name: string): HandoverJob {
  const site = { ...plainSite({ works: [plainTank()], layers: [0.3, 1] }), name };
  const schemeId = site.schemes[0]!.id;
  return { site, schemeId, estimate: estimate(site, schemeId), madeAt: "2026-11-27T14:05:00Z" };
}

/** The text of the site's script element, as a browser that reads HTML ends it. */
function siteIn(page: string): string {
  const begin = page.indexOf(">", page.indexOf('<script type="application/json"')) + 1;
  return page.slice(begin, page.toLowerCase().indexOf("</script", begin));
}

describe("text put into HTML", () => {
  it("of JSON never ends its script element, and reads as it was", () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.oneof(
            fc.string({ unit: "binary" }),
            fc.constantFrom(
              "</script>",
              "<!--",
              "\u2028",
              "\u2029",
              "<script",
              "]]>",
              "$&",
              "\\u003c",
            ),
          ),
        ),
        (parts) => {
          const value = { text: parts.join(""), parts };
          const written = inScript(JSON.stringify(value));
          expect(written).not.toMatch(/[<\u2028\u2029]/);
          expect(JSON.parse(written)).toEqual(value);
        },
      ),
    );
  });

  it("between tags and in attributes is read back by a parser of markup", () => {
    const parser = new XMLParser({ ignoreAttributes: false, trimValues: false });
    fc.assert(
      fc.property(fc.string({ unit: "grapheme-ascii", minLength: 1 }), (text) => {
        // What only holds blanks is no text to this parser.
        fc.pre(text.trim() !== "");
        const { a } = parser.parse(`<a b="${inHtml(text)}">x${inHtml(text)}</a>`) as {
          a: { "@_b": string; "#text": string };
        };
        expect(a["#text"]).toBe(`x${text}`);
        expect(a["@_b"]).toBe(text);
      }),
    );
  });
});

describe("the page of one file", () => {
  it.each([
    "Plain",
    "</script><script>alert(1)</script>",
    "<!-- $& $1 <!--put:site-->",
    "“\u2028”",
  ])("holds the site named %j whole", (name) => {
    const job = jobOf(name);
    const page = String(pageOf(template, job).data);
    const read = readSite(siteIn(page));
    expect(read.ok && writeSite(read.value)).toBe(writeSite(job.site));
    expect(page.match(/<script/g)).toHaveLength(2);
    expect(page).toContain(`<h1>${inHtml(name)}</h1>`);
  });

  it("says without any script what it is, when it was made, its cut and every caution", () => {
    const job = jobOf("Slope");
    const page = String(pageOf(template, job).data);
    expect(page).toContain("27 November 2026");
    expect(page).toContain("cannot change the plan");
    const cut = Object.values(job.estimate.cut).reduce((sum, volume) => sum + volume, 0);
    expect(page).toContain(`<b>Cut</b> ${cut.toFixed(1)}`);
    expect(job.estimate.cautions.length).toBeGreaterThan(5);
    for (const caution of job.estimate.cautions) expect(page).toContain(inHtml(caution));
  });

  it("lets nothing be fetched, and only its own script and styles run", () => {
    const policy = /Content-Security-Policy" content="([^"]+)"/.exec(template)?.[1] ?? "";
    expect(policy).toMatch(
      /^default-src 'none'; script-src 'sha256-abc='; style-src 'sha256-abc='/,
    );
    expect(policy).not.toMatch(/http|\*|unsafe|'self'|connect-src/);
  });

  it("is not made of a template that lost a place, nor without one", async () => {
    expect(() => pageOf("<html></html>", jobOf("A"))).toThrow("one place for the title");
    await expect(makePage(jobOf("A"))).rejects.toThrow("template");
    const files = await makePage(jobOf("A"), { pageTemplate: () => Promise.resolve(template) });
    expect(files.map(({ name, type }) => [name, type])).toEqual([
      ["a-plan-page.html", "text/html"],
    ]);
  });

  it("does not take a script that would end its element early", () => {
    const parts = { styles: "", hash: () => "" };
    expect(templateOf({ ...parts, script: 'a="</script>"' })).toContain('a="<\\/script>"');
    expect(() => templateOf({ ...parts, script: 'a="<!--"' })).toThrow("<!--");
  });
});
