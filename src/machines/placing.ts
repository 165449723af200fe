/** Parts the hours of placing by step: bedding, pipe zone, backfill. */
import type { DigResult } from "../dig/index.js";
import type { Tank, Trench, Work } from "../site/index.js";
import { exactly, multiplyRanges, sumRanges } from "./range.js";
import type { MaterialHours, Range, WorkHours } from "./types.js";

/** A step of putting material in, in the order of the steps. */
export type PlacingStep = "bed" | "zone" | "backfill";

/** Hours of one step and the materials that it takes. */
export interface StepHours {
  step: PlacingStep;
  hours: Range;
  materials: readonly string[];
}

/** A step's material and about how much of it, m³. */
interface Role {
  step: PlacingStep;
  material: string;
  about: number;
}

/**
 * A work's hours of placing, parted by step. A material that serves one step goes to it whole; one
 * that serves several is parted by the volume above the hole's floor: bedding and pipe zone as wide
 * as the floor, what is left is backfill. So the parts add up to the work's hours, while sloped
 * walls make the lower steps a little short.
 */
export function placingSteps(
  drawn: Work | undefined,
  hours: WorkHours,
  pipes: DigResult["pipes"],
): StepHours[] {
  const roles = rolesOf(drawn, pipes);
  const parts: { step: PlacingStep; material: string; hours: Range }[] = [];
  for (const line of hours.materials) {
    if (line.action !== "place") continue;
    parts.push(...partsOf(line, roles));
  }
  const steps: readonly PlacingStep[] = ["bed", "zone", "backfill"];
  return steps.flatMap((step) => {
    const own = parts.filter((part) => part.step === step);
    if (own.length === 0) return [];
    const materials = own.map(({ material }) => material);
    return [{ step, hours: sumRanges(own.map((part) => part.hours)), materials }];
  });
}

function partsOf(
  line: MaterialHours,
  roles: readonly Role[],
): { step: PlacingStep; material: string; hours: Range }[] {
  const own = roles.filter(({ material }) => material === line.material);
  if (own.length === 0) return [{ step: "backfill", material: line.material, hours: line.hours }];
  const parts = [];
  let left = line.volume;
  for (const [i, { step, about }] of own.entries()) {
    const volume = i === own.length - 1 ? left : Math.min(left, about);
    left -= volume;
    if (!(volume > 0)) continue;
    const hours = multiplyRanges(line.hours, exactly(volume / line.volume));
    parts.push({ step, material: line.material, hours });
  }
  return parts;
}

function rolesOf(drawn: Work | undefined, pipes: DigResult["pipes"]): Role[] {
  if (drawn?.kind === "tank") return tankRoles(drawn);
  if (drawn?.kind === "trench") return trenchRoles(drawn, pipes);
  return [];
}

function tankRoles({ body, overdig, bedding, backfill }: Tank): Role[] {
  const floor = (body.length + 2 * overdig) * (body.width + 2 * overdig);
  return [
    { step: "bed", material: bedding.material, about: floor * bedding.depth },
    { step: "backfill", material: backfill, about: Infinity },
  ];
}

function trenchRoles(trench: Trench, pipes: DigResult["pipes"]): Role[] {
  const runs = pipes.filter((pipe) => pipe.trench === trench.id);
  const length = runs.reduce((most, pipe) => Math.max(most, pipe.length), 0);
  const tallest = runs.reduce((most, pipe) => Math.max(most, pipe.outside), 0);
  const inPipes = runs.reduce((sum, { outside }) => sum + (Math.PI / 4) * outside ** 2, 0);
  const zone = Math.max(0, trench.width * (tallest + trench.zone.above) - inPipes);
  const { bedding, backfill } = trench;
  return [
    { step: "bed", material: bedding.material, about: trench.width * bedding.depth * length },
    { step: "zone", material: trench.zone.material, about: zone * length },
    { step: "backfill", material: backfill, about: Infinity },
  ];
}
