import { useLayoutEffect, useRef, useState, type ReactNode, type RefObject } from "react";
import { useDesk } from "../../store/index.js";
import { words } from "../../words/index.js";
import { countFitting } from "./fitting.js";
import { MoreTools } from "./MoreTools.js";
import type { BarTool } from "./barTool.js";
import { useBarTools } from "./tools.js";

const VIEWS = [
  { view: "orbit", name: words.looking.orbit },
  { view: "plan", name: words.looking.plan },
  { view: "walk", name: words.looking.walk },
] as const;

function ViewSwitch(): ReactNode {
  const shown = useDesk((desk) => desk.view);
  const show = useDesk((desk) => desk.show);
  return (
    <div className="view-switch" role="group" aria-label={words.looking.views}>
      {VIEWS.map(({ view, name }) => (
        <button
          key={view}
          type="button"
          aria-pressed={shown === view}
          onClick={() => show({ view })}
        >
          {name}
        </button>
      ))}
    </div>
  );
}

/** The bar over the scene: the views, then the tools, of which those that do not fit are in a menu. */
export function SceneBar(): ReactNode {
  const bar = useRef<HTMLDivElement>(null);
  const tools = useBarTools();
  const count = useCountFitting(bar, tools);
  const rest = tools.slice(count);
  return (
    <div className="scene-bar" ref={bar}>
      <ViewSwitch />
      <div className="bar-tools" role="group" aria-label={words.looking.bar}>
        {tools.slice(0, count).map((tool) => (
          <button
            key={tool.id}
            type="button"
            className="bar-button"
            title={tool.title}
            {...(tool.on === null ? {} : { "aria-pressed": tool.on })}
            onClick={tool.press}
          >
            {tool.name}
          </button>
        ))}
        {rest.length > 0 && <MoreTools tools={rest} />}
      </div>
      {/* All buttons side by side, unseen, to be measured: they differ by language and text size. */}
      <div className="bar-measure" aria-hidden="true">
        {tools.map((tool) => (
          <span key={tool.id} className="bar-button">
            {tool.name}
          </span>
        ))}
        <span className="bar-button">{words.looking.more} ▾</span>
      </div>
    </div>
  );
}

/** How many tools fit beside the view switch; measured anew when the room or the texts change. */
function useCountFitting(bar: RefObject<HTMLDivElement | null>, tools: readonly BarTool[]): number {
  const [count, setCount] = useState(tools.length);
  const names = tools.map(({ name }) => name).join();
  useLayoutEffect(() => {
    const element = bar.current;
    const measured = element?.querySelector<HTMLElement>(".bar-measure");
    const views = element?.querySelector<HTMLElement>(".view-switch");
    if (element === null || !measured || !views) return undefined;
    const measure = (): void => {
      const all = Array.from(measured.children, (one) => one.getBoundingClientRect().width);
      const gap = Number.parseFloat(getComputedStyle(element).columnGap) || 0;
      const room = element.clientWidth - views.getBoundingClientRect().width;
      setCount(countFitting(all.slice(0, -1), all.at(-1) ?? 0, gap, room));
    };
    measure();
    const watch = new ResizeObserver(measure);
    for (const one of [element, views, measured]) watch.observe(one);
    return () => watch.disconnect();
  }, [bar, names]);
  return count;
}
