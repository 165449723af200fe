import type { ReactNode } from "react";

/** Names and what is said of each, as a table. */
export function Rows({ rows }: { rows: readonly (readonly [string, string])[] }): ReactNode {
  return (
    <table className="table">
      <tbody>
        {rows.map(([name, said]) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{said}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
