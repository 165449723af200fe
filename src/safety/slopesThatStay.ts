/** Slopes that stay when the job is done: sides of a pad's fill and of the cut behind it. */
import type { WorkQuantities } from "../dig/index.js";
import { ruleOf, type Finding, type Material, type Pad, type Work } from "../site/index.js";
import { wallSlope } from "../units/index.js";
import type { WallContext } from "./checkWalls.js";

/** A run within this of the figure counts as the figure. */
const SAME = 1e-6;
/** m³: less fill than this is the rounding of two volumes. */
const SOME_FILL = 0.01;

/**
 * Findings on a pad whose fill, or whose cut, is drawn to stay steeper than the rule book's slopes
 * for earth and rock. Other holes are filled again: their walls are another matter (`checkWalls`).
 */
export function checkSlopesThatStay(
  work: Work,
  hole: WorkQuantities,
  context: WallContext,
): Finding[] {
  if (work.kind !== "pad") return [];
  const soil = ruleOf(context.locality, "slope-stays-soil");
  const rock = ruleOf(context.locality, "slope-stays-rock");
  const print = (run: number): string => wallSlope.print(run, context.units);
  const finding = (code: string, drawn: number, wanted: number, what: string): Finding => ({
    ...{ level: "caution", code, where: work.id },
    text: `${what} is drawn ${print(drawn)} and stays. One county's rule takes ${print(wanted)} as the steepest without a report. Flatten it, hold it with a wall, or ask your building office.`,
    source: `${wanted === rock.value ? rock.source : soil.source}; your local code decides`,
  });
  const findings: Finding[] = [];
  if (fillVolume(work, hole) > SOME_FILL && work.fillRun < soil.value - SAME) {
    const what = `The side of the fill under ${work.name}`;
    findings.push(finding("slope.fill-stays", work.fillRun, soil.value, what));
  }
  const cut = cutSlope(work, hole, context.materials, { soil: soil.value, rock: rock.value });
  if (hole.tallestFace > SAME && cut !== null && cut.drawn < cut.wanted - SAME) {
    const what = `The cut behind ${work.name}, in ${cut.through},`;
    findings.push(finding("slope.cut-stays", cut.drawn, cut.wanted, what));
  }
  return findings;
}

/** m³ of fill under a pad, without the course where both are of one material. */
function fillVolume(pad: Pad, { fill }: WorkQuantities): number {
  const all = fill[pad.fill] ?? 0;
  if (pad.course?.material !== pad.fill) return all;
  const outlines = [pad.outline, ...(pad.levels ?? []).map(({ outline }) => outline)];
  return all - outlines.reduce((sum, outline) => sum + areaOf(outline), 0) * pad.course.depth;
}

function areaOf(outline: Pad["outline"]): number {
  const twice = outline.reduce((sum, [x, y], i) => {
    const [nx, ny] = outline[(i + 1) % outline.length]!;
    return sum + x * ny - nx * y;
  }, 0);
  return Math.abs(twice) / 2;
}

interface CutSlope {
  /** Run per rise as drawn and as wanted where it falls shortest. */
  drawn: number;
  wanted: number;
  through: string;
}

/**
 * The slope of a pad's cut that falls shortest of what its material may stand at: a wall of one plane
 * or of benches by the weakest material met, walls by layer each by their own. Rock is rock only
 * where nothing else is met; what can be ripped counts as earth.
 */
function cutSlope(
  pad: Pad,
  hole: WorkQuantities,
  materials: ReadonlyMap<string, Material>,
  limits: { soil: number; rock: number },
): CutSlope | null {
  const met = hole.materialsMet.flatMap((id) => materials.get(id) ?? []);
  const wantedOf = ({ kind }: Material): number => (kind === "rock" ? limits.rock : limits.soil);
  const { walls } = pad;
  if (walls.by === "layers") {
    const each = met.map((one) => ({
      ...{ drawn: one.wallRun, wanted: wantedOf(one) },
      through: one.name.toLowerCase(),
    }));
    return each.reduce<CutSlope | null>(
      (worst, one) =>
        worst === null || one.wanted - one.drawn > worst.wanted - worst.drawn ? one : worst,
      null,
    );
  }
  const rockAlone = met.length > 0 && met.every(({ kind }) => kind === "rock");
  const drawn =
    walls.by === "benches" ? walls.tread / walls.rise : Math.min(...(walls.sides ?? [walls.run]));
  return {
    drawn,
    wanted: rockAlone ? limits.rock : limits.soil,
    through: rockAlone ? "rock" : "earth",
  };
}
