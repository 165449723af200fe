import { earthColour } from "../estimate/index.js";
import type { MaterialKind } from "../site/index.js";

/** Colours of one theme of the scene, as CSS hex. */
export interface ScenePalette {
  paper: string;
  ink: string;
  inkSoft: string;
  contour: string;
  stake: string;
  water: string;
  /** Water that stands, and the slope that drains to a work. */
  pool: string;
  lot: string;
  /** What is not built yet, drawn on the ground. */
  outline: string;
  concrete: string;
  lid: string;
  timber: string;
  cladding: string;
  roof: string;
  leaf: string;
  trunk: string;
  /** Of an erosion barrier. */
  cloth: string;
  machine: string;
  machineDark: string;
  machineArm: string;
  gravity: string;
  pressure: string;
  conduit: string;
  sun: string;
  sunlight: number;
  sky: string;
  bounce: string;
  skylight: number;
}

const DAY: ScenePalette = {
  paper: "#e9e2d0",
  ink: "#26323a",
  inkSoft: "#5d655f",
  contour: "#8a6234",
  stake: "#d4541c",
  water: "#2f6f93",
  pool: "#8fc1da",
  lot: "#26323a",
  outline: "#26323a",
  concrete: "#cbc6b8",
  lid: "#5f7a66",
  timber: "#a98a5e",
  cladding: "#cdbf9f",
  roof: "#8f6a4c",
  leaf: "#69804d",
  trunk: "#6a4b33",
  cloth: "#5b6a74",
  machine: "#8196a0",
  machineDark: "#4a565c",
  machineArm: "#a9b4b6",
  gravity: "#4a3b2c",
  pressure: "#2f6f73",
  conduit: "#a33d2a",
  sun: "#fff1d2",
  sunlight: 2.35,
  sky: "#f4efe2",
  bounce: "#b7a27c",
  skylight: 1.9,
};

const NIGHT: ScenePalette = {
  ...DAY,
  paper: "#1c2327",
  ink: "#11171b",
  inkSoft: "#b9b39f",
  contour: "#5a4023",
  stake: "#f0793f",
  lot: "#e9dfc6",
  outline: "#f2ead6",
  sun: "#cfd9ea",
  sunlight: 1.5,
  sky: "#9fb0c4",
  bounce: "#5a5346",
  skylight: 1.05,
};

/** The colours of a theme. */
export function scenePalette(theme: "light" | "dark"): ScenePalette {
  return theme === "dark" ? NIGHT : DAY;
}

/** The drawn patterns of earth; the numbers are read by the shader in `earthMaterial.ts`. */
export const PATTERN = {
  grass: 0,
  topsoil: 1,
  soil: 2,
  rippable: 3,
  rock: 4,
  aggregate: 5,
  fill: 6,
  native: 7,
} as const;

/** Colour (CSS hex) and pattern number of a kind of earth. */
export interface EarthTone {
  colour: string;
  pattern: number;
}

/** How a kind of earth is drawn; "native" is the site's own earth put back. */
export function earthTone(kind: MaterialKind | "native"): EarthTone {
  return { colour: earthColour(kind), pattern: PATTERN[kind] };
}
