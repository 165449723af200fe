import type { ReactNode } from "react";
import type { Section, SectionArea } from "../estimate/index.js";
import type { Site } from "../site/index.js";
import { area, elevation } from "../units/index.js";
import { words } from "../words/index.js";
import { ColumnHeads } from "./ColumnHeads.js";
import { nameOfWork } from "./names.js";

interface TableProps {
  site: Site;
  section: Section;
  nameOf: (material: string) => string;
}

/** One material of one work, all its pieces together. */
interface Row {
  material: string;
  work: string | null;
  /** m². */
  area: number;
  /** Elevations, m. */
  lowest: number;
  highest: number;
}

/** The figures behind the section: every material that it cuts, how much of it and how high. */
export function SectionTable({ site, section, nameOf }: TableProps): ReactNode {
  const { units } = site;
  return (
    <div
      className="section-figures"
      tabIndex={0}
      role="region"
      aria-label={words.sectionPanel.figuresSection}
    >
      <table className="table">
        <ColumnHeads
          names={[
            words.sectionPanel.material,
            words.sectionPanel.partOf,
            words.sectionPanel.area,
            words.sectionPanel.lowest,
            words.sectionPanel.highest,
          ]}
        />
        <tbody>
          {rowsOf([...section.areas, ...section.standing]).map((row) => (
            <tr key={`${row.material} ${row.work ?? ""}`}>
              <th scope="row">{nameOf(row.material)}</th>
              <td>
                {row.work === null
                  ? words.sectionPanel.theGround
                  : nameOfWork(site, section, row.work)}
              </td>
              <td>{area.print(row.area, units, { digits: 1 })}</td>
              <td>{elevation.print(row.lowest, units)}</td>
              <td>{elevation.print(row.highest, units)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function rowsOf(pieces: readonly SectionArea[]): Row[] {
  const rows = new Map<string, Row>();
  for (const { material, work, area: size, outline } of pieces) {
    const key = `${material} ${work ?? ""}`;
    const known = rows.get(key) ?? { area: 0, lowest: Infinity, highest: -Infinity };
    const heights = outline.map(([, z]) => z);
    rows.set(key, {
      material,
      work,
      area: known.area + size,
      lowest: Math.min(known.lowest, ...heights),
      highest: Math.max(known.highest, ...heights),
    });
  }
  return [...rows.values()];
}
