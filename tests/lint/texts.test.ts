import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import ts from "typescript";
import { describe, expect, it } from "vitest";
import { ROOT } from "../../src/cli/prepare.mjs";

/** Attributes that a person reads or hears. */
const READ = new Set("aria-label title placeholder label note usual text amount".split(" "));

/** Names and signs that are the same in every language. */
const SAME = new Set(["Bankyard", "A", "B", "A–B", "A ⇄ B"]);

const isText = (text: string): boolean => /\p{L}/u.test(text) && !SAME.has(text.trim());

/** The strings that an expression may come to, without those within calls. */
function stringsOf(node: ts.Node): string[] {
  if (ts.isStringLiteralLike(node)) return [node.text];
  if (ts.isTemplateExpression(node)) {
    const spans = node.templateSpans.flatMap((span) => [
      span.literal.text,
      ...stringsOf(span.expression),
    ]);
    return [node.head.text, ...spans];
  }
  if (ts.isConditionalExpression(node))
    return [...stringsOf(node.whenTrue), ...stringsOf(node.whenFalse)];
  if (ts.isBinaryExpression(node)) {
    const joins = ["??", "||", "+"].includes(node.operatorToken.getText());
    const after = node.operatorToken.kind === ts.SyntaxKind.AmpersandAmpersandToken;
    return joins || after ? [...(joins ? stringsOf(node.left) : []), ...stringsOf(node.right)] : [];
  }
  if (ts.isParenthesizedExpression(node) || ts.isJsxExpression(node))
    return node.expression === undefined ? [] : stringsOf(node.expression);
  return [];
}

/** Texts written in a file's JSX, each as "line: text". */
function textsIn(name: string, code: string): string[] {
  const file = ts.createSourceFile(name, code, ts.ScriptTarget.Latest, true, ts.ScriptKind.TSX);
  const found: string[] = [];
  const take = (node: ts.Node, texts: readonly string[]): void => {
    const line = file.getLineAndCharacterOfPosition(node.getStart(file)).line + 1;
    for (const text of texts) if (isText(text)) found.push(`${line}: ${text.trim()}`);
  };
  const visit = (node: ts.Node): void => {
    if (ts.isJsxText(node)) take(node, [node.text]);
    else if (ts.isJsxAttribute(node)) {
      if (node.initializer !== undefined && READ.has(node.name.getText(file)))
        take(node, stringsOf(node.initializer));
    } else if (ts.isJsxExpression(node) && !ts.isJsxAttribute(node.parent))
      take(node, stringsOf(node));
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

/** All components of a folder, by their path from the repository's root. */
const componentsOf = (folder: string): string[] =>
  readdirSync(path.join(ROOT, folder), { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".tsx"))
    .map((name) => path.posix.join(folder, name.split(path.sep).join("/")));

describe("the texts of the page", () => {
  it.each(["src/desk", "src/scene", "src/drawn", "src/viewer"])(
    "stand in src/words, none in %s",
    (folder) => {
      const texts = componentsOf(folder).flatMap((name) =>
        textsIn(name, readFileSync(path.join(ROOT, name), "utf8")).map((text) => `${name}:${text}`),
      );
      expect(texts).toEqual([]);
    },
  );

  it.each([
    ["<p>Dug</p>", "1: Dug"],
    ["<p>{count} loads</p>", "1: loads"],
    ['<p>{isDug ? "dug" : words.a.b}</p>', "1: dug"],
    ['<p>{isDug && "dug"}</p>', "1: dug"],
    ['<p aria-label="Cut" />', "1: Cut"],
    ["<p title={`Cut of ${name}`} />", "1: Cut of"],
    ["<Field label={<>Wide</>} />", "1: Wide"],
  ])("are found in %s", (code, text) => {
    expect(textsIn("a.tsx", `const a = ${code};`)).toEqual([text]);
  });

  it.each([
    "<p>{words.a.b}</p>",
    '<p className="soft" data-field="cut">{words.a.b(print(cut, "m"))}</p>',
    "<p>× {count} ▾</p>",
    '<p>{kind === "tank" && words.a.b}</p>',
    "<h1>Bankyard</h1>",
  ])("are not seen in %s", (code) => {
    expect(textsIn("a.tsx", `const a = ${code};`)).toEqual([]);
  });
});
