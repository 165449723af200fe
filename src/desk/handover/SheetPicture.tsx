import { useEffect, useRef } from "react";
import type { CSSProperties, ReactNode } from "react";

/**
 * The page has the sheets' fonts under the names of its own; while a plan is dragged, its drawing
 * follows by as many mm (an SVG's pixel here is a mm of paper), and frame and title block stay.
 */
const PAGE_RULES = `
  :host { display: block; }
  svg { display: block; width: 100%; height: auto; }
  .text, .strong { font-family: "Public Sans Variable", "Public Sans", sans-serif; }
  [data-layer="Drawing"] {
    translate: calc(var(--moved-x, 0) * 1px) calc(var(--moved-y, 0) * 1px);
  }
`;

interface SheetPictureProps {
  svg: string;
  style: CSSProperties;
  isHeld: boolean;
}

/**
 * A sheet's SVG in a tree of its own, since the rules that it brings are meant for it alone. It is our
 * own writer's, which escapes all that a person has typed.
 */
export function SheetPicture({ svg, style, isHeld }: SheetPictureProps): ReactNode {
  const host = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (host.current === null) return;
    const root = host.current.shadowRoot ?? host.current.attachShadow({ mode: "open" });
    root.innerHTML = `${svg}<style>${PAGE_RULES}</style>`;
  }, [svg]);
  return (
    <div ref={host} className="sheet-paper" style={style} data-held={isHeld ? "" : undefined} />
  );
}
