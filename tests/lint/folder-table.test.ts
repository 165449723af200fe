import path from "node:path";
import { RuleTester } from "eslint";
import tseslint from "typescript-eslint";
import { describe, expect, it } from "vitest";
import { ROOT } from "../../src/cli/prepare.mjs";
import { ENGINE_FOLDERS, FOLDER_TABLE, folderTable } from "./folder-table.js";

RuleTester.describe = describe;
RuleTester.it = it;

function inFile(file: string, code: string): { filename: string; code: string; name: string } {
  return { filename: path.join(ROOT, file), code, name: `${file}: ${code}` };
}

function faulty(file: string, code: string, message: RegExp) {
  return { ...inFile(file, code), errors: [{ message }] };
}

const ruleTester = new RuleTester({
  languageOptions: { parser: tseslint.parser, sourceType: "module" },
});

ruleTester.run("folder-table", folderTable, {
  valid: [
    inFile("src/ground/tin.ts", 'import type { Site } from "../site/index.js";'),
    inFile("src/ground/tin.ts", 'import { weld } from "./weld.js";'),
    inFile("src/ground/layers/stack.ts", 'import { weld } from "../weld.js";'),
    inFile("src/ground/layers/stack.ts", 'import type { Site } from "../../site/index.js";'),
    inFile("src/ground/tin.ts", 'import Delaunator from "delaunator";'),
    inFile("src/ground/tin.test.ts", 'import { expect } from "vitest";'),
    inFile("src/flow/fall.ts", 'import type { PipeRun } from "../dig/index.js";'),
    inFile("src/estimate/estimate.ts", 'export { cost } from "../cost/index.js";'),
    inFile("src/site/catalogue.ts", 'import pipes from "../../shared/catalogue/pipes.json";'),
    inFile("src/scene/terrain.tsx", 'import { Mesh } from "three";'),
    inFile("src/store/ask.ts", 'new Worker(new URL("./worker.ts", import.meta.url));'),
    inFile("src/cli/estimate.ts", 'import { readFileSync } from "node:fs";'),
    inFile("src/main.tsx", 'import { Desk } from "./desk/index.js"; import "./look.css";'),
    inFile("tests/reference/solid.test.ts", 'import { cut } from "../../src/ground/cut.js";'),
  ],
  invalid: [
    faulty("src/ground/tin.ts", 'import { digAll } from "../dig/index.js";', /not import src\/dig/),
    faulty("src/ground/tin.ts", 'import type { D } from "../dig/index.js";', /not import src\/dig/),
    faulty("src/ground/a/b.ts", 'export { d } from "../../dig/index.js";', /not import src\/dig/),
    faulty("src/ground/tin.ts", 'export * from "../dig/index.js";', /not import src\/dig/),
    faulty(
      "src/ground/tin.ts",
      'const d = await import("../dig/index.js");',
      /not import src\/dig/,
    ),
    faulty("src/ground/tin.ts", 'type D = import("../dig/index.js").Dig;', /not import src\/dig/),
    faulty("src/ground/tin.test.ts", 'import { d } from "../dig/index.js";', /not import src\/dig/),
    faulty(
      "src/units/length.ts",
      'import type { S } from "../site/index.js";',
      /not import src\/si/,
    ),
    faulty("src/units/length.ts", 'import { z } from "zod";', /imports nothing/),
    faulty("src/dig/tank.ts", 'import { tin } from "../ground/tin.js";', /through its index\.js/),
    faulty("src/main.tsx", 'import { Form } from "./desk/form.js";', /through its index\.js/),
    faulty("src/dig/tank.ts", 'import { Plane } from "three";', /pure engine/),
    faulty("src/dig/tank.ts", 'import { useMemo } from "react";', /pure engine/),
    faulty("src/dig/tank.ts", 'import x from "three/examples/jsm/x.js";', /pure engine/),
    faulty("src/dig/tank.ts", 'import { readFileSync } from "node:fs";', /only src\/cli/),
    faulty("src/desk/form.tsx", 'import fs from "fs";', /only src\/cli/),
    faulty("src/cli/estimate.ts", 'import { create } from "zustand";', /without a page/),
    faulty("src/dig/tank.ts", 'import m from "../../shared/catalogue/m.json";', /read shared/),
    faulty("src/cost/price.ts", 'import { oracle } from "../../tests/x.js";', /only from src/),
    faulty("src/desk/form.tsx", 'import { App } from "../app.js";', /the app's root/),
    faulty("src/desk/form.tsx", 'import { App } from "/src/app.js";', /relative path/),
    faulty("src/scene/a.ts", 'new Worker(new URL("../store/w.ts", import.meta.url))', /src\/store/),
    faulty("src/odds/ends.ts", 'import { a } from "./a.js";', /not in the folder table/),
  ],
});

describe("the folder table itself", () => {
  it("has no cycle: every engine folder imports only folders that come before it", () => {
    const order = [
      "units",
      "site",
      "ground",
      "dig",
      "hydraulics",
      "flow",
      "safety",
      "runoff",
      "land",
      "permit",
      "machines",
      "cost",
    ];
    expect([...order, "estimate", "chance"]).toEqual(ENGINE_FOLDERS);
    for (const [at, folder] of ENGINE_FOLDERS.entries()) {
      for (const other of FOLDER_TABLE[folder] ?? []) {
        expect(ENGINE_FOLDERS.indexOf(other), `${folder} → ${other}`).toBeLessThan(at);
        expect(ENGINE_FOLDERS.indexOf(other), `${folder} → ${other}`).toBeGreaterThanOrEqual(0);
      }
    }
  });
});
