import type { ReactNode } from "react";
import { words } from "../words/index.js";
import { Button, Dialog, DialogTrigger, Heading, Modal, ModalOverlay } from "react-aria-components";
import { Findings } from "./Findings.js";
import { useSite } from "./useSite.js";

/** The standing cautions and this site's own, one tap away from every leaf. */
export function CautionsButton(): ReactNode {
  const { estimate } = useSite();
  return (
    <DialogTrigger>
      <Button className="cautions-button">{words.leaf.beforeYouDig}</Button>
      <ModalOverlay className="overlay" isDismissable>
        <Modal className="modal">
          <Dialog className="dialog">
            <div className="dialog-head">
              <Heading slot="title">{words.leaf.beforeYouDig}</Heading>
              <Button slot="close" className="round" aria-label={words.desk.close}>
                ✕
              </Button>
            </div>
            <div className="dialog-body">
              <p className="says">{words.desk.localCodesPermitCompetent}</p>
              <ul className="caution-list">
                {(estimate?.cautions ?? []).map((caution) => (
                  <li key={caution}>{caution}</li>
                ))}
              </ul>
              {estimate !== null && estimate.findings.length > 0 && (
                <>
                  <h3>{words.desk.onThisSite}</h3>
                  <Findings findings={estimate.findings} />
                </>
              )}
            </div>
          </Dialog>
        </Modal>
      </ModalOverlay>
    </DialogTrigger>
  );
}
