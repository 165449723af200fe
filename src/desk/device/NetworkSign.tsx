import type { ReactNode } from "react";
import { useOnDevice } from "../../offline/index.js";
import { useDesk } from "../../store/index.js";
import { words } from "../../words/index.js";

/** A small sign while there is no network; what that means is told when it is pressed. */
export function NetworkSign(): ReactNode {
  const { hasNetwork, kept } = useOnDevice();
  const tell = useDesk((desk) => desk.tell);
  const meaning = kept === "none" ? words.offline.noNetworkNotReady : words.offline.noNetworkReady;
  return (
    <div role="status" className="network-sign">
      {!hasNetwork && (
        <button type="button" title={meaning} onClick={() => tell(meaning)}>
          <svg viewBox="0 0 22 14" aria-hidden="true">
            <path d="M3 1v12M19 1v12M3 5h5M14 5h5" />
            <path className="cut" d="M9 9l4-7" />
          </svg>
          <span>{words.offline.noNetwork}</span>
        </button>
      )}
    </div>
  );
}
