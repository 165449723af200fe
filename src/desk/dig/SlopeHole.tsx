import { useCallback, useState, type ReactNode } from "react";
import { changeBetween, estimate } from "../../estimate/index.js";
import type { Estimate } from "../../estimate/index.js";
import { changeWork, type Finding, type Site, type Walls, type Work } from "../../site/index.js";
import { words } from "../../words/index.js";
import { ChangeTable } from "./ChangeTable.js";
import { useChange } from "./useChange.js";
import { useWorkedOut } from "./useWorkedOut.js";

const { hole: said, change: news } = words.trench;

/** Stops and cautions that an edit brings, or takes away. */
function Said({ title, findings }: { title: string; findings: readonly Finding[] }): ReactNode {
  if (findings.length === 0) return null;
  return (
    <>
      <h3>{title}</h3>
      <ul className="change-said">
        {findings.map(({ level, code, where, text }, i) => (
          <li key={`${code} ${where} ${i}`} className={level}>
            <strong>{level === "stop" ? words.desk.doesNotWorkDrawn : words.desk.caution}:</strong>{" "}
            {text}
          </li>
        ))}
      </ul>
    </>
  );
}

/** Slopes a hole as its layers want: first what that would change, then the change itself. */
export function SlopeHole({ work, walls }: { work: Work; walls: Walls }): ReactNode {
  const [asked, setAsked] = useState(false);
  const apply = useChange(work);
  const worked = useCallback(
    (site: Site, schemeId: string, now: Estimate) => {
      const sloped = changeWork(site, schemeId, work.id, (one) =>
        "walls" in one ? { ...one, walls } : one,
      );
      return changeBetween(now, estimate(sloped, schemeId), site);
    },
    [walls, work.id],
  );
  const change = useWorkedOut(asked, worked);
  if (!asked) {
    return (
      <button
        type="button"
        className="button hole-slope"
        disabled={work.locked === true}
        onClick={() => setAsked(true)}
      >
        {said.slopeIt}
      </button>
    );
  }
  return (
    <section className="hole-slope" aria-label={said.wouldChange} aria-live="polite">
      <h3>{said.wouldChange}</h3>
      {change === null ? (
        <p>{news.working}</p>
      ) : (
        <>
          <ChangeTable change={change} costName={news.cost} />
          <Said title={news.said} findings={change.said} />
          <Said title={news.unsaid} findings={change.unsaid} />
          {change.said.length === 0 && <p className="says">{news.nothingSaid}</p>}
        </>
      )}
      <div className="tools">
        <button
          type="button"
          className="button"
          disabled={change === null || work.locked === true}
          onClick={() => apply(said.wallsStep, { walls })}
        >
          {said.slopeNow}
        </button>
        <button type="button" className="link" onClick={() => setAsked(false)}>
          {said.leaveIt}
        </button>
      </div>
    </section>
  );
}
