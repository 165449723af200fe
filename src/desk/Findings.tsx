import type { ReactNode } from "react";
import type { Finding } from "../site/index.js";

const WORDS = { stop: "Does not work as drawn", caution: "Look at this", note: "Worth knowing" };

/** Findings as cards, those that stop the job first; nothing when there are none. */
export function Findings({ findings }: { findings: readonly Finding[] }): ReactNode {
  const order = ["stop", "caution", "note"] as const;
  const sorted = order.flatMap((level) => findings.filter((one) => one.level === level));
  return sorted.map((finding, index) => (
    <div
      key={`${finding.code} ${finding.where} ${index}`}
      className={`finding ${finding.level}`}
      data-finding={finding.code}
      data-where={finding.where}
    >
      <p className="level">{WORDS[finding.level]}</p>
      <p>{finding.text}</p>
      <p className="source">{finding.source}</p>
    </div>
  ));
}

/** The findings that concern any of these ids. */
export function findingsAt(
  findings: readonly Finding[] | undefined,
  ids: readonly string[],
): readonly Finding[] {
  return (findings ?? []).filter((finding) => ids.includes(finding.where));
}
