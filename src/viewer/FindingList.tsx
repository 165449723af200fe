import type { ReactNode } from "react";
import type { Estimate } from "../estimate/index.js";
import { findingsShown } from "../handover/index.js";
import { parted, thingNamed } from "../site/index.js";
import type { Finding, NamedThing, Site } from "../site/index.js";
import { words } from "../words/index.js";

interface Props {
  site: Site;
  schemeId: string;
  estimate: Estimate;
  /** Shows a thing in the picture. */
  onThing: (thing: NamedThing) => void;
}

/** All that was found, worst first; what was taken on last, each with its reason. */
export function FindingList({ site, schemeId, estimate, onThing }: Props): ReactNode {
  const shown = findingsShown(site, estimate);
  const open = shown.filter(({ accepted }) => accepted === undefined);
  const taken = shown.filter(({ accepted }) => accepted !== undefined);
  const said = words.book.findings;
  return (
    <section aria-labelledby="findings">
      <h2 id="findings">
        {words.viewer.findings} <span className="aside">{countWords(open)}</span>
      </h2>
      {open.length === 0 && <p className="says">{said.none}</p>}
      {open.map((finding, index) => (
        <Card key={index} {...{ site, schemeId, finding, onThing }} />
      ))}
      {taken.length > 0 && <h3>{said.taken}</h3>}
      {taken.map((finding, index) => (
        <Card key={index} {...{ site, schemeId, finding, onThing }} />
      ))}
    </section>
  );
}

/** "1 stop · 3 cautions", as far as there are any. */
function countWords(findings: readonly Finding[]): string {
  const said = words.book.findings;
  const many = (level: Finding["level"]): number =>
    findings.filter((one) => one.level === level).length;
  const parts = [
    ...(many("stop") > 0 ? [said.stops(many("stop"))] : []),
    ...(many("caution") > 0 ? [said.cautions(many("caution"))] : []),
    ...(many("note") > 0 ? [said.notes(many("note"))] : []),
  ];
  return parts.join(" · ");
}

function Card(props: Omit<Props, "estimate"> & { finding: Finding }): ReactNode {
  const { site, schemeId, finding, onThing } = props;
  const { level, accepted } = finding;
  const [what, rest] = parted(finding.text);
  const thing = thingNamed(site, schemeId, finding.where);
  const who = [accepted?.by, accepted?.on].filter((part) => part !== undefined).join(", ");
  const said = words.permit.takeOn;
  return (
    <article
      className={`finding ${accepted === undefined ? level : "taken"}`}
      data-finding={finding.code}
      data-where={finding.where}
    >
      <p>
        <span className={level === "stop" ? "level" : "unseen"}>
          {words.book.findings.levels[level]}:{" "}
        </span>
        <strong>{what}</strong>
        {rest}
      </p>
      <p className="source">{finding.source}</p>
      {accepted !== undefined && (
        <p>
          <strong>
            {who === "" ? said.takenPlain(accepted.reason) : said.takenBy(who, accepted.reason)}
          </strong>
          {accepted.then !== undefined && ` ${said.saidThen(accepted.then)}`}
        </p>
      )}
      {thing !== null && (
        <button type="button" className="link" onClick={() => onThing(thing)}>
          {words.viewer.goTo(thing.name)}
        </button>
      )}
    </article>
  );
}
