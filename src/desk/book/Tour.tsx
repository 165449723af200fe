import { useEffect, useState } from "react";
import type { KeyboardEvent, ReactNode } from "react";
import { examples, useDesk } from "../../store/index.js";
import { words } from "../../words/index.js";
import { usePanels } from "./panels.js";
import { beginsByItself, deviceMemory, rememberSeen } from "./touring.js";

const says = words.book.tour;

/** What each step is about, marked on the page while it is told. */
const PLACES = [".strip", ".steps", ".site-button"] as const;

/** Marks an element of the page while a step tells of it. */
function useMarked(selector: string): void {
  useEffect(() => {
    const element = document.querySelector(selector);
    element?.setAttribute("data-toured", "");
    return () => element?.removeAttribute("data-toured");
  }, [selector]);
}

function useTexts(): readonly { title: string; text: string }[] {
  const site = useDesk((desk) => desk.history?.present ?? null);
  const schemeId = useDesk((desk) => desk.schemeId);
  const works = site?.schemes.find(({ id }) => id === schemeId)?.works ?? [];
  const tank = works.find(({ kind }) => kind === "tank")?.name ?? null;
  const isExample = examples.some(({ title }) => title === site?.name);
  return [
    {
      title: isExample ? says.exampleTitle : says.siteTitle,
      text: tank === null ? says.figures : says.drag(tank),
    },
    { title: says.leavesTitle, text: says.leaves },
    { title: says.ownTitle, text: says.own },
  ];
}

function Card({ onLeave }: { onLeave: () => void }): ReactNode {
  const [at, setAt] = useState(0);
  const texts = useTexts();
  const show = useDesk((desk) => desk.show);
  const step = texts[at]!;
  const isLast = at === texts.length - 1;
  useMarked(PLACES[at]!);
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key !== "Escape") return;
    event.stopPropagation();
    onLeave();
  };
  return (
    <section className="tour" aria-label={says.title} onKeyDown={onKeyDown}>
      <div className="tour-head">
        <p className="soft">{says.step(at + 1, texts.length)}</p>
        <button type="button" className="round" aria-label={says.leave} onClick={onLeave}>
          ✕
        </button>
      </div>
      <div role="status">
        <h2>{step.title}</h2>
        <p>{step.text}</p>
      </div>
      <div className="tour-foot">
        {at > 0 && (
          <button type="button" className="button" onClick={() => setAt(at - 1)}>
            {says.back}
          </button>
        )}
        {isLast && (
          <button
            type="button"
            className="button"
            onClick={() => {
              onLeave();
              show({ starting: true });
            }}
          >
            {says.start}
          </button>
        )}
        <button
          type="button"
          className="button main"
          onClick={() => (isLast ? onLeave() : setAt(at + 1))}
        >
          {isLast ? says.done : says.next}
        </button>
      </div>
    </section>
  );
}

/** Three cards for whoever opens the book for the first time; the page stays in use all the while. */
export function Tour(): ReactNode {
  const [byItself, setByItself] = useState(() =>
    beginsByItself(window.location.search, navigator.webdriver, deviceMemory()),
  );
  const asked = usePanels((panels) => panels.touring);
  const isFree = useDesk(
    (desk) => desk.status === "open" && !desk.starting && desk.unopened === null,
  );
  if (!isFree || (!byItself && !asked)) return null;
  const leave = (): void => {
    rememberSeen(deviceMemory());
    setByItself(false);
    usePanels.setState({ touring: false });
  };
  return <Card onLeave={leave} />;
}
