import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, rmSync } from "node:fs";
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
