import type { ReactNode } from "react";
import { useDesk } from "../../store/index.js";
import { FOOT, length } from "../../units/index.js";
import { words } from "../../words/index.js";
import { BookDialog } from "./BookDialog.js";
import { keyTable, printPress } from "./keys.js";
import type { KeyGroup, KeyRow } from "./keys.js";
import { isApple } from "./screen.js";

const says = words.book.keys;
const GROUPS = Object.keys(says.groups) as KeyGroup[];

function Presses({ row }: { row: KeyRow }): ReactNode {
  const together = row.presses.every(({ key }) => key.startsWith("Arrow"));
  return row.presses.map((press, index) => (
    <span key={index} className="press">
      {index > 0 && !together && <span className="soft"> {says.or} </span>}
      {printPress(press, isApple())
        .filter((_, part, all) => !together || index === 0 || part === all.length - 1)
        .map((part) => (
          <kbd key={part}>{part}</kbd>
        ))}
    </span>
  ));
}

/** All keys of the desk, in groups, as they are printed on this machine. */
export function KeysDialog(): ReactNode {
  const units = useDesk((desk) => desk.history?.present.units ?? "us");
  const small = units === "us" ? 0.5 * FOOT : 0.1;
  const table = keyTable({
    small: length.print(small, units),
    far: length.print(10 * small, units),
  });
  return (
    <BookDialog panel="keys" title={says.title}>
      <p className="says">{says.says}</p>
      {GROUPS.map((group) => (
        <section key={group} aria-label={says.groups[group]}>
          <h3>{says.groups[group]}</h3>
          <table className="key-table">
            <tbody>
              {table
                .filter((row) => row.group === group)
                .map((row) => (
                  <tr key={row.id} data-key={row.id}>
                    <th scope="row">{row.says}</th>
                    <td>
                      <Presses row={row} />
                    </td>
                  </tr>
                ))}
            </tbody>
          </table>
        </section>
      ))}
    </BookDialog>
  );
}
