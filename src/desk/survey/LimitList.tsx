import type { ReactNode } from "react";
import { length } from "../../units/index.js";
import { MarkButtons, MarkWords } from "../dig/MarkButtons.js";
import { useSite } from "../useSite.js";

/** What limits the site, with the setbacks that the person has set; nothing when there is none. */
export function LimitList(): ReactNode {
  const { site } = useSite();
  const limits = site.limits ?? [];
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
              <th scope="row">
                {limit.name ?? limit.kind}
                <MarkWords of={limit} />
              </th>
              <td>{limit.setback !== undefined && length.print(limit.setback, site.units)}</td>
              <td className="marks">
                <MarkButtons
                  thing={{ kind: "limit", id: limit.id }}
                  name={limit.name ?? limit.kind}
                  of={limit}
                />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}
