import type { ReactElement } from "react";

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
        Being worked out: ground and figures are as they were
      </p>
    );
  }
  return (
    <div className="scene-working" role="alert" data-testid="scene-working">
      <span>
        This could not be worked out: {fault}. Ground and figures are as they were before.
      </span>
      <button type="button" onClick={onAgain}>
        Try again
      </button>
    </div>
  );
}
