import type { ReactNode } from "react";
import { setLocate } from "../../site/index.js";
import { words } from "../../words/index.js";
import { wholeOrNone } from "../fields/plain.js";
import { MeasureField } from "../fields/MeasureField.js";
import { TypedField } from "../fields/TypedField.js";
import { Findings } from "../Findings.js";
import { useEdit, useSite } from "../useSite.js";

const says = words.hazards.lines;

/** Findings of lines over and under the ground, and of the call before digging. */
export const isOfLines = ({ code }: { code: string }): boolean => code.startsWith("line.");

/** The locate call as it is written down, and every place where a line comes into the works. */
export function LinesSection(): ReactNode {
  const { site, estimate } = useSite();
  const edit = useEdit();
  const { ticket, date, days } = site.locate ?? {};
  return (
    <>
      <h2>{says.title}</h2>
      <section aria-label={says.title} data-lines="">
        <p className="soft">{says.intro}</p>
        <TypedField
          label={says.ticket}
          name="locate-ticket"
          shown={ticket ?? ""}
          usual={says.notMade}
          read={(text) => ({ ok: true, value: text.trim() === "" ? undefined : text.trim() })}
          onCommit={(next) => edit(says.writeTicket, (now) => setLocate(now, { ticket: next }))}
        />
        <TypedField
          label={says.date}
          name="locate-date"
          shown={date ?? ""}
          usual={says.notMade}
          read={readDay}
          onCommit={(next) => edit(says.writeDate, (now) => setLocate(now, { date: next }))}
        />
        <MeasureField
          label={says.days}
          name="locate-days"
          value={days}
          measure={wholeOrNone}
          most={60}
          usual={says.notKnown}
          note={days === undefined ? says.daysNote : undefined}
          onCommit={(next) => edit(says.writeDays, (now) => setLocate(now, { days: next }))}
          onClear={() => edit(says.writeDays, (now) => setLocate(now, { days: undefined }))}
        />
        <Findings findings={(estimate?.findings ?? []).filter(isOfLines)} />
      </section>
    </>
  );
}

function readDay(
  text: string,
): { ok: true; value: string | undefined } | { ok: false; text: string } {
  const typed = text.trim();
  if (typed === "") return { ok: true, value: undefined };
  const isDate = /^\d{4}-\d{2}-\d{2}$/.test(typed) && !Number.isNaN(Date.parse(typed));
  if (isDate && new Date(typed).toISOString().startsWith(typed)) return { ok: true, value: typed };
  return { ok: false, text: says.badDate(typed) };
}
