import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readSite, type Site } from "../../site/index.js";
import { dailyFlow, head } from "../../units/index.js";
import { jobOf, sheetsFrom, textsOf } from "../plan/plan.fixture.js";
import { sheetsOf } from "../sheetsOf.js";
import { flowSheets } from "./flow.js";

function siteOf(example: string): Site {
  const read = readSite(readFileSync(`shared/sites/${example}.site.json`, "utf8"));
  if (!read.ok) throw new Error(read.problems[0]?.text);
  return read.value;
}

const job = jobOf(siteOf("quarry-lane"), "tabloid");
const sheets = sheetsFrom(flowSheets, job);
const said = sheets.flatMap(textsOf).map(({ text }) => text);

describe("the sheet of flow, pump and tanks", () => {
  it("prints the design flow, each drain, and each pump's duty", () => {
    const { sizing, pipes, pressure } = job.estimate.flow;
    const { units } = job.site;
    expect(said).toContain(dailyFlow.print(sizing.daily?.value ?? NaN, units));
    for (const { name, service, field } of pipes) {
      if (service === "gravity" && !field) expect(said).toContain(name);
    }
    for (const { parts, lift } of pressure) {
      for (const part of [lift.value, parts.main, parts.last]) {
        expect(said).toContain(head.print(part, units));
      }
    }
    expect(pipes.length + pressure.length).toBeGreaterThan(0);
  });

  it("gives a drain the diameter that its flow is reckoned with, and who says so once", () => {
    const alder = sheetsFrom(flowSheets, jobOf(siteOf("alder-flat"), "letter"));
    const texts = alder.flatMap(textsOf).map(({ text }) => text);
    expect(texts).toContain("4.03 in"); // 4.026 in: ASTM D1785, Schedule 40
    expect(texts.filter((text) => text.startsWith("Least fall: "))).toHaveLength(1);
  });

  it("is none where nothing flows", () => {
    const { site } = job;
    const bare = { ...site, schemes: [{ id: "none", name: "Nothing yet", works: [] }] };
    expect(sheetsFrom(flowSheets, jobOf(bare, "letter"))).toEqual([]);
  });

  it("stands in the permit's list for the sums and the design flow", () => {
    const pages = sheetsOf(job);
    const at = pages.find(({ id }) => id === "flow")?.number;
    const permit = pages.filter(({ id }) => id.startsWith("permit"));
    const texts = permit.flatMap((page) => textsOf({ ...page, north: null, legend: [] } as never));
    for (const { id, title } of job.estimate.permit.groups.flatMap(({ items }) => items)) {
      if (id !== "bedrooms" && id !== "hydraulics") continue;
      const line = texts.filter(({ text }) => title.startsWith(text) && text.length > 8);
      expect(line.length).toBeGreaterThan(0);
      const [left, base] = line[0]!.at;
      const beside = texts.filter(({ at: [x, y] }) => y === base && x > left);
      expect(beside.map(({ text }) => text)).toContain(String(at));
    }
  });
});
