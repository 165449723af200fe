import type { ReactNode } from "react";

/** The mark: a hole seen in section, with its bed of stake orange. */
export function Mark(): ReactNode {
  return (
    <svg viewBox="0 0 32 30" aria-hidden="true">
      <path
        d="M3 4h26l-5 22H8z"
        fill="var(--card)"
        stroke="var(--ink)"
        strokeWidth="3"
        strokeLinejoin="round"
      />
      <path d="M7.2 17.5h17.6L23.2 24.5H8.8z" fill="var(--stake)" />
    </svg>
  );
}
