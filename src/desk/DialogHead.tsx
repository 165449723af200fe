import type { ReactNode } from "react";
import { Button, Heading } from "react-aria-components";

/** The title of a dialog, and the button that closes it. */
export function DialogHead({ title, close }: { title: string; close: string }): ReactNode {
  return (
    <div className="dialog-head">
      <Heading slot="title">{title}</Heading>
      <Button slot="close" className="round" aria-label={close}>
        ✕
      </Button>
    </div>
  );
}
