import type { ReactNode } from "react";
import { words } from "../../words/index.js";
import { TypedField } from "./TypedField.js";

interface NameFieldProps {
  label: ReactNode;
  value: string;
  onCommit: (value: string) => void;
  name?: string;
}

/** A field for a name; it may not be empty. */
export function NameField({ label, value, onCommit, name }: NameFieldProps): ReactNode {
  return (
    <TypedField
      label={label}
      shown={value}
      name={name}
      read={(text) =>
        text.trim() === ""
          ? { ok: false, text: words.deskFields.nameNeeded }
          : { ok: true, value: text.trim() }
      }
      onCommit={onCommit}
    />
  );
}
