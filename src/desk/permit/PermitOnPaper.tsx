import type { ReactNode } from "react";
import type { Checklist } from "../../estimate/index.js";
import type { Finding } from "../../site/index.js";
import { words } from "../../words/index.js";
import { useSite } from "../useSite.js";
import { takenWords } from "./TakeOn.js";

const says = words.permit;
const RANK_ORDER = ["stop", "caution", "note"] as const;

/** Who, where and when, as far as it is entered. */
export function ProjectLine(): ReactNode {
  const { site } = useSite();
  const { owner, parcel, place, preparer, date, benchmark } = site.project ?? {};
  const mark = [benchmark?.point, benchmark?.note].filter((part) => part !== undefined).join(", ");
  const parts = [
    [says.project.owner, owner],
    [says.project.parcel, parcel],
    [says.project.place, place],
    [says.project.preparer, preparer],
    [says.project.date, date],
    [says.paper.benchmark, mark],
  ].flatMap(([what, value]) => (value === undefined || value === "" ? [] : [`${what}: ${value}`]));
  return parts.length === 0 ? null : <p>{parts.join(" · ")}</p>;
}

/** Findings in their rank, those that stop the job first; those taken on apart, with the reason. */
export function FindingList({ findings }: { findings: readonly Finding[] }): ReactNode {
  const sorted = RANK_ORDER.flatMap((rank) => findings.filter(({ level }) => level === rank));
  const open = sorted.filter(({ accepted }) => accepted === undefined);
  const taken = sorted.filter(({ accepted }) => accepted !== undefined);
  return (
    <>
      {open.length === 0 && <p>{says.paper.noFindings}</p>}
      <Lines findings={open} />
      {taken.length > 0 && <h3>{says.paper.taken}</h3>}
      <Lines findings={taken} />
    </>
  );
}

function Lines({ findings }: { findings: readonly Finding[] }): ReactNode {
  if (findings.length === 0) return null;
  return (
    <ul>
      {findings.map(({ code, level, text, source, accepted }, index) => (
        <li key={`${code} ${index}`}>
          <strong>{words.book.findings.levels[level]}:</strong> {text} <em>({source})</em>
          {accepted !== undefined && (
            <>
              {" "}
              <strong>{takenWords(accepted)}</strong>
            </>
          )}
        </li>
      ))}
    </ul>
  );
}

/** The permit's list on paper: each item, how it stands and why. */
export function PermitOnPaper({ list }: { list: Checklist }): ReactNode {
  return (
    <>
      <h2>{says.paper.title}</h2>
      <p>
        {says.paper.summary(list.present, list.asked)} {says.list.source(list.source)}
      </p>
      <table>
        <tbody>
          {list.groups.flatMap(({ items }) =>
            items.map(({ id, title, state, because }) => (
              <tr key={id}>
                <th scope="row">{title}</th>
                <td className="from">{says.list.states[state]}</td>
                <td className="from">{because}</td>
              </tr>
            )),
          )}
        </tbody>
      </table>
    </>
  );
}
