import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, it } from "vitest";

const SITE = "shared/sites/alder-flat.site.json";
const run = ["--import", "tsx", "src/cli/handover.ts"];

it("writes the kinds asked for, prints their paths, and ends with 2 and one line on what it cannot use", () => {
  const folder = mkdtempSync(join(tmpdir(), "bankyard-handover-"));
  try {
    const asked = [SITE, "--out", folder, "--only", "orders", "--scheme", "gravity"];
    const printed = execFileSync(process.execPath, [...run, ...asked], { encoding: "utf8" });
    const names = readdirSync(folder);
    expect(names.sort()).toEqual([
      "alder-flat-gravity-order-list.csv",
      "alder-flat-gravity-order-message.txt",
    ]);
    expect(printed.trim().split("\n").sort()).toEqual(names.map((name) => join(folder, name)));
    const wrong = spawnSync(process.execPath, [...run, SITE, "--out", folder, "--only", "cake"], {
      encoding: "utf8",
    });
    expect(wrong.status).toBe(2);
    expect(wrong.stderr.trim().split("\n")).toHaveLength(1);
    expect(wrong.stderr).toContain('there is no kind "cake"');
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});

it("makes the page without costs and names, and refuses a kind that would hold them", () => {
  const folder = mkdtempSync(join(tmpdir(), "bankyard-copy-"));
  const asked = [SITE, "--out", folder, "--without", "names,costs"];
  try {
    const told = (more: readonly string[]): string => {
      const { status, stderr } = spawnSync(process.execPath, [...run, ...asked, ...more], {
        encoding: "utf8",
      });
      expect(status).toBe(2);
      return stderr;
    };
    expect(told([])).toContain("only page and link are made without");
    expect(told(["--only", "page", "--without", "cake"])).toContain('cannot leave out "cake"');
    execFileSync(process.execPath, [...run, ...asked, "--only", "page"]);
    const [name = "", ...more] = readdirSync(folder);
    expect([name, more]).toEqual(["alder-flat-pumped-page-no-costs-no-names.html", []]);
    const page = readFileSync(join(folder, name), "utf8");
    // Built for use, though NODE_ENV says "test" here.
    expect(page).not.toContain("jsxDEV");
    // The whole file, its program with it.
    expect(page).toContain('"leftOut":["costs","names"]');
    for (const told of ["R. Vale", "Orchard Track", "00-214-07", "26-124-0117"]) {
      expect(page).not.toContain(told);
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}, 60_000);

it("writes the link that begins with --at, and none of a site that is too long for one", () => {
  const folder = mkdtempSync(join(tmpdir(), "bankyard-link-"));
  try {
    const at = ["--at", "https://plans.example/app/"];
    const link = [...run, SITE, "--out", folder, "--only", "link", ...at];
    const place = execFileSync(process.execPath, link, { encoding: "utf8" }).trim();
    expect(readFileSync(place, "utf8").startsWith("https://plans.example/app/#site=")).toBe(true);
    rmSync(place);

    const noise = Array.from({ length: 4000 }, (_, i) => Math.sin(i * 12.9898) * 43758.5453);
    const site = JSON.parse(readFileSync(SITE, "utf8")) as object;
    const long = join(folder, "long.site.json");
    writeFileSync(long, JSON.stringify({ ...site, notes: noise.join(" ") }));
    const tried = spawnSync(
      process.execPath,
      [...run, long, "--out", folder, "--only", "link", ...at],
      { encoding: "utf8" },
    );
    expect([tried.status, tried.stdout]).toEqual([2, ""]);
    expect(tried.stderr).toContain("too long for a link");
    expect(readdirSync(folder)).toEqual(["long.site.json"]);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
