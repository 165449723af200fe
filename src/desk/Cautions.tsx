import type { ReactNode } from "react";
import { words } from "../words/index.js";
import { Button, Dialog, DialogTrigger, Modal, ModalOverlay } from "react-aria-components";
import { DialogHead } from "./DialogHead.js";
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
            <DialogHead title={words.leaf.beforeYouDig} close={words.desk.close} />
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
