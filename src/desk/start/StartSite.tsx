import { useMemo, useState } from "react";
import type { ReactNode } from "react";
import {
  Dialog,
  Heading,
  Modal,
  ModalOverlay,
  Tab,
  TabList,
  TabPanel,
  Tabs,
} from "react-aria-components";
import type { Site } from "../../site/index.js";
import { jobInWords, useDesk } from "../../store/index.js";
import { words } from "../../words/index.js";
import { ChoiceField } from "../fields/ChoiceField.js";
import { TypedField } from "../fields/TypedField.js";
import { EMPTY_DRAFT, hasTyping } from "./draft.js";
import type { Draft } from "./draft.js";
import { FieldBook } from "./FieldBook.js";
import { GroundUnder } from "./GroundUnder.js";
import { Leaving } from "./Leaving.js";
import { readDraft } from "./newSite.js";
import type { DraftProps } from "./newSite.js";
import { PointTable } from "./PointTable.js";
import { TerrainPlan } from "./TerrainPlan.js";

/** Typed work outlives the closing of this leaf, until it has become a site. */
let kept: Draft = EMPTY_DRAFT;

function useDraft(): [Draft, (next: Partial<Draft>) => void] {
  const [draft, setDraft] = useState(kept);
  const set = (next: Partial<Draft>): void => {
    kept = { ...kept, ...next };
    setDraft(kept);
  };
  return [draft, set];
}

function Write({ draft, read, set }: DraftProps): ReactNode {
  return (
    <div className="start-write">
      <Tabs
        selectedKey={draft.way}
        onSelectionChange={(way) => set({ way: way === "book" ? "book" : "table" })}
      >
        <TabList className="tabs" aria-label={words.startPage.howGroundWasMeasured}>
          <Tab id="table" className="tab">
            {words.startPage.tablePoints}
          </Tab>
          <Tab id="book" className="tab">
            {words.startPage.levelFieldBook}
          </Tab>
        </TabList>
        <TabPanel id="table" className="tab-panel">
          <PointTable draft={draft} read={read} set={set} />
        </TabPanel>
        <TabPanel id="book" className="tab-panel">
          <FieldBook draft={draft} read={read} set={set} />
        </TabPanel>
      </Tabs>
    </div>
  );
}

function See({ draft, read, set }: DraftProps): ReactNode {
  return (
    <div className="start-see">
      <TerrainPlan site={read.drawn} />
      {read.drawn !== null && read.site === null && (
        <p className="soft">{words.startPage.drawnFromPointsCan(read.points.length)}</p>
      )}
      <h2>{words.startPage.whatUnder}</h2>
      <GroundUnder draft={draft} read={read} set={set} />
      <h2>{words.startPage.itsName}</h2>
      <TypedField
        label={words.startPage.site}
        name="new-site-name"
        shown={draft.name}
        read={(text) =>
          text.trim() === ""
            ? { ok: false, text: words.startPage.nameNeeded }
            : { ok: true, value: text.trim() }
        }
        onCommit={(name) => set({ name })}
      />
      <ChoiceField
        label={words.startPage.showMe}
        value={draft.units}
        choices={[
          { id: "us", name: words.startPage.feetInchesYards },
          { id: "metric", name: words.startPage.metres },
        ]}
        onChoose={(units) => set({ units })}
      />
    </div>
  );
}

/** What the draft comes to and the way to the desk; while its ground is made, how far that is. */
function Foot({ read }: Pick<DraftProps, "read">): ReactNode {
  const startSite = useDesk((desk) => desk.startSite);
  const waiting = useDesk((desk) => desk.waiting);
  const stop = useDesk((desk) => desk.stopWaiting);
  if (waiting !== null) {
    return (
      <>
        <label className="start-waiting">
          {jobInWords(waiting)} <progress value={waiting.share} max={1} />
        </label>
        <button type="button" className="button" onClick={stop}>
          {words.startPage.cancel}
        </button>
      </>
    );
  }
  const put = (site: Site): void => {
    void startSite(site).then((landed) => {
      // What was typed is let go only when it has become a site.
      if (landed) kept = EMPTY_DRAFT;
    });
  };
  return (
    <>
      <p role="status">{read.state}</p>
      <button
        type="button"
        className="button main"
        disabled={read.site === null}
        onClick={() => read.site !== null && put(read.site)}
      >
        {words.startPage.putDesk}
      </button>
    </>
  );
}

/** Start my own site: points or a level book at the left, the ground they make at the right. */
export function StartSite(): ReactNode {
  const show = useDesk((desk) => desk.show);
  const [draft, set] = useDraft();
  const [asking, setAsking] = useState(false);
  const leave = (): void => show({ starting: false });
  const read = useMemo(() => readDraft(draft), [draft]);
  return (
    <ModalOverlay
      isOpen
      className="start-overlay"
      onOpenChange={(open) => {
        if (open) return;
        if (hasTyping(draft)) setAsking(true);
        else leave();
      }}
    >
      <Modal className="start-modal">
        <Dialog className="start">
          <div className="start-head">
            <Heading slot="title" level={1}>
              {words.startPage.startMyOwnSite}
            </Heading>
            <button type="button" className="button" onClick={leave}>
              {words.startPage.notNow}
            </button>
          </div>
          <div className="start-body">
            <Write draft={draft} read={read} set={set} />
            <See draft={draft} read={read} set={set} />
          </div>
          <div className="start-foot">
            <Foot read={read} />
          </div>
          <Leaving
            isOpen={asking}
            onStay={() => setAsking(false)}
            onLeave={leave}
            onThrowAway={() => {
              kept = EMPTY_DRAFT;
              leave();
            }}
          />
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
