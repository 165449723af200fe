import type { ReactNode } from "react";
import { listedDays } from "../../estimate/index.js";
import type { Estimate } from "../../estimate/index.js";
import { setMachines, type Scheme } from "../../site/index.js";
import { hours, length, plainNumber } from "../../units/index.js";
import { words } from "../../words/index.js";
import { MeasureField } from "../fields/MeasureField.js";
import { whole, wholeOrNone } from "../fields/plain.js";
import { ShareField } from "../fields/ShareField.js";
import { TypedField } from "../fields/TypedField.js";
import { useEdit, useSite } from "../useSite.js";
import { DayChart } from "./DayChart.js";

type JobDays = Estimate["machines"]["job"];
type Days = NonNullable<NonNullable<Scheme["machines"]>["days"]>;

/** The whole job by day: how long, what when, what is delivered, and what that hangs on. */
export function DaysSection({ job }: { job: JobDays }): ReactNode {
  const { low, likely, high } = job.schedule;
  if (likely.workingDays === 0) return null;
  const span = (pick: (one: typeof low) => number): string => {
    const [from, to] = [pick(low), pick(high)];
    return from === to ? plainNumber(from, 0) : `${plainNumber(from, 0)}–${plainNumber(to, 0)}`;
  };
  return (
    <section aria-label={words.machinesLeaf.daysJob} data-figure-home="days">
      <h2>
        {words.machinesLeaf.jobDay} <span className="aside">{words.machinesLeaf.quickSlow}</span>
      </h2>
      <table className="table" data-job-days={likely.workingDays}>
        <tbody>
          <tr>
            <th scope="row">{words.machinesLeaf.workingDaysLikely(likely.workingDays)}</th>
            <td>{span((one) => one.workingDays)}</td>
          </tr>
          <tr>
            <th scope="row">{words.machinesLeaf.daysKeptWeatherLikely(likely.lostDays)}</th>
            <td>{span((one) => one.lostDays)}</td>
          </tr>
          <tr>
            <th scope="row">{words.machinesLeaf.fromFirstDayLast(likely.calendarDays)}</th>
            <td>{span((one) => one.calendarDays)}</td>
          </tr>
        </tbody>
      </table>
      <DayChart job={job} />
      <p className="soft">{words.machinesLeaf.darkWithDiggerGreen}</p>
      <DayList job={job} />
      <DayFields job={job} />
    </section>
  );
}

function DayList({ job }: { job: JobDays }): ReactNode {
  return (
    <details className="working" data-figure-working>
      <summary>
        <span className="text">{words.machinesLeaf.dayDayWords}</span>
        <span className="amount">{words.machinesLeaf.daysShort(job.schedule.days.length)}</span>
      </summary>
      <div className="inside">
        <ol className="day-list">
          {listedDays(job.schedule).map((listed) =>
            "worked" in listed ? (
              <WorkedDay key={listed.worked.calendarDay} day={listed.worked} />
            ) : (
              <li key={listed.kept.calendarDay}>
                <DayHead day={listed.kept} />
                <p className="soft">{words.machinesLeaf.keptForWeather}</p>
              </li>
            ),
          )}
        </ol>
      </div>
    </details>
  );
}

function DayHead({ day }: { day: { calendarDay: number; date?: string } }): ReactNode {
  return (
    <h3>
      {words.machinesLeaf.day(day.calendarDay)}
      {day.date !== undefined && ` · ${day.date}`}
    </h3>
  );
}

function WorkedDay({ day }: { day: JobDays["schedule"]["days"][number] }): ReactNode {
  const { units } = useSite().site;
  return (
    <li>
      <DayHead day={day} />
      {day.deliveries.length > 0 && (
        <p className="soft">{words.machinesLeaf.comes([...new Set(day.deliveries)].join(", "))}</p>
      )}
      <ul>
        {day.tasks.map((task) => (
          <li key={task.id}>
            {task.name}
            {task.hours > 0 ? `, ${hours.print(task.hours, units)}` : words.machinesLeaf.waiting}
          </li>
        ))}
      </ul>
    </li>
  );
}

function DayFields({ job }: { job: JobDays }): ReactNode {
  const { site, schemeId } = useSite();
  const edit = useEdit();
  const { settings } = job;
  const given = site.schemes.find(({ id }) => id === schemeId)?.machines?.days ?? {};
  const set = (what: string, next: { [K in keyof Days]?: Days[K] | undefined }): void =>
    edit(what, (now) => {
      const kept = Object.entries({ ...given, ...next }).filter(([, v]) => v !== undefined);
      return setMachines(now, schemeId, { days: Object.fromEntries(kept) });
    });
  const count = (
    key: "perWeek" | "inspectionWait" | "standing" | "crew",
    label: string,
    from: 0 | 1,
    most: number,
  ): ReactNode => (
    <MeasureField
      label={label}
      name={`days-${key}`}
      value={given[key]}
      measure={from === 0 ? wholeOrNone : whole}
      most={most}
      usual={String(settings[key])}
      onCommit={(value) => set(label.toLowerCase(), { [key]: value })}
      onClear={() => set(label.toLowerCase(), { [key]: undefined })}
    />
  );
  return (
    <details className="working">
      <summary>
        <span className="text">{words.machinesLeaf.whatDaysHang}</span>
      </summary>
      <div className="inside form">
        <TypedField
          label={words.machinesLeaf.firstDay}
          name="days-start"
          shown={given.start ?? ""}
          usual={words.machinesLeaf.aMonday}
          read={readDate}
          onCommit={(start) => set(words.machinesLeaf.firstDayEdit, { start: start ?? undefined })}
        />
        {count("perWeek", words.machinesLeaf.daysWorkedWeek, 1, 7)}
        <ShareField
          label={words.machinesLeaf.daysLostWeather}
          name="days-weather"
          value={given.weather}
          most={0.9}
          usual={`${plainNumber(100 * settings.weather, 0)}%`}
          note={words.machinesLeaf.commonPracticeNoSource}
          onCommit={(weather) => set(words.machinesLeaf.daysLostWeatherEdit, { weather })}
          onClear={() => set(words.machinesLeaf.daysLostWeatherEdit, { weather: undefined })}
        />
        {count("inspectionWait", words.machinesLeaf.daysWaitedInspection, 0, 60)}
        {count("standing", words.machinesLeaf.daysTankStandsFull, 0, 60)}
        {count("crew", words.machinesLeaf.peopleByHand, 1, 20)}
        <MeasureField
          label={words.machinesLeaf.pipeLaidHour}
          name="days-layPerHour"
          value={given.layPerHour}
          measure={length}
          least={0}
          above
          usual={settings.layPerHour.likely}
          note={given.layPerHour === undefined ? words.forms.typicalNoSource : undefined}
          onCommit={(layPerHour) => set(words.machinesLeaf.pipeLaidHourEdit, { layPerHour })}
          onClear={() => set(words.machinesLeaf.pipeLaidHourEdit, { layPerHour: undefined })}
        />
      </div>
    </details>
  );
}

function readDate(text: string): { ok: true; value: string | null } | { ok: false; text: string } {
  const typed = text.trim();
  if (typed === "") return { ok: true, value: null };
  const isDate = /^\d{4}-\d{2}-\d{2}$/.test(typed) && !Number.isNaN(Date.parse(typed));
  if (isDate && new Date(typed).toISOString().startsWith(typed)) return { ok: true, value: typed };
  return { ok: false, text: words.machinesLeaf.wasNotUnderstoodWrite(typed) };
}
