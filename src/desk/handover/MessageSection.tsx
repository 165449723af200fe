import { useState } from "react";
import type { ReactNode } from "react";
import type { Site } from "../../site/index.js";
import { makeFiles, useDesk, useHandover } from "../../store/index.js";
import { words } from "../../words/index.js";
import { useSite } from "../useSite.js";

const says = words.handing.message;

/** The order as text, and the site and scheme that it was written of. */
interface Written {
  site: Site;
  schemeId: string;
  text: string;
}

async function writeOrder(site: Site, schemeId: string): Promise<Written | null> {
  const files = await makeFiles(site, schemeId, ["orders"], {});
  const text = files?.find(({ type }) => type.startsWith("text/plain"))?.data;
  if (typeof text === "string") return { site, schemeId, text };
  const { fault } = useHandover.getState();
  if (fault !== null) useDesk.getState().tell(words.handing.files.failed(fault));
  return null;
}

async function copy(text: string): Promise<void> {
  const { tell } = useDesk.getState();
  try {
    await navigator.clipboard.writeText(text);
    tell(says.copied);
  } catch {
    // Browsers refuse for many reasons and name none that helps: the text stands there to be marked.
    tell(says.notCopied);
  }
}

/** The order as a message; what was written of an earlier state of the site goes away with it. */
export function MessageSection(): ReactNode {
  const { site, schemeId } = useSite();
  const isBusy = useHandover((hand) => hand.making !== null);
  const [written, setWritten] = useState<Written | null>(null);
  const text = written?.site === site && written.schemeId === schemeId ? written.text : null;
  return (
    <>
      <h2>{says.title}</h2>
      <p className="says">{says.says}</p>
      {text !== null && (
        <textarea
          className="order-text"
          aria-label={says.label}
          readOnly
          rows={Math.min(16, text.split("\n").length)}
          value={text}
        />
      )}
      <div className="tools">
        {text === null ? (
          <button
            type="button"
            className="button"
            disabled={isBusy}
            onClick={() => void writeOrder(site, schemeId).then(setWritten)}
          >
            {says.write}
          </button>
        ) : (
          <button type="button" className="button main" onClick={() => void copy(text)}>
            {says.copy}
          </button>
        )}
      </div>
    </>
  );
}
