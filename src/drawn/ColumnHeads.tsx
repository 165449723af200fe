import type { ReactNode } from "react";

/** The head of a table: a name for each column, from the left. */
export function ColumnHeads({ names }: { names: readonly string[] }): ReactNode {
  return (
    <thead>
      <tr>
        {names.map((name, column) => (
          <th key={column} scope="col">
            {name}
          </th>
        ))}
      </tr>
    </thead>
  );
}
