import type { ReactNode } from "react";
import { acceptanceOf, parted } from "../site/index.js";
import type { Finding } from "../site/index.js";
import { words } from "../words/index.js";
import { TakeOn, takenWords, Withdraw } from "./permit/TakeOn.js";
import { scrollLeafTo } from "./scrollLeaf.js";
import { useSite } from "./useSite.js";

const WORDS = {
  stop: words.desk.doesNotWorkDrawn,
  caution: words.desk.caution,
  note: words.desk.worthKnowing,
};

/** A slope such as “¾ : 1” is one thing: it is not parted at a line's end. */
const slopesWhole = (text: string): string =>
  text.replace(/(\S) : (?=1(?!\d))/g, "$1\u00a0:\u00a0");

function Card({ finding }: { finding: Finding }): ReactNode {
  const [what, rest] = parted(slopesWhole(finding.text));
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
      <TakeOn finding={finding} />
    </div>
  );
}

/** A finding that was taken on: folded to its reason, and opened to be read or withdrawn. */
function TakenCard({ finding, why }: { finding: Finding; why: string }): ReactNode {
  const [what, rest] = parted(slopesWhole(finding.text));
  return (
    <details
      className="finding taken"
      data-finding={finding.code}
      data-where={finding.where}
      data-taken=""
    >
      <summary>
        <span>
          {what} <strong>{why}</strong>
        </span>
      </summary>
      {rest !== "" && <p>{rest}</p>}
      <p className="source">{finding.source}</p>
      <Withdraw finding={finding} />
    </details>
  );
}

/** Findings as cards, those that stop the job first and those taken on last; nothing when there are none. */
export function Findings({ findings }: { findings: readonly Finding[] }): ReactNode {
  const { site, schemeId } = useSite();
  const order = ["stop", "caution", "note"] as const;
  const sorted = order
    .flatMap((level) => findings.filter((one) => one.level === level))
    // Parts of the estimate know nothing of what was taken on; the file does.
    .map((one) => ({ one, taken: one.accepted ?? acceptanceOf(site, schemeId, one) }));
  const taken = sorted.flatMap(({ one, taken: why }) => (why === null ? [] : [{ one, why }]));
  return (
    <>
      {sorted.map(
        ({ one, taken: why }, index) =>
          why === null && <Card key={`${one.code} ${one.where} ${index}`} finding={one} />,
      )}
      {taken.length > 1 && <p className="taken-count">{words.permit.takeOn.count(taken.length)}</p>}
      {taken.map(({ one, why }, index) => (
        <TakenCard key={`${one.code} ${one.where} ${index}`} finding={one} why={takenWords(why)} />
      ))}
    </>
  );
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
  const others = findings.filter(
    ({ level, accepted }) => level !== "stop" && accepted === undefined,
  ).length;
  return (
    <>
      <Findings findings={stops} />
      {others > 0 && (
        <button
          type="button"
          className="link ahead"
          onClick={() => scrollLeafTo(document.getElementById(to))}
        >
          {words.counts.thingsToLookAt(others)} ↓
        </button>
      )}
    </>
  );
}
