import { useState } from "react";
import type { ReactNode } from "react";
import { changeToNewer, useOnDevice } from "../../offline/index.js";
import { words } from "../../words/index.js";
import { keptForReload } from "../late/loadAnew.js";

async function change(): Promise<void> {
  if (await keptForReload()) changeToNewer();
}

/** Says quietly that a newer Bankyard lies here; it is used only when the person asks for it. */
export function NewerNotice(): ReactNode {
  const newer = useOnDevice((device) => device.newer);
  const [later, setLater] = useState<ServiceWorker | null>(null);
  if (newer === null || newer === later) return null;
  return (
    <div className="notice newer" role="status">
      <p>
        <strong>{words.offline.newer}</strong> {words.offline.newerKeeps}
      </p>
      <button type="button" className="button main" onClick={() => void change()}>
        {words.offline.useNow}
      </button>
      <button type="button" className="button" onClick={() => setLater(newer)}>
        {words.offline.later}
      </button>
    </div>
  );
}
