/** The page of one file before a site is put into it. */

/** Places where `pageOf` puts what belongs to one site; each stands in a template once. */
export const PLACES = {
  title: "<!--put:title-->",
  plain: "<!--put:plain-->",
  site: "<!--put:site-->",
} as const;

/** Whether a text is a template, every place in it once. */
export function isTemplate(text: string): boolean {
  return Object.values(PLACES).every((place) => text.split(place).length === 2);
}

export interface TemplateParts {
  /** The whole script of the page. */
  script: string;
  /** All its styles, the type in them as data. */
  styles: string;
  /** SHA-256 of a text in UTF-8, base64. */
  hash: (text: string) => string;
}

/**
 * Puts the parts together. The page's own policy lets run and show what stands in it by its hash, and
 * lets nothing be fetched: no script, picture, type or answer from anywhere. Throws for a script or
 * style that would end early where it stands.
 */
export function templateOf({ script, styles, hash }: TemplateParts): string {
  // In a string or a pattern the stroke may be written with a backslash; the meaning is the same.
  const safe = script.replace(/<\/(?=script)/gi, "<\\/");
  if (safe.includes("<!--")) throw new Error("expected no <!-- in the page's script");
  if (/<\/style/i.test(styles)) throw new Error("expected no </style in the page's styles");
  const policy = [
    "default-src 'none'",
    `script-src 'sha256-${hash(safe)}'`,
    `style-src 'sha256-${hash(styles)}'`,
    "img-src data: blob:",
    "font-src data:",
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1, viewport-fit=cover">
<meta name="color-scheme" content="light dark">
<meta name="referrer" content="no-referrer">
<meta name="generator" content="Bankyard">
<link rel="icon" href="data:,">
<title>${PLACES.title}</title>
<style>${styles}</style>
</head>
<body>
<div id="desk">${PLACES.plain}</div>
${PLACES.site}
<script>${safe}</script>
</body>
</html>
`;
}
