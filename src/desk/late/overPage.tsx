import type { ReactNode } from "react";
import { useDesk } from "../../store/index.js";
import { words } from "../../words/index.js";
import { Late } from "./Late.js";
import { REPORT_PART, SECTION_PART, START_PART } from "./parts.js";

function Coming({ text, className }: { text: string; className: string }): ReactNode {
  return (
    <p className={className} role="status">
      {text}
    </p>
  );
}

/** The leaf for a site of one's own, over the page. */
export function StartSite(): ReactNode {
  const show = useDesk((desk) => desk.show);
  return (
    <Late
      part={START_PART}
      name={words.offline.theStart}
      coming={<Coming className="late-over" text={words.offline.startComing} />}
      onLeave={() => show({ starting: false })}
    >
      {(Start) => <Start />}
    </Late>
  );
}

/** The ground cut open, once its line has both ends. */
export function SectionPanel(): ReactNode {
  const isDrawn = useDesk((desk) => desk.section?.length === 2);
  const stop = useDesk((desk) => desk.stopSection);
  if (!isDrawn) return null;
  return (
    <Late
      part={SECTION_PART}
      name={words.offline.theSection}
      coming={<Coming className="late-section" text={words.offline.sectionComing} />}
      onLeave={stop}
    >
      {(Panel) => <Panel />}
    </Late>
  );
}

/** What is printed. A page that is printed before it has come says so on paper. */
export function ReportBody({ date }: { date: string }): ReactNode {
  return (
    <Late
      part={REPORT_PART}
      name={words.offline.theReport}
      coming={<Coming className="report" text={words.offline.reportComing} />}
    >
      {(Body) => <Body date={date} />}
    </Late>
  );
}
