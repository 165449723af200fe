import type { CSSProperties, ReactNode } from "react";
import { soilColour, soilShade } from "../estimate/index.js";
import type { SoilShade } from "../estimate/index.js";
import { materialsOf, NATIVE } from "../site/index.js";
import type { MaterialKind, Work } from "../site/index.js";
import { useSite } from "./useSite.js";

const diagonal = (tone: string, gap: number, width: number): string =>
  `repeating-linear-gradient(45deg, transparent 0 ${gap}px, ${tone} ${gap}px ${gap + width}px)`;
const dots = (tone: string, size: number): string =>
  `radial-gradient(circle at 50% 50%, ${tone} 0.9px, transparent 1.1px) 0 0 / ${size}px ${size}px`;

/** Each kind of earth by tone and by pattern, so that it is told apart in print and by every eye. */
const PATTERNS: Readonly<Record<MaterialKind | "native", string>> = {
  topsoil: "var(--earth-topsoil)",
  soil: `${dots("#5a4330", 4)}, var(--earth-soil)`,
  rippable: `${diagonal("#3b4144", 3, 1.2)}, var(--earth-rippable)`,
  rock: `${diagonal("#1c2226", 1.6, 1.2)}, var(--earth-rock)`,
  aggregate: `${dots("#4d5356", 5)}, var(--earth-aggregate)`,
  fill: `repeating-linear-gradient(0deg, transparent 0 3px, #7b6434 3px 4px), var(--earth-fill)`,
  native: `repeating-linear-gradient(-45deg, transparent 0 3px, #5a4330 3px 4px), var(--earth-soil)`,
};

/** A soil by its own ground; clay with steep strokes, the others with dots. */
function soilPattern(shade: SoilShade): string {
  if (shade === "soil") return PATTERNS.soil;
  const ground = soilColour(shade);
  if (shade === "clay")
    return `repeating-linear-gradient(112deg, transparent 0 3px, #3a2114 3px 4px), ${ground}`;
  return `${dots("#5a4330", shade === "sand" ? 3 : 6)}, ${ground}`;
}

const WORK_PATTERNS: Readonly<Record<Work["kind"], string>> = {
  tank: "#bfbcb2",
  pad: "var(--earth-fill)",
  trench: "repeating-linear-gradient(90deg, #5a4330 0 3px, #d8bb86 3px 6px)",
  bed: "repeating-linear-gradient(0deg, #7d8a4c 0 3px, #b8b67a 3px 6px)",
  building: "#9c8163",
  strip: `${diagonal("#d8bb86", 4, 1.4)}, var(--earth-topsoil)`,
  pile: "radial-gradient(circle at 50% 100%, #a8733c 0 60%, var(--card) 62%)",
};

function Square({ background }: { background: string }): ReactNode {
  const style: CSSProperties = { background };
  return <span className="swatch" style={style} aria-hidden="true" />;
}

/** The tone and pattern of a material, by id. */
export function MaterialSwatch({ material }: { material: string }): ReactNode {
  const { site } = useSite();
  const known = materialsOf(site).get(material);
  if (known?.kind === "soil") return <Square background={soilPattern(soilShade(known))} />;
  const kind = material === NATIVE ? "native" : known?.kind;
  return <Square background={kind === undefined ? "transparent" : PATTERNS[kind]} />;
}

/** The mark of a kind of work. */
export function WorkSwatch({ kind }: { kind: Work["kind"] }): ReactNode {
  return <Square background={WORK_PATTERNS[kind]} />;
}
