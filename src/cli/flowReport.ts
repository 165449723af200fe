/** Pumps, doses, sizes and uplift as lines of the text report. */
import type { Estimate } from "../estimate/index.js";
import {
  area,
  dailyFlow,
  elevation,
  flow,
  head,
  liquidVolume,
  minutes,
  plainNumber,
  velocity,
  type Measure,
} from "../units/index.js";

type Row = [label: string, text: string];
type Print = (measure: Measure, value: number) => string;
type Pressure = Estimate["flow"]["pressure"][number];

/** One heading and its rows. */
export interface FlowPart {
  title: string;
  rows: Row[];
}

/** What the estimate knows of pumps, sizes and uplift; nothing where the scheme says nothing. */
export function flowParts({ flow: result }: Estimate, print: Print): FlowPart[] {
  return [
    ...result.pressure.flatMap((system) => pressureParts(system, print)),
    ...sizingPart(result.sizing, print),
    ...result.flotation.map((tank) => ({
      title: `${tank.name}, empty, in groundwater`,
      rows: [
        [
          "  weight ÷ uplift",
          tank.factor === null
            ? "the water does not reach it"
            : `${tank.factor.toFixed(2)} (wanted ${tank.wanted})`,
        ],
        ...(tank.bare === null
          ? []
          : [
              [
                "  the same before it is covered",
                `${tank.bare.toFixed(2)} (wanted ${tank.wanted})`,
              ] satisfies Row,
            ]),
      ] satisfies Row[],
    })),
  ];
}

function pressureParts(system: Pressure, print: Print): FlowPart[] {
  const used = system.pumps.find((pump) => pump.id === system.pump);
  const best = system.pumps.find((pump) => pump.id === system.best);
  const at = (point: { flow: number; head: number }): string =>
    `${print(flow, point.flow)} at ${print(head, point.head)}`;
  const duty: Row[] = [
    ["  pump", used?.name ?? "none"],
    ["  lift at rest", print(head, system.lift.value)],
    ["  runs at", at({ flow: system.flow.value, head: system.head.value })],
    ["  wanted", at({ flow: system.wanted.flow.value, head: system.wanted.head.value })],
    ["  speed in the main", print(velocity, system.velocity.value)],
    ["  serves with least power", best?.name ?? "none of those listed"],
    ["  runs back after each dose", print(liquidVolume, system.drainBack.value)],
    ...system.branches.map((branch): Row => [
      `  ${branch.name}`,
      `${print(flow, branch.flow)}, ${branch.holes} holes, differing by ${plainNumber(100 * branch.spread, 1)}%`,
    ]),
  ];
  return [{ title: system.name, rows: [...duty, ...doseRows(system, print)] }];
}

const FREE_TO = { inlet: "the inlet's invert", cover: "the underside of the cover" } as const;

function doseRows({ dose, water }: Pressure, print: Print): Row[] {
  if (dose === null) return [];
  const level = (depth: number | null): string =>
    depth === null ? "no room" : print(elevation, water.floor + depth);
  const { plan } = dose;
  return [
    ["  one dose", print(liquidVolume, dose.volume.value)],
    ["  doses a day", plainNumber(plan.perDay, 1)],
    ["  pump runs for", dose.runTime === null ? "–" : print(minutes, dose.runTime.value)],
    ["  pump off at", level(plan.off)],
    ["  pump on at", level(plan.on)],
    ["  alarm at", level(plan.alarm)],
    ["  reserve full at", level(plan.full)],
    [
      "  free over the alarm",
      `${print(liquidVolume, plan.reserve)}, up to ${FREE_TO[plan.freeTo]}`,
    ],
    ["  without power holds", `${plainNumber(plan.hoursWithoutPower, 0)} h of flow`],
  ];
}

function sizingPart(sizing: Estimate["flow"]["sizing"], print: Print): FlowPart[] {
  const rows: Row[] = [];
  const { daily, leastTank, tanks, areaWanted, field } = sizing;
  if (daily !== undefined) rows.push(["  design flow", print(dailyFlow, daily.value)]);
  if (leastTank !== undefined) rows.push(["  tank wanted", print(liquidVolume, leastTank.value)]);
  if (rows.length > 0 && tanks.value > 0) {
    rows.push(["  tanks hold", print(liquidVolume, tanks.value)]);
  }
  if (areaWanted !== undefined) {
    rows.push(["  bottom wanted", print(area, areaWanted.value)]);
    rows.push(["  bottom there is", print(area, field.value)]);
  }
  return rows.length === 0 ? [] : [{ title: "Sizes", rows }];
}
