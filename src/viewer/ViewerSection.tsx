import { useId, useMemo } from "react";
import type { ReactNode } from "react";
import { SectionSheet } from "../drawn/index.js";
import type { SectionSheetProps } from "../drawn/index.js";
import { schemeOf } from "../estimate/index.js";
import { words } from "../words/index.js";
import { sectionLines } from "./sectionLines.js";
import type { Line } from "./sectionLines.js";

const OWN = "own";

const isSame = ([a, b]: Line, [c, d]: Line): boolean =>
  a[0] === c[0] && a[1] === c[1] && b[0] === d[0] && b[1] === d[1];

/** The ground cut open along a line that is chosen from a list, or moved in the picture. */
export function ViewerSection(props: SectionSheetProps): ReactNode {
  const { site, schemeId, line, onMove } = props;
  const id = useId();
  const lines = useMemo(() => sectionLines(site, schemeOf(site, schemeId)), [site, schemeId]);
  const chosen = lines.find((one) => isSame(one.line, line))?.id ?? OWN;
  const said = words.viewer.section;
  return (
    <div className="viewer-section">
      <p className="section-choice">
        <label htmlFor={id}>{said.where}</label>
        <select
          id={id}
          value={chosen}
          onChange={(event) => {
            const found = lines.find((one) => one.id === event.target.value);
            if (found !== undefined) onMove(found.line);
          }}
        >
          {chosen === OWN && <option value={OWN}>{said.own}</option>}
          {lines.map((one) => (
            <option key={one.id} value={one.id}>
              {one.name}
            </option>
          ))}
        </select>
        <span className="soft">{said.drag}</span>
      </p>
      <SectionSheet {...props} />
    </div>
  );
}
