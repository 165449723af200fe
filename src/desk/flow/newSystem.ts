import { pumpRows } from "../../estimate/index.js";
import type { Branch, PressureSystem, Scheme } from "../../site/index.js";
import { words } from "../../words/index.js";
import type { StaticLift } from "../parts.js";

const INCH = 0.0254;
const FOOT = 0.3048;
/** The pump that a new system starts with, of the catalogue's, all of which it lists. */
const FIRST_PUMP = "effluent-half";

/**
 * A pressure system for a pipe that starts at a tank, with typical laterals in every bed of the
 * scheme (or one branch into the ground where there is none). Sizes are typical, no source.
 */
export function newSystem(scheme: Scheme, lift: StaticLift): PressureSystem {
  const beds = scheme.works.filter((work) => work.kind === "bed");
  const taken = new Set((scheme.flow?.pressure ?? []).map((one) => one.id));
  let count = 1;
  while (taken.has(`system-${count}`)) count += 1;
  const branches =
    beds.length === 0
      ? [plainBranch("branch-1", words.flowLeaf.field, undefined, 0, 9)]
      : beds.map((bed, i) =>
          plainBranch(
            `branch-${i + 1}`,
            bed.name,
            bed.id,
            Math.max(0, bed.height - 0.25),
            Math.max(1, bed.length - 2 * bed.wall - 0.6),
          ),
        );
  return {
    id: `system-${count}`,
    name: words.flowLeaf.andItsBeds(lift.name),
    tank: lift.tank,
    main: [lift.pipe],
    pumps: pumpRows().map(({ id, name }) => ({ id, name })),
    pump: FIRST_PUMP,
    branches,
    dose: { perDay: 4 },
  };
}

function plainBranch(
  id: string,
  name: string,
  bed: string | undefined,
  height: number,
  length: number,
): Branch {
  return {
    id,
    name,
    ...(bed === undefined ? {} : { bed }),
    height,
    inside: 1.61 * INCH,
    length: 4 * FOOT,
    laterals: {
      count: 2,
      length,
      inside: 1.38 * INCH,
      apart: 4 * FOOT,
      feed: "end",
      manifold: { inside: 1.61 * INCH },
      holes: { diameter: (3 / 16) * INCH, apart: 2.5 * FOOT, first: 1.25 * FOOT },
    },
  };
}
