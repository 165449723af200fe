import type { ReactElement } from "react";
import { words } from "../words/index.js";

interface WorkingNoteProps {
  /** Why it could not be worked out; null while it is being done. */
  fault: string | null;
  onAgain: () => void;
}

/** Says that the ground and the figures that show are not yet those that were asked for. */
export function WorkingNote({ fault, onAgain }: WorkingNoteProps): ReactElement {
  if (fault === null) {
    return (
      <p className="scene-working" role="status" data-testid="scene-working">
        {words.scene.beingWorkedOutGround}
      </p>
    );
  }
  return (
    <div className="scene-working" role="alert" data-testid="scene-working">
      <span>{words.scene.couldNotWorkedOut(fault)}</span>
      <button type="button" onClick={onAgain}>
        {words.scene.tryAgain}
      </button>
    </div>
  );
}
