import type { ReactNode } from "react";
import { Dialog, Heading, Modal, ModalOverlay } from "react-aria-components";
import { words } from "../../words/index.js";

const says = words.book.leaving;

/** Asks before a leaf with something typed on it is closed. Escape stays on the leaf. */
export function Leaving(props: {
  isOpen: boolean;
  onStay: () => void;
  onLeave: () => void;
  onThrowAway: () => void;
}): ReactNode {
  const { isOpen, onStay, onLeave, onThrowAway } = props;
  return (
    <ModalOverlay
      className="overlay"
      isDismissable
      isOpen={isOpen}
      onOpenChange={(open) => !open && onStay()}
    >
      <Modal className="modal leaving">
        <Dialog className="dialog" role="alertdialog">
          <div className="dialog-head">
            <Heading slot="title">{says.title}</Heading>
          </div>
          <div className="dialog-body">
            <p>{says.text}</p>
            <div className="leaving-ways">
              <button type="button" className="button main" onClick={onStay}>
                {says.stay}
              </button>
              <button type="button" className="button" onClick={onLeave}>
                {says.leave}
              </button>
              <button type="button" className="button" onClick={onThrowAway}>
                {says.throwAway}
              </button>
            </div>
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
