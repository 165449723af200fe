import { useEffect, useRef } from "react";
import type { ReactNode } from "react";
import { words } from "../../words/index.js";
import { BookDialog } from "./BookDialog.js";
import { usePanels } from "./panels.js";

const says = words.book.terms;
const SORTED = Object.entries(words.terms).sort(([, a], [, b]) => a.name.localeCompare(b.name));

function Terms(): ReactNode {
  const wanted = usePanels((panels) => panels.term);
  const list = useRef<HTMLDListElement>(null);
  useEffect(() => {
    const term = wanted === null ? null : list.current?.querySelector(`[data-term=${wanted}]`);
    // The dialog itself scrolls; the page behind it cannot.
    term?.scrollIntoView({ block: "center" });
  }, [wanted]);
  return (
    <dl className="term-list" ref={list}>
      {SORTED.map(([id, term]) => (
        <div key={id} data-term={id} data-wanted={id === wanted || undefined}>
          <dt>{term.name}</dt>
          <dd>{term.says}</dd>
        </div>
      ))}
    </dl>
  );
}

/** All words of the trade that the book explains. */
export function TermsDialog(): ReactNode {
  return (
    <BookDialog panel="terms" title={says.title}>
      <p className="says">{says.says}</p>
      <Terms />
    </BookDialog>
  );
}
