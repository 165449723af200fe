import type { ReactNode } from "react";
import { fiveFigures } from "../estimate/index.js";
import type { Estimate } from "../estimate/index.js";
import type { Site } from "../site/index.js";
import { words } from "../words/index.js";
import { figureRows } from "../handover/index.js";

/** The five figures of the scheme that is shown. */
export function Figures({ site, estimate }: { site: Site; estimate: Estimate }): ReactNode {
  const rows = figureRows(fiveFigures(estimate, site), site);
  return (
    <section className="strip-place" aria-label={words.desk.figuresScheme}>
      <dl className="strip">
        {rows.map(({ id, title, value, figure, unit, more }) => (
          <div key={id} className="figure" data-of={id}>
            <dt>{title}</dt>
            <dd>
              <span className="big" data-figure={id} data-value={value}>
                {figure}
              </span>
              {unit !== "" && <span>{unit}</span>}
              {more !== "" && <span className="soft figure-more">{more}</span>}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
