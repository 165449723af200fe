import react3 from "@react-three/eslint-plugin";
import { defineConfig } from "eslint/config";
import reactHooks from "eslint-plugin-react-hooks";
import tseslint from "typescript-eslint";
import { ENGINE_FOLDERS, folderTable } from "./tests/lint/folder-table.js";

const TESTS = ["tests/**", "src/**/*.test.{ts,tsx}"];
const LENGTH = { skipBlankLines: true, skipComments: true };

/** What exists only in a page, a worker or Node, or differs from one run to the next. */
const IMPURE_GLOBALS = [
  ...["window", "document", "navigator", "location", "localStorage", "sessionStorage", "indexedDB"],
  ...["fetch", "XMLHttpRequest", "WebSocket", "EventSource", "Worker", "postMessage"],
  ...["console", "Date", "performance", "crypto", "process", "Buffer", "globalThis", "self"],
  ...["setTimeout", "setInterval", "setImmediate", "queueMicrotask", "requestAnimationFrame"],
];

/** `x!`, unless x is `list[i]`, `map.get(key)`, `list.at(i)`, `list.pop()` or `list.shift()`. */
const UNPROVEN_ASSERTION =
  "TSNonNullExpression:not([expression.computed=true])" +
  ":not([expression.callee.property.name=/^(get|at|pop|shift)$/])";

export default defineConfig(
  { ignores: ["dist/", "tests/browser/output/"] },
  {
    linterOptions: { reportUnusedDisableDirectives: "error" },
    languageOptions: {
      parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname },
    },
  },
  tseslint.configs.strictTypeChecked,
  {
    plugins: { bankyard: { rules: { "folder-table": folderTable } } },
    rules: {
      "bankyard/folder-table": "error",
      "@typescript-eslint/no-explicit-any": "error",
      "@typescript-eslint/consistent-type-imports": "error",
      "@typescript-eslint/switch-exhaustiveness-check": [
        "error",
        { considerDefaultExhaustiveForUnions: true },
      ],
      "@typescript-eslint/restrict-template-expressions": ["error", { allowNumber: true }],
      "@typescript-eslint/no-confusing-void-expression": [
        "error",
        { ignoreArrowShorthand: true, ignoreVoidOperator: true },
      ],
      "@typescript-eslint/no-unused-vars": ["error", { argsIgnorePattern: "^_" }],
      "@typescript-eslint/method-signature-style": ["error", "property"],
      // Loops over flat arrays index within bounds that the compiler cannot see; what else may be
      // asserted is narrowed below.
      "@typescript-eslint/no-non-null-assertion": "off",
      "max-lines": ["error", { max: 400, ...LENGTH }],
      "max-lines-per-function": ["error", { max: 60, ...LENGTH }],
      "max-depth": ["error", 3],
      "no-empty": ["error", { allowEmptyCatch: false }],
      eqeqeq: "error",
      "no-restricted-syntax": [
        "error",
        { selector: "ExportAllDeclaration", message: "Name what is exported." },
        // no-empty lets a catch with nothing but a comment pass.
        { selector: "CatchClause[body.body.length=0]", message: "A catch must do something." },
        {
          selector: UNPROVEN_ASSERTION,
          message: "Only an element of an array or map may be asserted with !; check the rest.",
        },
      ],
    },
  },
  {
    files: ["src/**/*.{ts,tsx}"],
    ignores: ["**/*.d.ts"],
    rules: {
      "no-console": "error",
      "no-restricted-exports": ["error", { restrictDefaultExports: { direct: true } }],
    },
  },
  {
    files: ["src/**/*.tsx"],
    // The plugin's own types are looser than ESLint's, so it is put together again here.
    plugins: { "@react-three": { rules: react3.rules } },
    extends: [reactHooks.configs.flat["recommended-latest"]],
    rules: {
      "@react-three/no-clone-in-loop": "error",
      "@react-three/no-new-in-loop": "error",
      "max-lines-per-function": ["error", { max: 120, ...LENGTH }],
    },
  },
  {
    files: ["src/cli/**"],
    rules: { "no-console": "off" },
  },
  {
    files: ENGINE_FOLDERS.map((folder) => `src/${folder}/**/*.ts`),
    ignores: TESTS,
    rules: {
      "no-restricted-globals": [
        "error",
        ...IMPURE_GLOBALS.map((name) => ({ name, message: "The engine is pure." })),
      ],
      "no-restricted-properties": [
        "error",
        { object: "Math", property: "random", message: "The engine is pure." },
      ],
    },
  },
  {
    files: TESTS,
    rules: {
      "max-lines": "off",
      "max-lines-per-function": "off",
    },
  },
);
