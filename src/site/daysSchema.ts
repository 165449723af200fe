/**
 * The part of a scheme that says how its days run: when it starts, which days are worked, what the
 * weather may take, how long an inspection keeps it waiting, and how fast the crew lays pipe.
 */
import { z } from "zod";

/** How the days of the job run; every field may be absent. Hours a day stand in `hoursPerDay`. */
export const daysSchema = z.looseObject({
  start: z.iso
    .date("a date as YYYY-MM-DD")
    .optional()
    .describe("first day of the job, YYYY-MM-DD; absent: a Monday, and days have no dates"),
  perWeek: z.int().min(1).max(7).optional().describe("days worked a week, from Monday; absent: 5"),
  weather: z
    .number()
    .min(0)
    .max(0.9)
    .optional()
    .describe("share of working days lost to weather; absent: 0.1 (common practice, no source)"),
  inspectionWait: z
    .int()
    .min(0)
    .max(60)
    .optional()
    .describe("whole working days that each work waits for its inspection; absent: 1"),
  standing: z
    .int()
    .min(0)
    .max(60)
    .optional()
    .describe("whole working days that a tank stands full of water for its test; absent: 1"),
  crew: z.int().min(1).max(20).optional().describe("people by hand beside the digger; absent: 2"),
  layPerHour: z
    .number()
    .positive()
    .optional()
    .describe("m of pipe laid in an hour by that crew; absent: the catalogue's for two, by head"),
});
