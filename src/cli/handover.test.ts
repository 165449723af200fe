import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
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
    expect(told([])).toContain("only the page is made without");
    expect(told(["--only", "page", "--without", "cake"])).toContain('cannot leave out "cake"');
    execFileSync(process.execPath, [...run, ...asked, "--only", "page"]);
    const [name = "", ...more] = readdirSync(folder);
    expect([name, more]).toEqual(["alder-flat-pumped-page-no-costs-no-names.html", []]);
    const page = readFileSync(join(folder, name), "utf8");
    // The whole file, its program with it.
    expect(page).toContain('"leftOut":["costs","names"]');
    for (const told of ["R. Vale", "Orchard Track", "00-214-07", "26-124-0117"]) {
      expect(page).not.toContain(told);
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}, 60_000);
