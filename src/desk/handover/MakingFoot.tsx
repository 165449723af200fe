import type { ReactNode } from "react";
import { HANDOVER_KINDS } from "../../handover/index.js";
import { cancelMaking, useHandover } from "../../store/index.js";
import { words } from "../../words/index.js";
import { usePictures } from "./pictureDesk.js";

function Row(props: { says: string; share: number; onCancel: () => void }): ReactNode {
  const { says, share, onCancel } = props;
  return (
    <div className="making" role="status">
      <span>{says}</span>
      <progress max={1} value={share} aria-label={says} />
      <button type="button" className="button" onClick={onCancel}>
        {words.handing.files.cancel}
      </button>
    </div>
  );
}

/**
 * What is being made, how far it is, and the way out: at the leaf's foot, in sight from whichever
 * of the leaf's buttons it was begun.
 */
export function MakingFoot(): ReactNode {
  const making = useHandover((hand) => hand.making);
  const share = usePictures((pictures) => pictures.share);
  const stop = usePictures((pictures) => pictures.stop);
  const label = HANDOVER_KINDS.find(({ id }) => id === making?.kind)?.label ?? making?.kind ?? "";
  const isFilming = share !== null && stop !== null;
  if (making === null && !isFilming) return null;
  return (
    <div className="making-foot">
      {making !== null && (
        <Row
          says={words.handing.files.making(label)}
          share={making.share}
          onCancel={cancelMaking}
        />
      )}
      {isFilming && <Row says={words.pictures.page.filming} share={share} onCancel={stop} />}
    </div>
  );
}
