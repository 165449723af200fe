import type { ReactNode } from "react";
import type { Finding } from "../site/index.js";
import { scrollLeafTo } from "./scrollLeaf.js";

const WORDS = { stop: "Does not work as drawn", caution: "Caution", note: "Worth knowing" };

/** The first sentence, which says what, and the rest, which says what to do. */
export function parted(text: string): [string, string] {
  const end = /[.:;](?= [A-Z“(])/.exec(text);
  if (end === null) return [text, ""];
  return [text.slice(0, end.index + 1), text.slice(end.index + 1)];
}

function Card({ finding }: { finding: Finding }): ReactNode {
  const [what, rest] = parted(finding.text);
  return (
    <div
      className={`finding ${finding.level}`}
      data-finding={finding.code}
      data-where={finding.where}
    >
      <p>
        <span className={finding.level === "stop" ? "level" : "unseen"}>
          {WORDS[finding.level]}:{" "}
        </span>
        <strong>{what}</strong>
        {rest}
      </p>
      <p className="source">{finding.source}</p>
    </div>
  );
}

/** Findings as cards, those that stop the job first; nothing when there are none. */
export function Findings({ findings }: { findings: readonly Finding[] }): ReactNode {
  const order = ["stop", "caution", "note"] as const;
  const sorted = order.flatMap((level) => findings.filter((one) => one.level === level));
  return sorted.map((finding, index) => (
    <Card key={`${finding.code} ${finding.where} ${index}`} finding={finding} />
  ));
}

/** The findings that concern any of these ids. */
export function findingsAt(
  findings: readonly Finding[] | undefined,
  ids: readonly string[],
): readonly Finding[] {
  return (findings ?? []).filter((finding) => ids.includes(finding.where));
}

/** How many there are, as a way down to them; those that stop the job are shown at once. */
export function FindingsAhead(props: { findings: readonly Finding[]; to: string }): ReactNode {
  const { findings, to } = props;
  const stops = findings.filter((finding) => finding.level === "stop");
  const others = findings.length - stops.length;
  return (
    <>
      <Findings findings={stops} />
      {others > 0 && (
        <button
          type="button"
          className="link ahead"
          onClick={() => scrollLeafTo(document.getElementById(to))}
        >
          {others === 1 ? "One thing to look at" : `${others} things to look at`} ↓
        </button>
      )}
    </>
  );
}
