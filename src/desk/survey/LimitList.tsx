import type { ReactNode } from "react";
import { length } from "../../units/index.js";
import { useSite } from "../useSite.js";

/** What limits the site, with the setback that the person has set; nothing when there is none. */
export function LimitList(): ReactNode {
  const { site } = useSite();
  const limits = (site.limits ?? []).filter((limit) => limit.setback !== undefined);
  if (limits.length === 0) return null;
  return (
    <>
      <h2>
        Limits <span className="aside">setbacks are your local rules'</span>
      </h2>
      <table className="table">
        <tbody>
          {limits.map((limit) => (
            <tr key={limit.id}>
              <th scope="row">{limit.name ?? limit.kind}</th>
              <td>{length.print(limit.setback ?? 0, site.units)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}
