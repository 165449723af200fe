import type { ReactNode } from "react";

/** A lens, for searching. */
export const SearchIcon = (): ReactNode => (
  <svg className="icon" viewBox="0 0 20 20" aria-hidden="true">
    <circle cx="8.5" cy="8.5" r="5.5" />
    <path d="M12.5 12.5 17.5 17.5" />
  </svg>
);

/** Ruled lines with a tick at one, for the steps of the work. */
export const StepsIcon = (): ReactNode => (
  <svg className="icon" viewBox="0 0 20 20" aria-hidden="true">
    <path d="M8 4.5H18M8 10H18M8 15.5H18" />
    <path d="M2 4.5H5M2 15.5H5M1.5 10l1.5 1.8L6 8" />
  </svg>
);

/** Three squares, for whatever else there is. */
export const MoreIcon = (): ReactNode => (
  <svg className="icon filled" viewBox="0 0 20 20" aria-hidden="true">
    <path d="M8.5 2h3v3h-3zM8.5 8.5h3v3h-3zM8.5 15h3v3h-3z" />
  </svg>
);
