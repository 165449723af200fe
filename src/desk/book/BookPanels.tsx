import type { ReactNode } from "react";
import { KeysDialog } from "./KeysDialog.js";
import { SearchDialog } from "./SearchDialog.js";
import { TermsDialog } from "./TermsDialog.js";
import { Tour } from "./Tour.js";

/** The sheets that can be laid over the desk. */
export function BookPanels(): ReactNode {
  return (
    <>
      <SearchDialog />
      <KeysDialog />
      <TermsDialog />
      <Tour />
    </>
  );
}
