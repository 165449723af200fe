import type { ReactNode } from "react";
import { Dialog, Modal, ModalOverlay } from "react-aria-components";
import { DialogHead } from "../DialogHead.js";
import { words } from "../../words/index.js";
import { closePanel, usePanels } from "./panels.js";
import type { Panel } from "./panels.js";

/** A sheet over the desk with a title; Escape, its button or a tap beside it closes it. */
export function BookDialog(props: { panel: Panel; title: string; children: ReactNode }): ReactNode {
  const { panel, title, children } = props;
  const open = usePanels((panels) => panels.open === panel);
  return (
    <ModalOverlay
      className="overlay"
      isDismissable
      isOpen={open}
      onOpenChange={(isOpen) => !isOpen && closePanel(panel)}
    >
      <Modal className="modal">
        <Dialog className="dialog">
          <DialogHead title={title} close={words.book.close} />
          <div className="dialog-body">{children}</div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
