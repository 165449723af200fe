import type { ReactNode } from "react";
import type { Estimate } from "../estimate/index.js";
import { unpricedWords } from "../sheets/index.js";
import type { Site } from "../site/index.js";

/** What is ordered and in no line of the cost; nothing where all of it is priced. */
export function UnpricedNote({ site, estimate }: { site: Site; estimate: Estimate }): ReactNode {
  const text = unpricedWords(site, estimate);
  return text === null ? null : (
    <p className="says" data-unpriced="">
      {text}
    </p>
  );
}
