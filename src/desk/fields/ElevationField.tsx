import type { ReactNode } from "react";
import { groundAt } from "../../estimate/index.js";
import type { PlanPoint, Site } from "../../site/index.js";
import { elevation, length } from "../../units/index.js";
import { words } from "../../words/index.js";
import { useSite } from "../useSite.js";
import { MeasureField } from "./MeasureField.js";

/**
 * m above or below the ground beyond which an elevation is asked about: deeper than any machine of
 * the catalogue digs, higher than any building of this kind stands. Common practice, no source.
 */
const FARTHEST = 15;

/** Lowest and highest ground at these places, m; of the whole survey where none is on it. */
function groundRange(site: Site, at: readonly PlanPoint[]): { low: number; high: number } {
  const there = at.map((place) => groundAt(site, place)).filter((z) => z !== null);
  const heights = there.length > 0 ? there : site.survey.points.map((point) => point.z);
  return { low: Math.min(...heights), high: Math.max(...heights) };
}

interface ElevationFieldProps {
  label: ReactNode;
  value: number;
  /** Places in plan that the elevation belongs to; none means the whole lot. */
  at: readonly PlanPoint[];
  onCommit: (value: number) => void;
  name: string;
}

/** A field for an elevation, which asks when it is far from the ground there: a digit was dropped. */
export function ElevationField(props: ElevationFieldProps): ReactNode {
  const { label, value, at, onCommit, name } = props;
  const { site } = useSite();
  const { units } = site;

  function doubt(typed: number): string | null {
    const { low, high } = groundRange(site, at);
    if (typed >= low - FARTHEST && typed <= high + FARTHEST) return null;
    const below = typed < low;
    const off = length.print(below ? low - typed : typed - high, units);
    const ground = elevation.print(below ? low : high, units);
    return words.deskFields.groundThereWhichWas(
      off,
      below ? words.deskFields.below : words.deskFields.above,
      ground,
    );
  }

  return (
    <MeasureField
      label={
        <>
          {label} <small>{words.deskFields.elev}</small>
        </>
      }
      name={name}
      value={value}
      measure={elevation}
      onCommit={onCommit}
      doubt={doubt}
    />
  );
}
