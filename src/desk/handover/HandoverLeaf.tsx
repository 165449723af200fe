import type { ReactNode } from "react";
import { leftOutLines } from "../../handover/index.js";
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
import { FilesSection } from "./FilesSection.js";
import { MakingFoot } from "./MakingFoot.js";
import { MessageSection } from "./MessageSection.js";
import { PicturesSection } from "./PicturesSection.js";
import { SheetsSection } from "./SheetsSection.js";
import { CopyChoice } from "./CopyChoice.js";
import { CopyLink } from "./CopyLink.js";
import { MakePage } from "./MakePage.js";

const KEPT_WORDS = {
  kept: words.handoverLeaf.keptBrowserStands,
  waiting: words.handoverLeaf.beingKeptBrowser,
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
        label={words.handoverLeaf.site}
        name="site-name"
        value={site.name}
        onCommit={(name) => edit(words.handoverLeaf.nameSiteEdit, (now) => renameSite(now, name))}
      />
      {site.notes !== undefined && <p className="says">{site.notes}</p>}
      {leftOutLines(site).length > 0 && <p className="says">{words.viewer.cameWithout}</p>}
      <h2>{words.handoverLeaf.theFile}</h2>
      <p className="says">
        {words.handoverLeaf.fileHoldsAllSite(
          keeping.state === "failed" ? keeping.text : KEPT_WORDS[keeping.state],
        )}
      </p>
      <div className="tools">
        <button type="button" className="button main" onClick={saveSite}>
          {words.handoverLeaf.saveFile}
        </button>
        <button type="button" className="button" onClick={askForSite}>
          {words.handoverLeaf.openAFile}
        </button>
      </div>
      <ProjectSection />
      {estimate !== null && (
        <>
          <SheetsSection />
          <h2>{words.viewer.making.title}</h2>
          <CopyChoice />
          <MakePage />
          <CopyLink />
          <FilesSection />
          <PicturesSection />
          <MessageSection />
        </>
      )}
      <h2>{words.handoverLeaf.onPaper}</h2>
      <p className="says">{words.handoverLeaf.estimatePlainReportFigures}</p>
      <div className="tools">
        <button type="button" className="button" onClick={() => window.print()}>
          {words.handoverLeaf.printTheReport}
        </button>
      </div>
      {estimate !== null && <ChecklistSection list={estimate.permit} />}
      <RulesSection />
      {estimate !== null && (
        <>
          <h2>{words.handoverLeaf.findings}</h2>
          {estimate.findings.length === 0 && (
            <p className="says">{words.handoverLeaf.nothingWasFound}</p>
          )}
          <Findings findings={estimate.findings} />
          <h2>{words.handoverLeaf.cautions}</h2>
          <ul className="caution-list">
            {estimate.cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </>
      )}
      <MakingFoot />
    </>
  );
}
