import type { ReactNode } from "react";
import { words } from "../../words/index.js";
import type { Candidate } from "../parts.js";

/** A phrase of the engine begun as a sentence. */
const sentence = (phrase: string): string => phrase.charAt(0).toUpperCase() + phrase.slice(1);

/** The reasons against a machine beyond the first, which stands in its line already. */
export function MoreReasons({ candidate }: { candidate: Candidate }): ReactNode {
  const rest = candidate.reasons.slice(1);
  if (rest.length === 0) return null;
  return (
    <details className="working" data-reasons={candidate.id}>
      <summary>
        <span className="text">{words.counts.moreReasons(rest.length)}</span>
      </summary>
      <div className="inside">
        {rest.map(({ code, work, text }) => (
          <p key={`${code} ${work} ${text}`}>{sentence(text)}.</p>
        ))}
      </div>
    </details>
  );
}
