import type { ReactNode } from "react";
import { Mark } from "../drawn/index.js";
import { redoName, undoName } from "../site/index.js";
import { LEAVES, useDesk } from "../store/index.js";
import { words } from "../words/index.js";
import { FindingsButton } from "./book/FindingsPanel.js";
import { HeadMenu, SearchButton } from "./book/HeadMenu.js";
import { withKey } from "./book/keys.js";
import { StepsButton } from "./book/StepsPanel.js";
import { NetworkSign } from "./device/NetworkSign.js";
import { saveSite } from "./files.js";
import { LEAF_TITLES } from "./leafTitles.js";
import { SiteMenu } from "./SiteMenu.js";

function Steps(): ReactNode {
  const leaf = useDesk((desk) => desk.leaf);
  const show = useDesk((desk) => desk.show);
  return (
    <nav className="steps" aria-label={words.desk.stepsJob}>
      {LEAVES.map((step) => (
        <button
          key={step}
          type="button"
          className="step"
          aria-current={leaf === step ? "step" : undefined}
          onClick={() => show({ leaf: step })}
        >
          {LEAF_TITLES[step]}
        </button>
      ))}
    </nav>
  );
}

function UndoRedo(): ReactNode {
  const undone = useDesk((desk) => (desk.history === null ? null : undoName(desk.history)));
  const redone = useDesk((desk) => (desk.history === null ? null : redoName(desk.history)));
  const undo = useDesk((desk) => desk.undo);
  const redo = useDesk((desk) => desk.redo);
  const undoTitle = undone === null ? words.desk.undo : words.desk.undoStep(undone);
  const redoTitle = redone === null ? words.desk.redo : words.desk.redoStep(redone);
  return (
    <>
      <button
        type="button"
        className="round"
        aria-label={undoTitle}
        title={withKey(undoTitle, "undo")}
        disabled={undone === null}
        onClick={undo}
      >
        ↶
      </button>
      <button
        type="button"
        className="round"
        aria-label={redoTitle}
        title={withKey(redoTitle, "redo")}
        disabled={redone === null}
        onClick={redo}
      >
        ↷
      </button>
    </>
  );
}

/** The head of the page: the site, the six steps, undo, redo and Save. */
export function Header(): ReactNode {
  const open = useDesk((desk) => desk.history !== null);
  const keeping = useDesk((desk) => desk.keeping.state);
  const title =
    keeping === "failed"
      ? words.desk.browserKeepsNothingSave
      : words.desk.siteAlsoKeptBrowser(withKey(words.desk.saveFile, "save"));
  return (
    <header className="head">
      <div className="head-row">
        <div className="head-side">
          <div className="mark">
            <Mark />
            <span>Bankyard</span>
          </div>
          <SiteMenu />
        </div>
        <div className="head-side">
          <NetworkSign />
          {open && <FindingsButton />}
          <SearchButton />
          <UndoRedo />
          <StepsButton />
          <HeadMenu />
          <button
            type="button"
            className="button main save-button"
            title={title}
            disabled={!open}
            onClick={saveSite}
          >
            {words.desk.save}
          </button>
        </div>
      </div>
      <Steps />
    </header>
  );
}
