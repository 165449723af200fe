import { useState } from "react";
import type { ReactNode } from "react";
import { PAPERS, usualPaper } from "../../sheets/index.js";
import type { PaperId } from "../../sheets/index.js";
import { setPaper } from "../../site/index.js";
import { useHandover } from "../../store/index.js";
import { words } from "../../words/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { useEdit, useSite } from "../useSite.js";
import { saveFiles } from "./saveFiles.js";
import { SheetsDialog } from "./SheetsDialog.js";

const says = words.handing.sheets;

const PAPER_CHOICES = (Object.keys(PAPERS) as PaperId[]).map((id) => ({
  id,
  name: PAPERS[id].name,
}));

/** The sheets: on what paper, looked at before they are printed, and made as files. */
export function SheetsSection(): ReactNode {
  const { site, schemeId } = useSite();
  const edit = useEdit();
  const isBusy = useHandover((hand) => hand.making !== null);
  const [isLooking, setLooking] = useState(false);
  const make = (drawings: boolean): void =>
    void saveFiles(site, schemeId, ["sheets"], { sheets: { drawings } });
  return (
    <>
      <h2>{says.title}</h2>
      <p className="says">{says.says}</p>
      <ChoiceField
        label={says.paper}
        name="paper"
        value={usualPaper(site)}
        choices={PAPER_CHOICES}
        onChoose={(paper) => edit(says.paperStep, (now) => setPaper(now, paper))}
      />
      <div className="tools">
        <button type="button" className="button main" onClick={() => setLooking(true)}>
          {says.look}
        </button>
        <button type="button" className="button" disabled={isBusy} onClick={() => make(false)}>
          {says.makePdf}
        </button>
        <button type="button" className="button" disabled={isBusy} onClick={() => make(true)}>
          {says.makeDrawings}
        </button>
      </div>
      {isLooking && <SheetsDialog onClose={() => setLooking(false)} />}
    </>
  );
}
