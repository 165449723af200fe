import { useMemo } from "react";
import {
  nearestLimits,
  setbackBands,
  setbackField,
  setbacksAsked,
  steepGround,
  type SetbackField,
} from "../estimate/index.js";
import type { Scheme, Site } from "../site/index.js";
import { limitMarksOf, type LimitMarksShown } from "./marksOfLimits.js";
import type { SiteSceneProps } from "./props.js";
import type { SceneContents } from "./sceneTargets.js";

/** The ground inside setbacks, made anew only when what they go by has changed; null for none. */
function useSetbackField(site: Site, scheme: Scheme | null): SetbackField | null {
  const { limits, setbacks, survey } = site;
  const asks = useMemo(
    () => (scheme === null ? null : setbacksAsked({ limits, setbacks }, scheme)),
    [limits, setbacks, scheme],
  );
  // Most edits move nothing that a setback goes by.
  const key = JSON.stringify(asks);
  return useMemo(() => asks && setbackField(asks, boxOf(survey.points)), [key, survey]);
}

function boxOf(points: Site["survey"]["points"]) {
  const box = { west: Infinity, south: Infinity, east: -Infinity, north: -Infinity };
  for (const { x, y } of points) {
    [box.west, box.east] = [Math.min(box.west, x), Math.max(box.east, x)];
    [box.south, box.north] = [Math.min(box.south, y), Math.max(box.north, y)];
  }
  return box;
}

/** Setbacks and steep ground as the looks ask for them; null where neither is shown. */
export function useLimitMarks(
  { site, estimate, frame, found }: SceneContents,
  schemeId: string,
  { looks, view }: Pick<SiteSceneProps, "looks" | "view">,
): LimitMarksShown | null {
  const { limits, setbacks, survey, rules, units } = site;
  const scheme = site.schemes.find(({ id }) => id === schemeId) ?? null;
  const bands = useMemo(
    () => (looks.setbacks && scheme !== null ? setbackBands(site, scheme) : []),
    [looks.setbacks, limits, setbacks, scheme],
  );
  const field = useSetbackField(site, looks.setbacks ? scheme : null);
  const dimensions = looks.setbacks && view === "plan";
  const lines = useMemo(
    () =>
      dimensions && scheme !== null && estimate !== null
        ? nearestLimits(site, scheme, estimate.setbacks)
        : [],
    [dimensions, limits, scheme, estimate],
  );
  const steep = useMemo(
    () => (looks.steep ? steepGround(site) : null),
    [looks.steep, survey, rules],
  );
  return useMemo(
    () =>
      looks.setbacks || steep !== null
        ? limitMarksOf(
            { bands, lines, steep, field, setbacks: looks.setbacks },
            units,
            frame,
            found,
          )
        : null,
    [looks.setbacks, bands, lines, steep, field, units, frame, found],
  );
}
