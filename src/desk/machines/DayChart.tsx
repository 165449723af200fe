import type { ReactNode } from "react";
import type { Estimate } from "../../estimate/index.js";
import { words } from "../../words/index.js";

type JobDays = Estimate["machines"]["job"];

const NAME = 142;
/** Width of the leaf, which all days fit into as long as a day is not narrower than `LEAST`. */
const LEAF = 334;
const LEAST = 9;
const WIDEST = 26;
const ROW = 20;
const HEAD = 34;

/** What each bar is filled with: by what it needs, told by the key in words too. */
const LOOKS = {
  machine: "var(--ink)",
  hand: "var(--field)",
  wait: "none",
} as const;
type Look = keyof typeof LOOKS;

function lookOf(task: JobDays["tasks"][number]): Look {
  if (task.wait > 0) return "wait";
  return task.needs.includes("digger") ? "machine" : "hand";
}

/** The job as bars over its calendar days. The list of days below it tells the same in words. */
export function DayChart({ job }: { job: JobDays }): ReactNode {
  const { schedule, tasks, settings } = job;
  const { likely, days } = schedule;
  const count = likely.calendarDays;
  if (count === 0) return null;
  const day = Math.min(WIDEST, Math.max(LEAST, (LEAF - NAME - 4) / count));
  const inOrder = tasks
    .flatMap((task, i) => {
      const timed = likely.tasks[i];
      return timed === undefined ? [] : [{ task, timed }];
    })
    .sort((a, b) => a.timed.start - b.timed.start || a.timed.end - b.timed.end);
  const wide = NAME + day * count + 4;
  const tall = HEAD + ROW * tasks.length + 4;
  const calendarDay = (working: number): number => days[working - 1]?.calendarDay ?? working;
  /** x of a time in working hours: at a day's end, the end of that day. */
  const x = (hours: number, isEnd: boolean): number => {
    const within = hours / settings.hoursPerDay;
    const number = isEnd ? Math.max(1, Math.ceil(within - 1e-9)) : Math.floor(within + 1e-9) + 1;
    const share = within - (number - 1);
    return NAME + day * (calendarDay(Math.min(number, days.length)) - 1 + share);
  };
  const worked = new Set(days.map((one) => one.calendarDay));
  const every = day < 13 ? 5 : day < 20 && count > 9 ? 2 : 1;
  return (
    <div className="wide-table" role="region" aria-label={words.machinesLeaf.jobDay} tabIndex={0}>
      <svg
        className="day-chart"
        width={wide}
        height={tall}
        viewBox={`0 0 ${wide} ${tall}`}
        role="img"
        aria-label={words.machinesLeaf.tasksOverCalendarDays(tasks.length, count)}
      >
        {Array.from({ length: count }, (_, i) => (
          <g key={i}>
            {!worked.has(i + 1) && (
              <rect
                x={NAME + day * i}
                y={HEAD - 14}
                width={day}
                height={tall - HEAD + 10}
                fill="var(--paper-shade)"
              />
            )}
            <line
              x1={NAME + day * i}
              x2={NAME + day * i}
              y1={HEAD - 14}
              y2={tall - 4}
              stroke="var(--hairline)"
            />
            {i % every === 0 && (
              <text x={NAME + day * (i + 0.5)} y={HEAD - 18} fontSize="12" textAnchor="middle">
                {i + 1}
              </text>
            )}
          </g>
        ))}
        <text x="0" y={HEAD - 18} fontSize="12">
          {words.machinesLeaf.calendarDay}
        </text>
        {inOrder.map(({ task, timed }, i) => {
          const look = lookOf(task);
          const from = x(timed.start, false);
          const to = Math.max(x(timed.end, true), from + 2);
          const y = HEAD + ROW * i;
          return (
            <g key={task.id} data-task={task.id}>
              <text x={NAME - 6} y={y + 13} fontSize="11.5" textAnchor="end">
                <title>{task.name}</title>
                {shortName(task.name)}
              </text>
              <rect
                x={from}
                y={y + 3}
                width={to - from}
                height={ROW - 7}
                fill={LOOKS[look]}
                stroke={timed.critical ? "var(--stake)" : "var(--ink)"}
                strokeWidth={timed.critical ? 2 : 1}
                strokeDasharray={look === "wait" ? "3 2" : undefined}
              />
            </g>
          );
        })}
      </svg>
    </div>
  );
}

/** Letters that fit beside the bars. */
const LONGEST = 23;

function shortName(name: string): string {
  return name.length <= LONGEST ? name : `${name.slice(0, LONGEST - 1).trimEnd()}…`;
}
