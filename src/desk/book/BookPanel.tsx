import type { ReactNode, RefObject } from "react";
import { Button, Dialog, Heading, Popover } from "react-aria-components";
import { words } from "../../words/index.js";
import { closePanel, usePanels } from "./panels.js";
import type { Panel } from "./panels.js";

/** A panel that hangs from its button, beside which the desk goes on; Escape or its ✕ closes it. */
export function BookPanel(props: {
  panel: Panel;
  title: string;
  button: RefObject<HTMLButtonElement | null>;
  children: ReactNode;
}): ReactNode {
  const { panel, title, button, children } = props;
  const open = usePanels((panels) => panels.open === panel);
  return (
    <Popover
      isNonModal
      triggerRef={button}
      isOpen={open}
      onOpenChange={(isOpen) => !isOpen && closePanel(panel)}
      placement="bottom end"
      className="panel"
    >
      <Dialog className="panel-body">
        <div className="panel-head">
          <Heading slot="title" level={2}>
            {title}
          </Heading>
          <Button className="round" aria-label={words.book.close} onPress={() => closePanel(panel)}>
            ✕
          </Button>
        </div>
        {children}
      </Dialog>
    </Popover>
  );
}
