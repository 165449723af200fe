import { useRef } from "react";
import type { ReactNode } from "react";
import { Button } from "react-aria-components";
import { parted } from "../../site/index.js";
import type { Finding } from "../../site/index.js";
import { words } from "../../words/index.js";
import { useSite } from "../useSite.js";
import { TakeOn, takenWords, Withdraw } from "../permit/TakeOn.js";
import { BookPanel } from "./BookPanel.js";
import { goToFinding } from "./goTo.js";
import { closePanel, openPanel, usePanels } from "./panels.js";
import { countFindings, placeOfFinding, worstFirst } from "./placeOfFinding.js";
import type { FindingCount } from "./placeOfFinding.js";
import { isNarrow } from "./screen.js";

const says = words.book.findings;
const LEVELS = ["stop", "caution", "note"] as const;

/** "2 stops · 3 cautions"; notes are named only when there is nothing worse. */
export function countWords({ stop, caution, note }: FindingCount): string {
  const parts = [
    ...(stop > 0 ? [says.stops(stop)] : []),
    ...(caution > 0 ? [says.cautions(caution)] : []),
  ];
  if (parts.length > 0) return parts.join(" · ");
  return note > 0 ? says.notes(note) : says.noneShort;
}

function Entry({ finding }: { finding: Finding }): ReactNode {
  const { site, schemeId } = useSite();
  const place = placeOfFinding(site, schemeId, finding);
  const [what, rest] = parted(finding.text);
  const go = (): void => {
    // On a phone the list covers the leaf; at a desk it stays, to go on to the next.
    const narrow = isNarrow();
    if (narrow) closePanel("findings");
    goToFinding(place, finding, narrow);
  };
  return (
    <li>
      <button
        type="button"
        className={`found ${finding.accepted === undefined ? finding.level : "taken"}`}
        data-finding-row={finding.code}
        onClick={go}
      >
        <span className="found-where">{place.name ?? says.site}</span>
        <span>
          <span className="unseen">{says.levels[finding.level]}: </span>
          <strong>{what}</strong>
          {rest}
          {finding.accepted !== undefined && (
            <span className="found-taken">{takenWords(finding.accepted)}</span>
          )}
        </span>
      </button>
      <div className="found-more">
        {finding.accepted === undefined ? (
          <TakeOn finding={finding} />
        ) : (
          <Withdraw finding={finding} />
        )}
      </div>
    </li>
  );
}

function Group({ title, findings }: { title: string; findings: readonly Finding[] }): ReactNode {
  if (findings.length === 0) return null;
  return (
    <section aria-label={title}>
      <h3>
        {title} <span className="soft">{findings.length}</span>
      </h3>
      <ul>
        {findings.map((finding, index) => (
          <Entry key={`${finding.code} ${finding.where} ${index}`} finding={finding} />
        ))}
      </ul>
    </section>
  );
}

/** Those that a person took on, folded: they are counted apart. */
function TakenGroup({ findings }: { findings: readonly Finding[] }): ReactNode {
  if (findings.length === 0) return null;
  return (
    <details className="taken-group">
      <summary>
        {says.taken} <span className="soft">{findings.length}</span>
      </summary>
      <ul>
        {findings.map((finding, index) => (
          <Entry key={`${finding.code} ${finding.where} ${index}`} finding={finding} />
        ))}
      </ul>
    </details>
  );
}

function List({ findings }: { findings: readonly Finding[] }): ReactNode {
  if (findings.length === 0) return <p className="says">{says.none}</p>;
  return (
    <>
      <p className="says">{says.says}</p>
      {LEVELS.map((level) => (
        <Group
          key={level}
          title={says.heads[level]}
          findings={findings.filter((one) => one.level === level && one.accepted === undefined)}
        />
      ))}
      <TakenGroup findings={worstFirst(findings).filter((one) => one.accepted !== undefined)} />
    </>
  );
}

/** How many findings the scheme has, opening to all of them: stops, cautions, notes. */
export function FindingsButton(): ReactNode {
  const { estimate } = useSite();
  const open = usePanels((panels) => panels.open === "findings");
  const button = useRef<HTMLButtonElement>(null);
  const findings = estimate?.findings ?? [];
  const count = countFindings(findings);
  const text = countWords(count);
  const worst = LEVELS.find((level) => count[level] > 0) ?? "none";
  return (
    <>
      <Button
        ref={button}
        className="button findings-button"
        data-level={worst}
        aria-label={says.badge(text)}
        aria-expanded={open}
        onPress={() => (open ? closePanel("findings") : openPanel("findings"))}
      >
        <span className="findings-mark" aria-hidden="true" />
        <span className="findings-words">{text}</span>
        <span className="findings-number">{count.stop + count.caution}</span>
      </Button>
      <BookPanel panel="findings" title={says.title} button={button}>
        {estimate === null ? <p className="says">{says.noEstimate}</p> : <List {...{ findings }} />}
      </BookPanel>
    </>
  );
}
