import type { ReactNode } from "react";
import { ColumnHeads } from "../../drawn/index.js";
import type { Course } from "../../survey/index.js";
import { bearing, distance } from "../../units/index.js";
import { words } from "../../words/index.js";
import { useSite } from "../useSite.js";

const says = words.limits.lot;

type Side = Pick<Course, "bearing" | "length">;

/** The sides of a lot as typed and, where its error was shared out, as adjusted. */
export function LotSides(props: {
  courses: readonly Side[];
  adjusted: readonly Side[] | null;
}): ReactNode {
  const { courses, adjusted } = props;
  return (
    <details className="working">
      <summary>
        <span className="text">{says.sides(courses.length)}</span>
      </summary>
      <SideTable title={adjusted === null ? null : says.asTyped} sides={courses} />
      {adjusted !== null && <SideTable title={says.asAdjusted} sides={adjusted} />}
    </details>
  );
}

function SideTable({ title, sides }: { title: string | null; sides: readonly Side[] }): ReactNode {
  const { units } = useSite().site;
  return (
    <>
      {title !== null && <h3>{title}</h3>}
      <table className="table" aria-label={title ?? says.sides(sides.length)}>
        <ColumnHeads names={[says.side, says.bearing, says.length]} />
        <tbody>
          {sides.map((side, i) => (
            <tr key={i}>
              <th scope="row">{i + 1}</th>
              <td>{bearing.print(side.bearing, units, { digits: 4 })}</td>
              <td>{distance.print(side.length, units, { digits: 2 })}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}
