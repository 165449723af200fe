import { useMemo } from "react";
import { nearestLimits, setbackBands, steepGround } from "../estimate/index.js";
import { limitMarksOf, type LimitMarksShown } from "./marksOfLimits.js";
import type { SiteSceneProps } from "./props.js";
import type { SceneContents } from "./sceneTargets.js";

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
        ? limitMarksOf({ bands, lines, steep }, units, frame, found)
        : null,
    [looks.setbacks, bands, lines, steep, units, frame, found],
  );
}
