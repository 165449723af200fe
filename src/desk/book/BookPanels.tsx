import type { ReactNode } from "react";
import { KeysDialog } from "./KeysDialog.js";

/** The sheets that can be laid over the desk. */
export function BookPanels(): ReactNode {
  return <KeysDialog />;
}
