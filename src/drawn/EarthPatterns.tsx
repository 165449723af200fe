import type { ReactNode } from "react";
import { soilColour, soilShade } from "../estimate/index.js";
import type { SoilShade } from "../estimate/index.js";
import { materialsOf, NATIVE } from "../site/index.js";
import type { MaterialKind, Site } from "../site/index.js";

/** Kinds of ground that a section tells apart. */
type Tone = MaterialKind | Exclude<SoilShade, "soil"> | "native" | "tank" | "wall" | "building";

/** What a material is drawn as: "tank" stands for any built thing but bed walls and buildings. */
export function toneOf(site: Site, material: string): Tone {
  if (material === NATIVE) return "native";
  const known = materialsOf(site).get(material);
  if (known?.kind === "soil") return soilShade(known);
  if (known) return known.kind;
  return material === "wall" || material === "building" ? material : "tank";
}

const DARK = "#2b2118";

/** Marks of each kind in a square of 12 px: they tell kinds apart without any colour. */
const MARKS: Readonly<Record<Tone, ReactNode>> = {
  topsoil: <path d="M1 3h4M7 9h4M4 6h2" stroke="#efe0c0" strokeWidth="1.3" strokeLinecap="round" />,
  soil: (
    <g fill={DARK}>
      <circle cx="2" cy="3" r="0.8" />
      <circle cx="8" cy="2" r="0.8" />
      <circle cx="5" cy="7" r="0.8" />
      <circle cx="10.5" cy="9" r="0.8" />
      <circle cx="1.5" cy="10.5" r="0.8" />
    </g>
  ),
  sand: (
    <g fill={DARK}>
      {[1.5, 4.5, 7.5, 10.5].flatMap((x, i) =>
        [2, 6, 10].map((y) => <circle key={`${x} ${y}`} cx={x} cy={y + (i % 2)} r="0.5" />),
      )}
    </g>
  ),
  silt: (
    <g stroke={DARK} strokeWidth="0.9">
      <path d="M1 3h3M7 9h3" />
      <circle cx="8.5" cy="3" r="0.4" fill={DARK} />
      <circle cx="2.5" cy="9" r="0.4" fill={DARK} />
    </g>
  ),
  clay: <path d="M1 1L4 5M7 1L10 5M4 7L7 11M10 7L13 11M-2 7L1 11" stroke={DARK} strokeWidth="1" />,
  rippable: <path d="M-2 14L14 -2M-8 8L8 -8M4 20L20 4" stroke={DARK} strokeWidth="1" />,
  rock: (
    <path
      d="M-2 -2L14 14M-2 4L8 14M4 -2L14 8M-2 10L2 14M10 -2L14 2"
      stroke="#14181a"
      strokeWidth="1.1"
    />
  ),
  aggregate: (
    <g fill="none" stroke={DARK} strokeWidth="0.9">
      <circle cx="3" cy="3" r="1.9" />
      <circle cx="9" cy="5.5" r="1.9" />
      <circle cx="4" cy="9.3" r="1.9" />
    </g>
  ),
  fill: <path d="M0 2.5h7M9 2.5h3M0 8.5h2M4 8.5h8" stroke="#5e4a20" strokeWidth="1" />,
  native: <path d="M-2 14L14 -2M-2 -2L14 14" stroke="#4a3626" strokeWidth="0.9" />,
  tank: null,
  wall: <path d="M3 0V12M8.5 0V12" stroke={DARK} strokeWidth="1" />,
  building: <path d="M0 5.5H12M0 11.5H12" stroke="#a39d8c" strokeWidth="0.8" />,
};

const GROUNDS: Readonly<Record<Tone, string>> = {
  topsoil: "var(--earth-topsoil)",
  soil: "var(--earth-soil)",
  sand: soilColour("sand"),
  silt: soilColour("silt"),
  clay: soilColour("clay"),
  rippable: "var(--earth-rippable)",
  rock: "var(--earth-rock)",
  aggregate: "var(--earth-aggregate)",
  fill: "var(--earth-fill)",
  native: "color-mix(in srgb, var(--earth-soil) 72%, #fff)",
  tank: "#c9c6bc",
  wall: "#a98a5e",
  building: "#e9e5d8",
};

/** Id of a material's pattern in the page; drawings of their own keep their patterns `within` them. */
export const patternId = (material: string, within = "section"): string =>
  `${within}-earth-${material}`.replace(/[^\w-]/g, "_");

/**
 * Patterns of materials. Two materials of one kind differ by the pattern's turn, so that they can be
 * told apart too.
 */
export function EarthPatterns(props: {
  site: Site;
  materials: readonly string[];
  within?: string;
}): ReactNode {
  const { site, materials, within } = props;
  const seen = new Map<Tone, number>();
  return (
    <defs>
      {materials.map((material) => {
        const tone = toneOf(site, material);
        const before = seen.get(tone) ?? 0;
        seen.set(tone, before + 1);
        return (
          <pattern
            key={material}
            id={patternId(material, within)}
            width="12"
            height="12"
            patternUnits="userSpaceOnUse"
            patternTransform={before === 0 ? undefined : `rotate(${before * 28}) scale(1.3)`}
          >
            <rect width="12" height="12" style={{ fill: GROUNDS[tone] }} />
            {MARKS[tone]}
          </pattern>
        );
      })}
    </defs>
  );
}
