import react from "@vitejs/plugin-react";
import { defineConfig } from "vitest/config";
import { precache } from "./build/precache.js";
import { viewerPage } from "./build/viewer.js";

const ONE_MINUTE = 60_000;

/**
 * Files of their own for what changes at different times. React and what both the page and the
 * drawn ground need comes first: a group takes along what its modules import.
 */
const CHUNKS = [
  {
    name: "react",
    test: /node_modules\/(react|react-dom|scheduler|zustand|use-sync-external-store)\//,
    priority: 3,
  },
  { name: "three", test: /node_modules\/(three|@react-three)\//, priority: 2 },
  {
    name: "engine",
    test: /src\/(units|site|ground|dig|hydraulics|flow|safety|machines|cost|estimate)\//,
    priority: 1,
  },
];

/**
 * Each worker loads the engine once and not once for each of 300 files: some 130 s of work. A test
 * that stubs or changes what others read puts it back.
 */
const IN_ONE_PLACE = { isolate: false, testTimeout: ONE_MINUTE, hookTimeout: ONE_MINUTE };

/** What the tests have in common that open the built app in a real browser. */
const IN_BROWSER = {
  globalSetup: ["tests/browser/served-app.ts"],
  // One browser serves all files of a worker; each test has a profile of its own.
  isolate: false,
  // A gesture on a page drawn in software by a busy machine can miss its frame; the second try is
  // printed. What fails twice has failed.
  retry: 1,
  testTimeout: 2 * ONE_MINUTE,
  hookTimeout: 2 * ONE_MINUTE,
};

export default defineConfig({
  base: "./",
  plugins: [react(), viewerPage(), precache()],
  // Two copies of three or React in one page break instanceof checks and hooks.
  resolve: { dedupe: ["three", "react", "react-dom"] },
  build: {
    target: "es2022",
    chunkSizeWarningLimit: 1200,
    rolldownOptions: { output: { codeSplitting: { groups: [...CHUNKS] } } },
  },
  worker: { format: "es" },
  test: {
    projects: [
      {
        extends: true,
        test: {
          ...IN_ONE_PLACE,
          name: "unit",
          setupFiles: ["tests/fixtures/caseSeed.ts"],
          include: ["src/**/*.test.{ts,tsx}", "tests/lint/**/*.test.ts"],
        },
      },
      {
        extends: true,
        test: {
          ...IN_ONE_PLACE,
          name: "published",
          include: ["tests/published/**/*.test.ts"],
        },
      },
      {
        extends: true,
        test: {
          ...IN_ONE_PLACE,
          name: "reference",
          include: ["tests/reference/**/*.test.ts"],
        },
      },
      {
        extends: true,
        test: {
          ...IN_ONE_PLACE,
          name: "property",
          include: ["tests/property/**/*.test.ts"],
        },
      },
      {
        extends: true,
        test: {
          ...IN_BROWSER,
          name: "browser",
          include: ["tests/browser/**/*.browser.ts"],
          // A page rests most of the time that it is looked at: two of them fit on two cores.
          maxWorkers: 2,
        },
      },
      {
        extends: true,
        test: {
          ...IN_BROWSER,
          name: "timed",
          // Drawing by software keeps both cores busy with one page.
          include: ["tests/browser/**/*.timed.ts"],
          env: { BANKYARD_TIMED: "yes" },
          fileParallelism: false,
        },
      },
    ],
  },
});
