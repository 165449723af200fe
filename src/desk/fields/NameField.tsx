import type { ReactNode } from "react";
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
          ? { ok: false, text: "A name is needed." }
          : { ok: true, value: text.trim() }
      }
      onCommit={onCommit}
    />
  );
}
