import type { ReactNode } from "react";
import { renameSite } from "../../site/index.js";
import { useDesk } from "../../store/index.js";
import { words } from "../../words/index.js";
import { NameField } from "../fields/NameField.js";
import { askForSite, saveSite } from "../files.js";
import { Findings } from "../Findings.js";
import { ChecklistSection } from "../permit/ChecklistSection.js";
import { ProjectSection } from "../permit/ProjectSection.js";
import { RulesSection } from "../permit/RulesSection.js";
import { useEdit, useSite } from "../useSite.js";

const KEPT_WORDS = {
  kept: "Kept in this browser as it stands.",
  waiting: "Being kept in this browser…",
  example: words.shelf.asExample,
} as const;

/** What is taken away: the site file, a report on paper, and the cautions that go with it. */
export function HandoverLeaf(): ReactNode {
  const { site, estimate } = useSite();
  const edit = useEdit();
  const keeping = useDesk((desk) => desk.keeping);
  return (
    <>
      <NameField
        label="Site"
        name="site-name"
        value={site.name}
        onCommit={(name) => edit("name of the site", (now) => renameSite(now, name))}
      />
      {site.notes !== undefined && <p className="says">{site.notes}</p>}
      <h2>The file</h2>
      <p className="says">
        {keeping.state === "failed" ? keeping.text : KEPT_WORDS[keeping.state]} The file holds all
        of the site and opens on any machine.
      </p>
      <div className="tools">
        <button type="button" className="button main" onClick={saveSite}>
          Save as a file
        </button>
        <button type="button" className="button" onClick={askForSite}>
          Open a file…
        </button>
      </div>
      <h2>On paper</h2>
      <p className="says">
        The estimate as a plain report: figures, works, pipes, machines, cost, findings, cautions.
      </p>
      <div className="tools">
        <button type="button" className="button" onClick={() => window.print()}>
          Print the report…
        </button>
      </div>
      <ProjectSection />
      {estimate !== null && <ChecklistSection list={estimate.permit} />}
      <RulesSection />
      {estimate !== null && (
        <>
          <h2>Findings</h2>
          {estimate.findings.length === 0 && <p className="says">Nothing was found.</p>}
          <Findings findings={estimate.findings} />
          <h2>Cautions</h2>
          <ul className="caution-list">
            {estimate.cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}
