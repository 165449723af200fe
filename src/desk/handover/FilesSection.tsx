import { useMemo } from "react";
import type { ReactNode } from "react";
import { copyWithout, HANDOVER_KINDS, linkOf } from "../../handover/index.js";
import type { HandoverChoices, LeftOut } from "../../handover/index.js";
import type { Site } from "../../site/index.js";
import { setOut, stakesOf, useHandover } from "../../store/index.js";
import { words } from "../../words/index.js";
import { useSite } from "../useSite.js";
import { saveFiles } from "./saveFiles.js";
import { StakeFields } from "./StakeFields.js";

const says = words.handing.files;

/** Sheets, the page and the link have sections of their own; the site file is saved at the head. */
const APART = ["sheets", "page", "link", "site"];
const KINDS = HANDOVER_KINDS.filter(({ id }) => !APART.includes(id));

/** Every kind, but no link where it would be too long: its section says so. */
function allKinds(site: Site, leftOut: readonly LeftOut[]): string[] {
  const isLong = linkOf(copyWithout(site, leftOut), window.location.href).fit === "over";
  return HANDOVER_KINDS.map(({ id }) => id).filter((id) => id !== "link" || !isLong);
}

/** Every other kind of file, each with what it is for. */
export function FilesSection(): ReactNode {
  const { site, schemeId } = useSite();
  const isBusy = useHandover((hand) => hand.making !== null);
  const kept = useHandover((hand) => hand.stakes);
  const stakes = useMemo(() => stakesOf(kept, site), [kept, site]);
  const leftOut = useHandover((hand) => hand.leftOut);
  const choices: HandoverChoices = { stakes, page: { without: leftOut } };
  const make = (ids: readonly string[]): void => void saveFiles(site, schemeId, ids, choices);
  return (
    <>
      <h2>{says.title}</h2>
      <p className="says">{says.says}</p>
      <ul className="file-kinds">
        {KINDS.map(({ id, label }) => (
          <li key={id}>
            <div>
              <strong>{label}</strong>
              <p className="says">{says.about[id] ?? ""}</p>
            </div>
            <button
              type="button"
              className="button"
              disabled={isBusy}
              aria-label={`${says.make}: ${label}`}
              onClick={() => make([id])}
            >
              {says.make}
            </button>
          </li>
        ))}
      </ul>
      <StakeFields value={stakes} onChange={(choice) => setOut(site, choice)} />
      <div className="tools">
        <button
          type="button"
          className="button main"
          disabled={isBusy}
          onClick={() => make(allKinds(site, leftOut))}
        >
          {says.everything}
        </button>
      </div>
    </>
  );
}
