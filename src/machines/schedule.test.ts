import { describe, expect, it } from "vitest";
import { listedDays } from "./dayList.js";
import type { Task } from "./dayTypes.js";
import { exactly } from "./range.js";
import { schedule, scheduleOnce } from "./schedule.js";
import type { DayPattern } from "./schedule.js";

const PLAIN: DayPattern = { hoursPerDay: 8, perWeek: 7, weather: 0 };

function task(id: string, hours: number, after: string[] = [], more: Partial<Task> = {}): Task {
  return {
    id,
    name: id,
    work: null,
    kind: "dig",
    after,
    needs: [],
    hours: exactly(hours),
    wait: 0,
    inOneDay: false,
    deliveries: [],
    source: "test",
    ...more,
  };
}

/** Start and end of each task, h. */
function times(tasks: Task[], pattern: DayPattern = PLAIN): Record<string, [number, number]> {
  const job = scheduleOnce(tasks, pattern);
  return Object.fromEntries(job.tasks.map(({ id, start, end }) => [id, [start, end]]));
}

describe("a hand-worked network (our own)", () => {
  // A 3 → B 4, C 2; B → D 5; C → D, E 6; D, E → F 1.
  // Forward: A 0–3, B 3–7, C 3–5, D max(7, 5) = 7–12, E 5–11, F max(12, 11) = 12–13.
  // Longest chain A 3 + B 4 + D 5 + F 1 = 13; A C E F = 3 + 2 + 6 + 1 = 12, so E floats 1 h.
  const network = [
    task("A", 3),
    task("B", 4, ["A"]),
    task("C", 2, ["A"]),
    task("D", 5, ["B", "C"]),
    task("E", 6, ["C"]),
    task("F", 1, ["D", "E"]),
  ];

  it("starts and ends as worked by hand", () => {
    expect(times(network)).toEqual({
      A: [0, 3],
      B: [3, 7],
      C: [3, 5],
      D: [7, 12],
      E: [5, 11],
      F: [12, 13],
    });
  });

  it("names the longest chain", () => {
    const job = scheduleOnce(network, PLAIN);
    expect(job.critical).toEqual(["A", "B", "D", "F"]);
    expect(job.hours).toBe(13);
    expect(job.workingDays).toBe(2);
  });

  it("makes another chain the longest when a task of it grows by more than its float", () => {
    const job = scheduleOnce(network, PLAIN, (t) => (t.id === "E" ? 8 : t.hours.likely));
    expect(job.critical).toEqual(["A", "C", "E", "F"]);
    expect(job.hours).toBe(3 + 2 + 8 + 1);
  });

  it("does one after the other when all need the digger, the longest chain behind first", () => {
    const withDigger = network.map((t) => ({ ...t, needs: ["digger" as const] }));
    // Tails: B 4 + 5 + 1 = 10, C 2 + max(5, 6) + 1 = 9, so B first; then C frees D (6) and E (7).
    expect(times(withDigger)).toEqual({
      A: [0, 3],
      B: [3, 7],
      C: [7, 9],
      E: [9, 15],
      D: [15, 20],
      F: [20, 21],
    });
    expect(scheduleOnce(withDigger, PLAIN).hours).toBe(3 + 4 + 2 + 5 + 6 + 1);
  });
});

describe("resources", () => {
  it("let a trench be dug while pipe is laid, but not two dug at once", () => {
    const tasks = [
      task("dig-1", 4, [], { needs: ["digger"] }),
      task("dig-2", 4, [], { needs: ["digger"] }),
      task("lay-1", 3, ["dig-1"], { needs: ["crew"] }),
    ];
    expect(times(tasks)).toEqual({ "dig-1": [0, 4], "dig-2": [4, 8], "lay-1": [4, 7] });
  });

  it("put on the chain the task that held the digger", () => {
    const tasks = [
      task("long", 10, [], { needs: ["digger"] }),
      task("other", 4, [], { needs: ["digger"] }),
    ];
    expect(scheduleOnce(tasks, PLAIN).critical).toEqual(["long", "other"]);
  });

  it("count the hours of each day of use", () => {
    const tasks = [
      task("dig", 10, [], { needs: ["digger"] }),
      task("wait", 0, ["dig"], { wait: 1 }),
      task("back", 2, ["wait"], { needs: ["digger", "compactor"] }),
    ];
    const { uses } = scheduleOnce(tasks, PLAIN);
    // Dug on days 1 and 2 (8 + 2 h), day 3 is waited, day 4 backfilled.
    expect(uses.digger).toEqual([
      { day: 1, hours: 8 },
      { day: 2, hours: 2 },
      { day: 4, hours: 2 },
    ]);
    expect(uses.compactor).toEqual([{ day: 4, hours: 2 }]);
    expect(uses.hammer).toEqual([]);
  });

  it("keep a truck's visit within one day", () => {
    const tasks = [task("dig", 7), task("set", 2, ["dig"], { inOneDay: true })];
    expect(times(tasks)["set"]).toEqual([8, 10]);
    expect(times([task("dig", 6), tasks[1]!])["set"]).toEqual([6, 8]);
  });
});

describe("waits", () => {
  const job = (hours: number, wait: number) =>
    times([task("test", hours), task("seen", 0, ["test"], { wait }), task("back", 1, ["seen"])]);

  it("run over whole days from the end of the day on which they begin", () => {
    expect(job(3, 1)["back"]).toEqual([16, 17]);
    expect(job(3, 3)["back"]).toEqual([32, 33]);
  });

  it("begin at once when the day is just over, and take no time when there is none", () => {
    expect(job(8, 1)["back"]).toEqual([16, 17]);
    expect(job(3, 0)["back"]).toEqual([3, 4]);
  });
});

describe("the calendar", () => {
  const tenDays = [task("dig", 80, [], { needs: ["digger"] })];

  it("skips what is not worked of the week", () => {
    const days = (perWeek: number) =>
      scheduleOnce(tenDays, { ...PLAIN, perWeek }).uses.digger.map(({ day }) => day);
    expect(days(7)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    expect(days(5)).toEqual([1, 2, 3, 4, 5, 8, 9, 10, 11, 12]);
    expect(days(1)).toEqual([1, 8, 15, 22, 29, 36, 43, 50, 57, 64]);
  });

  it("begins on the weekday of the start, or the Monday after it", () => {
    // 25 November 2026 is a Wednesday: three days, the weekend, and on from Monday.
    const from = (start: string) =>
      schedule(tenDays, { ...PLAIN, perWeek: 5, start }).days.map(({ date }) => date);
    expect(from("2026-11-25").slice(0, 5)).toEqual([
      "2026-11-25",
      "2026-11-26",
      "2026-11-27",
      "2026-11-30",
      "2026-12-01",
    ]);
    expect(from("2026-11-28")[0]).toBe("2026-11-30");
    // Over the end of February in a leap year, and over a year's end.
    expect(from("2028-02-28").slice(0, 3)).toEqual(["2028-02-28", "2028-02-29", "2028-03-01"]);
    expect(from("2026-12-31").slice(0, 2)).toEqual(["2026-12-31", "2027-01-01"]);
  });

  it("loses the share of days that weather takes, spread over the job", () => {
    const lossy = schedule(tenDays, { ...PLAIN, weather: 0.1 });
    // 0.1 ÷ 0.9 lost for each day worked: half a day is reached with 4.5 days, so before day 6.
    expect(lossy.lost).toEqual([{ calendarDay: 6 }]);
    const dated = schedule(tenDays, { ...PLAIN, weather: 0.1, start: "2026-06-01" });
    expect(dated.lost).toEqual([{ calendarDay: 6, date: "2026-06-06" }]);
    const listed = listedDays(lossy).map((day) =>
      "worked" in day ? day.worked.calendarDay : -day.kept.calendarDay,
    );
    expect(listed).toEqual([1, 2, 3, 4, 5, -6, 7, 8, 9, 10, 11]);
    expect(lossy.likely.workingDays).toBe(10);
    expect(lossy.likely.lostDays).toBe(1);
    expect(lossy.likely.calendarDays).toBe(11);
    const long = scheduleOnce([task("dig", 8 * 900)], { ...PLAIN, weather: 0.1 });
    expect(long.lostDays).toBe(100);
    const half = scheduleOnce(tenDays, { ...PLAIN, weather: 0.5 });
    expect(half.lostDays).toBe(9);
  });

  it("tells what happens on each day", () => {
    const { days } = schedule(
      [
        task("dig", 10, [], { needs: ["digger"], deliveries: ["digger"] }),
        task("set", 2, ["dig"], { deliveries: ["tank"] }),
      ],
      PLAIN,
    );
    expect(days.map(({ tasks }) => tasks.map(({ id, hours }) => [id, hours]))).toEqual([
      [["dig", 8]],
      [
        ["dig", 2],
        ["set", 2],
      ],
    ]);
    expect(days.map(({ deliveries }) => deliveries)).toEqual([["digger"], ["tank"]]);
  });
});

describe("what cannot be scheduled", () => {
  it("is refused with what was got", () => {
    expect(() => times([task("a", 1, ["b"]), task("b", 1, ["a"])])).toThrow(/circle among a, b/);
    expect(() => times([task("a", 1, ["x"])])).toThrow(/got "x"/);
    expect(() => times([task("a", 1), task("a", 1)])).toThrow(/"a" twice/);
    expect(() => times([task("a", NaN)])).toThrow(/NaN hours/);
    expect(() => times([task("a", 1)], { ...PLAIN, hoursPerDay: 0 })).toThrow(/got 0/);
    expect(() => times([task("a", 1)], { ...PLAIN, weather: 1 })).toThrow(/got 1/);
  });

  it("is nothing for nothing", () => {
    const job = scheduleOnce([], PLAIN);
    expect([job.hours, job.workingDays, job.calendarDays, job.critical]).toEqual([0, 0, 0, []]);
  });
});
